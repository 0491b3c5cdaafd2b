/** A random pair of runs of one vehicle, before and after: driven at nearly one speed, on other pieces of road. */
import { compare } from '../../src/core/compare.ts';
import type { OrderChange } from '../../src/core/diagnosis/compare/comparison.ts';
import type { Job } from '../../src/core/job/job.ts';
import { readRecording } from '../../src/core/reading/read-recording.ts';
import type { Recording } from '../../src/core/reading/recording.ts';
import { csvLayout } from '../../src/core/simulate/csv-layouts.ts';
import { csvText } from '../../src/core/simulate/csv-write.ts';
import type { Fault } from '../../src/core/simulate/fault.ts';
import { randomSource } from '../../src/core/simulate/random.ts';
import type { Scenario } from '../../src/core/simulate/scenario.ts';
import { simulate } from '../../src/core/simulate/simulate.ts';
import { drawGoodRoad, drawLayout, drawSensor } from './draw-sensor.ts';
import { drawVehicle } from './draw-vehicle.ts';

const FAULTS: readonly Fault['kind'][] = ['driveshaft-unbalance', 'driveshaft-angle', 'tire-unbalance'];
const LENGTH_S = 60;

/** Three of the orders that the fault makes; the change is read at the first. */
const LABEL: Readonly<Partial<Record<Fault['kind'], string>>> = {
  'driveshaft-unbalance': 'driveshaft 1×',
  'driveshaft-angle': 'driveshaft 2×',
  'tire-unbalance': 'tire 1×',
};

/**
 * @param trueDb what the fault's level changes by from the first run to the second
 * @returns the change found, or null where the program does not tell the fault's order
 */
export async function comparePair(seed: number, trueDb: number): Promise<OrderChange | null> {
  const random = randomSource(seed, 'compare');
  const { vehicle, trueM, gearRatio, converterSlip, speedMps } = drawVehicle(random, { layouts: ['rear-drive'] });
  const kind = random.pick(FAULTS);
  const shaftHz = ((vehicle.axleRatio ?? 1) * speedMps) / trueM;
  const sensor = drawSensor(random, { seeHz: 2.1 * shaftHz });
  const layout = drawLayout(random);
  if (sensor === null) return null;
  const levelMps2 = random.logBetween(0.08, 0.4);
  const roads = [drawGoodRoad(random), drawGoodRoad(random)];
  const speeds = [speedMps, speedMps * (1 + 0.01 * random.normal())];
  const recordings: Recording[] = [];
  for (const k of [0, 1]) {
    const level = levelMps2 * 10 ** ((k * trueDb) / 20);
    const scenario: Scenario = {
      seed: seed * 10 + k,
      vehicleSeed: seed,
      vehicle,
      rollingCircumferenceM: trueM,
      drive: {
        durationS: LENGTH_S,
        speed: { kind: 'steady', meanMps: speeds[k]!, driftSd: 0.003, driftTimeS: 8 },
        load: 'cruise',
        gearRatio,
        converterSlip,
      },
      roadM3: roads[k]!,
      faults: [faultOf(kind, level, speedMps)],
      sensor,
    };
    const bytes = new TextEncoder().encode(csvText(simulate(scenario), csvLayout(layout), seed));
    const read = await readRecording({ name: `run-${k}.csv`, bytes }, {});
    if (!read.ok) return null;
    recordings.push(read.value);
  }
  const job = (k: number): Job => ({
    schemaVersion: 1,
    vehicle,
    work: [],
    measurements: [],
    runs: [{ file: `run-${k}.csv`, speedMps: speeds[k]!, speedSource: 'gps', gearRatio, load: 'cruise' }],
  });
  const result = compare({ job: job(0), recordings: [recordings[0]!] }, { job: job(1), recordings: [recordings[1]!] });
  if (!result.ok) return null;
  return result.value.pairs[0]?.orders.find(({ label }) => label === LABEL[kind]) ?? null;
}

function faultOf(kind: Fault['kind'], levelMps2: number, speedMps: number): Fault {
  const described = { levelMps2, at: { speedMps, load: 'cruise' as const } };
  if (kind === 'tire-unbalance') return { ...described, kind, wheel: 'rear-left' };
  return kind === 'driveshaft-angle' ? { ...described, kind } : { ...described, kind: 'driveshaft-unbalance' };
}
