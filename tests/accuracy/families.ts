/** The families of cases: what is drawn, what the job says of it, and by which rule the answer is judged. */
import type { Run } from '../../src/core/job/job.ts';
import type { Fault, Reference } from '../../src/core/simulate/fault.ts';
import { programMeanMps } from '../../src/core/simulate/motion.ts';
import { randomSource } from '../../src/core/simulate/random.ts';
import type { RandomSource } from '../../src/core/simulate/random.ts';
import type { Drive, RampShape, Scenario } from '../../src/core/simulate/scenario.ts';
import type { SpeedSource } from '../../src/core/vehicle/vehicle.ts';
import { asIs, feltFault, madeClear, withNormal } from './build-case.ts';
import type { AccuracyCase, Family, Lean, Rule, TrueFault } from './case.ts';
import { FAMILIES } from './case.ts';
import { drawFault, groupsOf } from './draw-fault.ts';
import type { FaultGroup } from './draw-fault.ts';
import { drawGoodRoad, drawLayout, drawRoughRoad, drawSensor } from './draw-sensor.ts';
import type { SensorWish } from './draw-sensor.ts';
import { drawVehicle } from './draw-vehicle.ts';
import type { DrawnVehicle, VehicleWish } from './draw-vehicle.ts';
import { linesOf, sameLine } from './true-fault.ts';
import { statedSpeedMps } from '../support/stated-speed.ts';
import { madeJob } from '../support/made-job.ts';

interface Draft {
  readonly family: Family;
  readonly seed: number;
  readonly random: RandomSource;
  readonly lean: Lean;
}

/** One draw may not fit (no rate shows the line); the next one is taken then. */
type Maker = (draft: Draft) => AccuracyCase | null;

const steadyDrive = (car: DrawnVehicle, random: RandomSource): Drive => ({
  durationS: Math.round(random.between(30, 90)),
  speed: {
    kind: 'steady',
    meanMps: car.speedMps,
    driftSd: random.logBetween(0.002, 0.012),
    driftTimeS: random.between(4, 12),
  },
  load: 'cruise',
  gearRatio: car.gearRatio,
  converterSlip: car.converterSlip,
});

const scenarioOf = (
  draft: Draft,
  car: DrawnVehicle,
  drive: Drive,
  sensor: Scenario['sensor'],
  roadM3: number,
): Scenario => ({
  seed: draft.seed,
  vehicle: car.vehicle,
  rollingCircumferenceM: car.trueM,
  wheelSpread: draft.random.between(0.0005, 0.003),
  drive,
  roadM3,
  faults: [],
  sensor,
});

/** A rate is looked for that shows (or folds) the fault's strongest line. */
const sensorFor = (
  draft: Draft,
  car: DrawnVehicle,
  drive: Drive,
  faults: readonly Fault[],
  fold = false,
): Scenario['sensor'] | null => {
  const wide = { rateHz: 1000, mounting: [1, 0, 0, 0, 1, 0, 0, 0, 1], noiseDensity: 0, stepMps2: 0, jitterS: 0 };
  const probe = scenarioOf(draft, car, drive, wide, 0);
  const strongest = faults.map((f) => linesOf(probe, f)[0]?.hz ?? 0);
  // Ramps go beyond their mean speed.
  const highest = Math.max(0, ...strongest) * (drive.speed.kind === 'ramp' ? 1.3 : 1.03);
  const wish: SensorWish = fold ? { foldHz: strongest[0]! } : { seeHz: highest };
  return drawSensor(draft.random, wish);
};

interface Statement {
  readonly source?: SpeedSource;
  readonly speedMps?: number;
  readonly engineRpm?: number;
  readonly gear?: boolean;
}

/** What the driver wrote down. Default: GPS or on-board speed, gear known. */
const stated = (draft: Draft, scenario: Scenario, more: Statement = {}): Statement => {
  const source = more.source ?? draft.random.pick(['gps', 'gps', 'obd'] as const);
  const speedMps = more.speedMps ?? statedSpeedMps(programMeanMps(scenario.drive.speed), source, draft.random);
  return { gear: true, ...more, source, speedMps };
};

const runOf = (scenario: Scenario, index: number, say: Statement): Run => ({
  file: `run-${index + 1}.csv`,
  name: `Run ${index + 1}`,
  ...(say.speedMps !== undefined && { speedMps: say.speedMps }),
  ...(say.source !== undefined && { speedSource: say.source }),
  ...(say.engineRpm !== undefined && { engineRpm: say.engineRpm }),
  ...(say.gear !== false && scenario.drive.gearRatio !== undefined && { gearRatio: scenario.drive.gearRatio }),
  load: scenario.drive.load,
});

const caseOf = (
  draft: Draft,
  rule: Rule,
  faults: readonly TrueFault[],
  runs: readonly { readonly scenario: Scenario; readonly layout: string; readonly say: Statement }[],
): AccuracyCase => {
  const job = madeJob(runs[0]!.scenario.vehicle, ...runs.map((r, i) => runOf(r.scenario, i, r.say)));
  return {
    family: draft.family,
    seed: draft.seed,
    rule,
    job,
    runs: runs.map((r, i) => ({ file: job.runs[i]!.file, layout: r.layout, scenario: r.scenario })),
    faults,
  };
};

interface PlainWish {
  readonly vehicle?: VehicleWish;
  readonly groups?: readonly FaultGroup[];
  readonly say?: (draft: Draft, scenario: Scenario) => Statement;
}

/** One clear fault, cruise, good road. */
const plain =
  (wish: PlainWish = {}): Maker =>
  (draft) => {
    const { random } = draft;
    const car = drawVehicle(random, wish.vehicle);
    const group = random.pick(wish.groups ?? groupsOf(car.vehicle));
    const fault = drawFault(random, car.vehicle, group);
    const drive = steadyDrive(car, random);
    const sensor = sensorFor(draft, car, drive, [fault]);
    if (sensor === null) return null;
    const base = withNormal(scenarioOf(draft, car, drive, sensor, drawGoodRoad(random)), draft.lean);
    const made = madeClear({ ...base, faults: [feltFault(base, fault, random)] });
    const say = (wish.say ?? stated)(draft, made.scenario);
    return caseOf(draft, 'first', made.faults, [{ scenario: made.scenario, layout: drawLayout(random), say }]);
  };

const speedWrong = (draft: Draft, scenario: Scenario): Statement => {
  const source = draft.random.pick(['dial', 'obd', undefined] as const);
  const sign = source === 'dial' || draft.random.chance(0.5) ? 1 : -1;
  const speedMps = programMeanMps(scenario.drive.speed) * (1 + sign * draft.random.between(0.02, 0.035));
  return { gear: true, speedMps, ...(source !== undefined && { source }) };
};

const engineGiven = (draft: Draft, scenario: Scenario): Statement => {
  const { drive, vehicle } = scenario;
  const ratio = vehicle.axleRatio ?? vehicle.finalDrive ?? 1;
  const trueRpm =
    (((60 * programMeanMps(drive.speed)) / scenario.rollingCircumferenceM) * ratio * (drive.gearRatio ?? 1)) /
    (1 - (drive.converterSlip ?? 0));
  const engineRpm = 10 * Math.round((trueRpm * (1 + 0.002 * draft.random.normal())) / 10);
  return stated(draft, scenario, { engineRpm, gear: draft.random.chance(0.5) });
};

const SHAFTED = { layouts: ['rear-drive', 'rear-drive', 'four-wheel-drive'] as const };

const twoFaults: Maker = (draft) => {
  const { random } = draft;
  const car = drawVehicle(random);
  const groups = groupsOf(car.vehicle);
  const first = random.pick(groups);
  const second = random.pick(groups.filter((g) => g !== first));
  const drive = steadyDrive(car, random);
  const faults = [first, second].map((g) => drawFault(random, car.vehicle, g));
  const sensor = sensorFor(draft, car, drive, faults);
  if (sensor === null) return null;
  const base = withNormal(scenarioOf(draft, car, drive, sensor, drawGoodRoad(random)), draft.lean);
  const made = madeClear({ ...base, faults: faults.map((f) => feltFault(base, f, random, [2, 6])) });
  const [a, b] = made.faults;
  // Two that no analysis could part by frequency are not two findings.
  const tooNear = a!.lines.some((x) => b!.lines.some((y) => Math.abs(x.hz - y.hz) < 0.01 * x.hz));
  if (tooNear || a!.coinciding.some((c) => b!.lines.some((l) => sameLine(c, l)))) return null;
  return caseOf(draft, 'both', made.faults, [
    { scenario: made.scenario, layout: drawLayout(random), say: stated(draft, made.scenario) },
  ]);
};

const roughWeak: Maker = (draft) => {
  const { random } = draft;
  const car = drawVehicle(random);
  const fault = drawFault(random, car.vehicle, random.pick(groupsOf(car.vehicle)));
  const drive = steadyDrive(car, random);
  const sensor = sensorFor(draft, car, drive, [fault]);
  if (sensor === null) return null;
  const base = withNormal(scenarioOf(draft, car, drive, sensor, drawRoughRoad(random)), draft.lean);
  const made = asIs({ ...base, faults: [feltFault(base, fault, random, [1.5, 5])] });
  return caseOf(draft, 'first', made.faults, [
    { scenario: made.scenario, layout: drawLayout(random), say: stated(draft, made.scenario) },
  ]);
};

const directGear: Maker = (draft) => {
  const { random } = draft;
  const car = drawVehicle(random, { layouts: ['rear-drive'], direct: true });
  const fault = random.pick<Fault>([
    { kind: 'driveshaft-unbalance', levelMps2: 1 },
    { kind: 'driveshaft-angle', levelMps2: 1, coupleShare: 0.3 },
    { kind: 'engine-unbalance', levelMps2: 1 },
  ]);
  const drive = steadyDrive(car, random);
  const sensor = sensorFor(draft, car, drive, [fault]);
  if (sensor === null) return null;
  const base = withNormal(scenarioOf(draft, car, drive, sensor, drawGoodRoad(random)), draft.lean);
  const made = madeClear({ ...base, faults: [feltFault(base, fault, random)] });
  return caseOf(draft, 'together', made.faults, [
    { scenario: made.scenario, layout: drawLayout(random), say: stated(draft, made.scenario) },
  ]);
};

const RAMPS: readonly RampShape[] = ['linear', 'coast', 'pull'];
const OTHER_RAMPS: readonly RampShape[] = ['ease', 'stages'];

const ramp =
  (logged: boolean): Maker =>
  (draft) => {
    const { random } = draft;
    const car = drawVehicle(random);
    const fault = drawFault(random, car.vehicle, random.pick(groupsOf(car.vehicle)));
    const shape = random.pick(draft.lean.otherRamps ? OTHER_RAMPS : RAMPS);
    const low = car.speedMps * 0.8;
    const high = low * 1.4;
    const up = shape === 'pull' || (shape !== 'coast' && random.chance(0.5));
    const drive: Drive = {
      ...steadyDrive(car, random),
      speed: {
        kind: 'ramp',
        fromMps: up ? low : high,
        toMps: up ? high : low,
        shape,
        driftSd: random.between(0.001, 0.004),
        driftTimeS: random.between(3, 8),
      },
      load: up ? 'pull' : 'coast',
    };
    const at: Reference = { speedMps: car.speedMps, load: drive.load, gearRatio: car.gearRatio };
    const sensor = sensorFor(draft, car, drive, [fault]);
    if (sensor === null) return null;
    const plainBase = withNormal(scenarioOf(draft, car, drive, sensor, drawGoodRoad(random)), draft.lean);
    const speed = {
      rateHz: 1,
      step: 1,
      unit: 'km/h' as const,
      lagS: random.between(0, 1),
      factor: 1 + 0.006 * random.normal(),
      noiseMps: 0.05,
    };
    const base: Scenario = logged ? { ...plainBase, log: { speed } } : plainBase;
    const level = feltFault(base, { ...fault, at }, random, [2, 8]);
    const made = madeClear({ ...base, faults: [level] }, 24);
    const say: Statement = logged
      ? { gear: true, source: 'logged' }
      : { gear: true, source: 'gps', speedMps: Math.round((low + high) / 2 / 0.44704) * 0.44704 };
    return caseOf(draft, 'first', made.faults, [
      { scenario: made.scenario, layout: drawLayout(random, { speed: logged }), say },
    ]);
  };

const alias: Maker = (draft) => {
  const { random } = draft;
  const car = drawVehicle(random);
  const fault = drawFault(random, car.vehicle, random.pick(groupsOf(car.vehicle).filter((g) => g !== 'tire')));
  const drive = steadyDrive(car, random);
  const sensor = sensorFor(draft, car, drive, [fault], true);
  if (sensor === null) return null;
  const base = withNormal(scenarioOf(draft, car, drive, sensor, drawGoodRoad(random)), draft.lean);
  const made = madeClear({ ...base, faults: [feltFault(base, fault, random)] });
  return caseOf(draft, 'shared', made.faults, [
    { scenario: made.scenario, layout: drawLayout(random), say: stated(draft, made.scenario) },
  ]);
};

const sound =
  (rough: boolean): Maker =>
  (draft) => {
    const { random } = draft;
    const car = drawVehicle(random);
    const drive = steadyDrive(car, random);
    const sensor = drawSensor(random);
    if (sensor === null) return null;
    const road = rough ? drawRoughRoad(random) : drawGoodRoad(random);
    const scenario = withNormal(scenarioOf(draft, car, drive, sensor, road), draft.lean);
    return caseOf(draft, 'none', [], [{ scenario, layout: drawLayout(random), say: stated(draft, scenario) }]);
  };

/** Moving off in a low gear with the speed logged: what goes with the torque shakes, and turns ever faster. */
const launch: Maker = (draft) => {
  const { random } = draft;
  const car = drawVehicle(random, { layouts: ['rear-drive'] });
  const fault: Fault = { kind: 'driveshaft-angle', levelMps2: 1, coupleShare: 1 };
  const drive: Drive = {
    durationS: Math.round(random.between(7, 15)),
    speed: {
      kind: 'ramp',
      fromMps: random.between(1.2, 3),
      toMps: random.between(9.5, 14),
      shape: random.pick(draft.lean.otherRamps ? OTHER_RAMPS : (['linear', 'pull'] as const)),
      driftSd: random.between(0.001, 0.004),
      driftTimeS: random.between(3, 8),
    },
    load: 'pull',
    gearRatio: random.pick([1.52, 2.34]),
    converterSlip: random.between(0.02, 0.08),
  };
  const sensor = sensorFor(draft, car, drive, [fault]);
  if (sensor === null) return null;
  const speed = {
    rateHz: random.pick([1, 1, 5]),
    step: random.pick([1, 1, 0.1]),
    unit: 'km/h' as const,
    lagS: random.between(0, 1),
    factor: 1 + 0.006 * random.normal(),
    noiseMps: 0.05,
  };
  const plainBase = withNormal(scenarioOf(draft, car, drive, sensor, drawGoodRoad(random)), draft.lean);
  const base: Scenario = { ...plainBase, log: { speed } };
  const made = madeClear({ ...base, faults: [feltFault(base, fault, random, [3, 12])] });
  return caseOf(draft, 'first', made.faults, [
    { scenario: made.scenario, layout: drawLayout(random, { speed: true }), say: { source: 'logged', gear: false } },
  ]);
};

/** Half of the tones lie within one percent of a line of the vehicle. */
const hum: Maker = (draft) => {
  const { random } = draft;
  const car = drawVehicle(random);
  const drive = steadyDrive(car, random);
  const wheel = car.speedMps / car.trueM;
  const ratio = car.vehicle.axleRatio ?? car.vehicle.finalDrive ?? 1;
  const near = random.pick([wheel, 2 * wheel, 3 * wheel, ratio * wheel, ratio * car.gearRatio * wheel]);
  const frequencyHz = random.chance(0.5) ? near * (1 + 0.01 * (2 * random.uniform() - 1)) : random.between(9, 70);
  const fault: Fault = { kind: 'fixed-tone', levelMps2: 1, frequencyHz, wander: random.logBetween(1e-5, 3e-4) };
  const sensor = sensorFor(draft, car, drive, [fault]);
  if (sensor === null) return null;
  const base = withNormal(scenarioOf(draft, car, drive, sensor, drawGoodRoad(random)), draft.lean);
  const made = madeClear({ ...base, faults: [feltFault(base, fault, random)] });
  return caseOf(draft, 'not-turning', made.faults, [
    { scenario: made.scenario, layout: drawLayout(random), say: stated(draft, made.scenario) },
  ]);
};

const resonance: Maker = (draft) => {
  const { random } = draft;
  const car = drawVehicle(random);
  const drive = steadyDrive(car, random);
  const fault: Fault = {
    kind: 'resonance',
    frequencyHz: random.between(9, 60),
    damping: random.between(0.01, 0.02),
    levelMps2: random.logBetween(0.08, 0.3),
  };
  const sensor = drawSensor(random, { seeHz: fault.frequencyHz });
  if (sensor === null) return null;
  const scenario = withNormal(scenarioOf(draft, car, drive, sensor, drawGoodRoad(random)), draft.lean);
  const truth: TrueFault = { kind: 'resonance', lines: [], named: [], coinciding: [], detectability: Infinity };
  return caseOf(
    draft,
    'not-turning',
    [truth],
    [{ scenario: { ...scenario, faults: [fault] }, layout: drawLayout(random), say: stated(draft, scenario) }],
  );
};

/** The same fault at another speed, or in another gear at the same speed. */
const twoRuns: Maker = (draft) => {
  const { random } = draft;
  const car = drawVehicle(random);
  const fault = drawFault(random, car.vehicle, random.pick(groupsOf(car.vehicle)));
  const drive = steadyDrive(car, random);
  const sensor = sensorFor(draft, car, drive, [fault]);
  if (sensor === null) return null;
  const at: Reference = { speedMps: car.speedMps, load: 'cruise', gearRatio: car.gearRatio };
  const base = withNormal(scenarioOf(draft, car, drive, sensor, drawGoodRoad(random)), draft.lean);
  const level = feltFault(base, { ...fault, at }, random);
  const made = madeClear({ ...base, faults: [level] });
  const other = car.speedMps * (random.chance(0.5) ? random.between(0.72, 0.88) : random.between(1.08, 1.2));
  const shift = random.chance(0.4);
  const drive2: Drive = shift
    ? { ...drive, gearRatio: Math.round(100 * car.gearRatio * random.pick([1.2, 1.3, 1.45])) / 100 }
    : { ...drive, speed: { kind: 'steady', meanMps: other, driftSd: random.logBetween(0.002, 0.012), driftTimeS: 6 } };
  const second: Scenario = { ...made.scenario, seed: draft.seed + 1_000_000, vehicleSeed: draft.seed, drive: drive2 };
  const scenario: Scenario = { ...made.scenario, vehicleSeed: draft.seed };
  const layout = drawLayout(random);
  const source = random.pick(['gps', 'obd'] as const);
  return caseOf(draft, 'first', made.faults, [
    { scenario, layout, say: stated(draft, scenario, { source }) },
    { scenario: second, layout, say: stated(draft, second, { source }) },
  ]);
};

const MAKERS: Readonly<Record<Family, Maker>> = {
  single: plain(),
  shaft: plain({ vehicle: SHAFTED, groups: ['shaft'] }),
  'two-faults': twoFaults,
  'rough-weak': roughWeak,
  dial: plain({ say: (draft, scenario) => stated(draft, scenario, { source: 'dial' }) }),
  'speed-wrong': plain({ say: speedWrong }),
  'engine-given': plain({ say: engineGiven }),
  'direct-gear': directGear,
  'logged-ramp': ramp(true),
  'blind-ramp': ramp(false),
  alias,
  sound: sound(false),
  'sound-rough': sound(true),
  hum,
  resonance,
  'two-runs': twoRuns,
  launch,
};

/** Clearly felt, or clearly heard: near the threshold nobody could say which answer is right. */
const isPerceived = (fault: TrueFault): boolean =>
  fault.lines.length === 0 || fault.lines.some((l) => l.felt >= 1.4 || (l.hz >= 80 && l.levelMps2 >= 0.18));

/** Seeds beyond this come round again: the numbers made from them must stay exact, below 2^53. */
const SEEDS = 50_000;

/** Case number `index` of a family; the same seed and index always give the same case. */
export const makeCase = (family: Family, index: number, seed: number, lean: Lean): AccuracyCase => {
  for (let attempt = 0; attempt < 200; attempt++) {
    const own = (((seed % SEEDS) * 7919 + FAMILIES.indexOf(family)) * 100_003 + index) * 211 + attempt;
    const made = MAKERS[family]({ family, seed: own, random: randomSource(own, `case ${family}`), lean });
    if (made !== null && made.faults.every(isPerceived)) return made;
  }
  throw new Error(`no case of family ${family} could be drawn`);
};
