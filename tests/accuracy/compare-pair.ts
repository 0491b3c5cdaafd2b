/**
 * Random runs of one vehicle for before and after: two before and two after, all driven at nearly one speed on other
 * pieces of road with the same sensor in the same place, and whatever wanders wandering anew in each.
 */
import { inferencesOf } from '../../src/core/compare.ts';
import type { RunInference } from '../../src/core/diagnosis/infer-run.ts';
import type { Job } from '../../src/core/job/job.ts';
import { readRecording } from '../../src/core/reading/read-recording.ts';
import { csvLayout } from '../../src/core/simulate/csv-layouts.ts';
import { csvText } from '../../src/core/simulate/csv-write.ts';
import type { Fault } from '../../src/core/simulate/fault.ts';
import { randomSource } from '../../src/core/simulate/random.ts';
import type { RandomSource } from '../../src/core/simulate/random.ts';
import type { Scenario, Sensor } from '../../src/core/simulate/scenario.ts';
import { simulate } from '../../src/core/simulate/simulate.ts';
import { drawGoodRoad, drawLayout, drawSensor } from './draw-sensor.ts';
import { drawVehicle } from './draw-vehicle.ts';

const FAULTS: readonly Fault['kind'][] = ['driveshaft-unbalance', 'driveshaft-angle', 'tire-unbalance'];
const LENGTH_S = 60;
/** How well a driver meets the same speed again: standard deviation. */
const SAME_SPEED_SD = 0.01;
const TRIES = 200;

/** The order that the fault makes; the change is read there. */
const LABEL: Readonly<Partial<Record<Fault['kind'], string>>> = {
  'driveshaft-unbalance': 'driveshaft 1×',
  'driveshaft-angle': 'driveshaft 2×',
  'tire-unbalance': 'tire 1×',
};

export interface PairOptions {
  /** What the fault's level changes by, dB. */
  readonly trueDb: number;
  /** Rates above this are drawn again: a fast recording takes long and says no more about a line below a few hundred Hz. */
  readonly upToHz: number;
}

export interface FourRuns {
  readonly label: string;
  /** Runs with the fault as found, and with it changed: [at the vehicle's speed, at nearly that]. */
  readonly asFound: readonly [RunInference, RunInference];
  readonly changed: readonly [RunInference, RunInference];
}

/** @returns null where a recording cannot be read */
export async function fourRuns(seed: number, options: PairOptions): Promise<FourRuns | null> {
  const random = randomSource(seed, 'compare');
  const { vehicle, trueM, gearRatio, converterSlip, speedMps } = drawVehicle(random, { layouts: ['rear-drive'] });
  const kind = random.pick(FAULTS);
  const sensor = slowEnough(random, 2.1 * (((vehicle.axleRatio ?? 1) * speedMps) / trueM), options.upToHz);
  const layout = csvLayout(drawLayout(random));
  const levelMps2 = random.logBetween(0.08, 0.4);
  const run = async (k: number, db: number): Promise<RunInference | null> => {
    const meanMps = k % 2 === 0 ? speedMps : speedMps * (1 + SAME_SPEED_SD * random.normal());
    const scenario: Scenario = {
      seed: seed * 10 + k,
      vehicleSeed: seed,
      vehicle,
      rollingCircumferenceM: trueM,
      drive: {
        durationS: LENGTH_S,
        speed: { kind: 'steady', meanMps, driftSd: 0.003, driftTimeS: 8 },
        load: 'cruise',
        gearRatio,
        converterSlip,
      },
      roadM3: drawGoodRoad(random),
      faults: [faultOf(kind, levelMps2 * 10 ** (db / 20), speedMps)],
      sensor,
    };
    const bytes = new TextEncoder().encode(csvText(simulate(scenario), layout, seed));
    const read = await readRecording({ name: `run-${k}.csv`, bytes }, {});
    if (!read.ok) return null;
    const job: Job = {
      schemaVersion: 1,
      vehicle,
      work: [],
      measurements: [],
      runs: [{ file: `run-${k}.csv`, speedMps: meanMps, speedSource: 'gps', gearRatio, load: 'cruise' }],
    };
    return inferencesOf({ job, recordings: [read.value] })[0] ?? null;
  };
  const [a, b] = [await run(0, 0), await run(1, 0)];
  const [c, d] = [await run(2, options.trueDb), await run(3, options.trueDb)];
  return a && b && c && d ? { label: LABEL[kind] ?? '', asFound: [a, b], changed: [c, d] } : null;
}

function slowEnough(random: RandomSource, seeHz: number, upToHz: number): Sensor {
  for (let k = 0; k < TRIES; k += 1) {
    const sensor = drawSensor(random, { seeHz });
    if (sensor !== null && sensor.rateHz <= upToHz) return sensor;
  }
  throw new Error(`no sensor up to ${upToHz} Hz sees ${seeHz.toFixed(0)} Hz`);
}

function faultOf(kind: Fault['kind'], levelMps2: number, speedMps: number): Fault {
  const described = { levelMps2, at: { speedMps, load: 'cruise' as const } };
  if (kind === 'tire-unbalance') return { ...described, kind, wheel: 'rear-left' };
  return kind === 'driveshaft-angle' ? { ...described, kind } : { ...described, kind: 'driveshaft-unbalance' };
}
