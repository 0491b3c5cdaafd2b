/**
 * Random runs of one vehicle for before and after: two before and two after, all driven at nearly one speed on other
 * pieces of road with the same sensor in the same place, and whatever wanders wandering anew in each.
 */
import { judgeJob } from '../../src/core/diagnosis/judge-job.ts';
import type { RunInference } from '../../src/core/diagnosis/matching/infer-run.ts';
import type { Job } from '../../src/core/job/job.ts';
import { readRecording } from '../../src/core/reading/read-recording.ts';
import type { Recording } from '../../src/core/reading/recording.ts';
import type { OrderReadings } from '../../src/core/signal/speed/order-readings.ts';
import { BLOCK_S, orderReadings } from '../../src/core/signal/speed/order-readings.ts';
import { prepare } from '../../src/core/signal/prepare/prepare.ts';
import { csvLayout } from '../../src/core/simulate/csv-layouts.ts';
import { csvText } from '../../src/core/simulate/csv-write.ts';
import type { Fault } from '../../src/core/simulate/fault.ts';
import { randomSource } from '../../src/core/simulate/random.ts';
import type { RandomSource } from '../../src/core/simulate/random.ts';
import type { Scenario, Sensor } from '../../src/core/simulate/scenario.ts';
import type { Simulation } from '../../src/core/simulate/simulate.ts';
import { simulate } from '../../src/core/simulate/simulate.ts';
import { drawGoodRoad, drawLayout, drawSensor, slowestSeeing } from './draw-sensor.ts';
import { drawVehicle } from './draw-vehicle.ts';

const FAULTS: readonly Fault['kind'][] = ['driveshaft-unbalance', 'driveshaft-angle', 'tire-unbalance'];
const LENGTH_S = 60;
const TRIES = 200;
/** The order read must lie this far inside what the sensor sees; of a tire three orders are wanted, to find the speed by. */
const CLEAR_OF_TOP = 1.05;
const HIGHEST_TIRE_ORDER = 3;

/** The order that the fault makes; the change is read there. */
const LABEL: Readonly<Partial<Record<Fault['kind'], string>>> = {
  'driveshaft-unbalance': 'driveshaft 1×',
  'driveshaft-angle': 'driveshaft 2×',
  'tire-unbalance': 'tire 1×',
};

const orderOf = (kind: Fault['kind']): number => Number(/(\d+)×/.exec(LABEL[kind] ?? '')?.[1]);

export interface PairOptions {
  /** What the fault's level changes by, dB. */
  readonly trueDb: number;
  /** Rates above this are drawn again where a slower one sees the line: a fast recording takes long and says no more. */
  readonly upToHz: number;
  /** How well the driver meets the same speed again: standard deviation, relative. */
  readonly speedSd: number;
}

/** Four runs: [as found at the vehicle's speed, as found at nearly that], [changed, changed] likewise. */
export interface Four<Run> {
  readonly label: string;
  readonly asFound: readonly [Run, Run];
  readonly changed: readonly [Run, Run];
  /** Mean speed of the second run as found, and of the second one changed, over that of the first ones. */
  readonly relativeSpeed: readonly [number, number];
}

interface Drawn {
  readonly scenario: Scenario;
  readonly job: Job;
  readonly layout: string;
}

/** The four runs as the program sees them. @returns null where a recording cannot be read */
export async function fourRuns(seed: number, options: PairOptions): Promise<Four<RunInference> | null> {
  return fourOf(drawFour(seed, options), async ({ scenario, job, layout }) => {
    const recording = await recorded(simulate(scenario), scenario.seed, layout);
    const judged = recording && judgeJob({ job, recordings: [recording] });
    return (judged?.ok && judged.value.inferences[0]) || null;
  });
}

/**
 * The level of the fault's order in each, read along the true speed: the statistics of the comparison alone, without
 * what finding speed and order adds, and many times faster.
 */
export async function fourLevels(seed: number, options: PairOptions): Promise<Four<ReadLevel> | null> {
  const four = drawFour(seed, options);
  const order = Number(/(\d+)×/.exec(four.label)?.[1]);
  return fourOf(four, async ({ scenario, layout }) => {
    const simulation = simulate(scenario);
    const { truth } = simulation;
    const recording = await recorded(simulation, scenario.seed, layout);
    const frequencyHz = truth.orders.find((o) => o.origin === 'fault' && o.order === order)?.meanHz ?? 0;
    const timeS = Float64Array.from({ length: 2 * LENGTH_S + 1 }, (_, i) => i / 2);
    const relative = timeS.map((t) => truth.speedAt(t) / truth.meanSpeedMps);
    const readings = recording && orderReadings(prepare(recording), frequencyHz, { timeS, relative }, BLOCK_S, true);
    return readings && { frequencyHz, readings };
  });
}

export interface ReadLevel {
  readonly frequencyHz: number;
  readonly readings: OrderReadings;
}

async function fourOf<Run>(
  { label, asFound, changed, relativeSpeed }: Four<Drawn>,
  run: (drawn: Drawn) => Promise<Run | null>,
): Promise<Four<Run> | null> {
  const [a, b] = [await run(asFound[0]), await run(asFound[1])];
  const [c, d] = [await run(changed[0]), await run(changed[1])];
  return a && b && c && d ? { label, asFound: [a, b], changed: [c, d], relativeSpeed } : null;
}

async function recorded(simulation: Simulation, seed: number, layout: string): Promise<Recording | null> {
  const bytes = new TextEncoder().encode(csvText(simulation, csvLayout(layout), seed));
  const read = await readRecording({ name: 'run.csv', bytes }, {});
  return read.ok ? read.value : null;
}

function drawFour(seed: number, options: PairOptions): Four<Drawn> {
  const random = randomSource(seed, 'compare');
  const { vehicle, trueM, gearRatio, converterSlip, speedMps } = drawVehicle(random, { layouts: ['rear-drive'] });
  const kind = random.pick(FAULTS);
  const highest = kind === 'tire-unbalance' ? HIGHEST_TIRE_ORDER : (vehicle.axleRatio ?? 1) * orderOf(kind);
  const sensor = slowEnough(random, (CLEAR_OF_TOP * highest * speedMps) / trueM, options.upToHz);
  const layout = drawLayout(random);
  const levelMps2 = random.logBetween(0.08, 0.4);
  const relative = (): number => 1 + options.speedSd * random.normal();
  const draw = (k: number, db: number, relativeSpeed = 1): Drawn => {
    const meanMps = speedMps * relativeSpeed;
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
    const job: Job = {
      schemaVersion: 1,
      vehicle,
      work: [],
      measurements: [],
      runs: [{ file: `run-${k}.csv`, speedMps: meanMps, speedSource: 'gps', gearRatio, load: 'cruise' }],
    };
    return { scenario, job, layout };
  };
  const twice = (k: number, db: number): { runs: [Drawn, Drawn]; relativeSpeed: number } => {
    const first = draw(k, db);
    const relativeSpeed = relative();
    return { runs: [first, draw(k + 1, db, relativeSpeed)], relativeSpeed };
  };
  const [asFound, changed] = [twice(0, 0), twice(2, options.trueDb)];
  return {
    label: LABEL[kind] ?? '',
    asFound: asFound.runs,
    changed: changed.runs,
    relativeSpeed: [asFound.relativeSpeed, changed.relativeSpeed],
  };
}

/** A sensor that sees the line; where no rate up to the limit does, the slowest that does. */
function slowEnough(random: RandomSource, seeHz: number, upToHz: number): Sensor {
  const limitHz = Math.max(upToHz, slowestSeeing(seeHz));
  for (let k = 0; k < TRIES; k += 1) {
    const sensor = drawSensor(random, { seeHz });
    if (sensor !== null && sensor.rateHz <= limitHz) return sensor;
  }
  throw new Error(`no sensor up to ${limitHz} Hz sees ${seeHz.toFixed(0)} Hz`);
}

function faultOf(kind: Fault['kind'], levelMps2: number, speedMps: number): Fault {
  const described = { levelMps2, at: { speedMps, load: 'cruise' as const } };
  if (kind === 'tire-unbalance') return { ...described, kind, wheel: 'rear-left' };
  return kind === 'driveshaft-angle' ? { ...described, kind } : { ...described, kind: 'driveshaft-unbalance' };
}
