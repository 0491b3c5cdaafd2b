/** What a scenario's faults really do: their orders, how they are felt, whether they can be seen or told apart. */
import type { Fault } from '../../src/core/simulate/fault.ts';
import { programMeanMps } from '../../src/core/simulate/motion.ts';
import type { Scenario } from '../../src/core/simulate/scenario.ts';
import { innerRateHz, setUp } from '../../src/core/simulate/set-up.ts';
import type { TrueOrder } from '../../src/core/simulate/truth.ts';
import { trueOrdersAt } from '../../src/core/simulate/truth.ts';
import type { TrueFault, TrueLine } from './case.ts';
import { detectability } from './detectability.ts';
import { imageHz } from './draw-sensor.ts';
import { feltOf } from './felt-truth.ts';

/** Engine and road speeds are tied no better than this where the converter slips by an unknown amount. */
const SLIP_APART = 0.006;

const lineOf = (orders: readonly TrueOrder[]): TrueLine => {
  const first = orders[0]!;
  // Several excitations of one fault at one order act in phase (joint angle: uneven speed and couple).
  const axis = [0, 1, 2].map((i) => orders.reduce((sum, o) => sum + o.axisMps2[i]!, 0)) as [number, number, number];
  return {
    part: first.part,
    ...nameOf(first),
    order: first.order,
    hz: first.meanHz,
    levelMps2: Math.hypot(...axis),
    felt: feltOf(first.meanHz, axis),
  };
};

/** Names tell accessories apart, and the front driveshaft from the rear one. */
const nameOf = (order: TrueOrder): { name?: string } => {
  if (order.part === 'accessory' && order.name !== undefined) return { name: order.name };
  return order.part === 'driveshaft' && order.name === 'front' ? { name: 'front driveshaft' } : {};
};

/** A true order under the names that lines go by. */
export const nameLike = (order: TrueOrder): { part: string; order: number; name?: string } => ({
  part: order.part,
  order: order.order,
  ...nameOf(order),
});

/** The orders a scenario will have at its mean speed, without running it. */
const trueOrdersOf = (scenario: Scenario): readonly TrueOrder[] => {
  const innerHz = innerRateHz(scenario.sensor.rateHz);
  return trueOrdersAt(setUp(scenario, innerHz), programMeanMps(scenario.drive.speed), innerHz);
};

const alone = (scenario: Scenario, fault: Fault): Scenario => ({
  ...scenario,
  faults: [fault],
  without: ['normal-orders'],
});

/** The orders of one fault of the scenario, strongest felt first. */
export const linesOf = (scenario: Scenario, fault: Fault): readonly TrueLine[] => {
  const byOrder = new Map<number, TrueOrder[]>();
  for (const o of trueOrdersOf(alone(scenario, fault))) byOrder.set(o.order, [...(byOrder.get(o.order) ?? []), o]);
  return [...byOrder.values()].map(lineOf).sort((a, b) => b.felt - a.felt);
};

/** Every line the vehicle has, for what coincides: its own short kinematics, not the program's. */
const allLines = (scenario: Scenario): readonly TrueLine[] => {
  const { vehicle, drive } = scenario;
  const wheel = programMeanMps(drive.speed) / scenario.rollingCircumferenceM;
  const ratio = vehicle.axleRatio ?? vehicle.finalDrive ?? 1;
  const engine =
    drive.gearRatio === undefined ? null : (wheel * ratio * drive.gearRatio) / (1 - (drive.converterSlip ?? 0));
  const firing = (vehicle.cylinders ?? 4) / 2;
  const line = (part: TrueLine['part'], order: number, hz: number, name?: string): TrueLine => ({
    part,
    ...(name !== undefined && { name }),
    order,
    hz,
    levelMps2: 0,
    felt: 0,
  });
  const shafted = vehicle.axleRatio !== undefined;
  return [
    ...[1, 2, 3, 4].map((k) => line('tire', k, k * wheel)),
    ...(shafted ? [1, 2, 4].map((k) => line('driveshaft', k, k * wheel * ratio)) : [line('half-shaft', 3, 3 * wheel)]),
    ...(vehicle.layout === 'four-wheel-drive'
      ? [1, 2, 4].map((k) => line('driveshaft', k, k * wheel * (vehicle.frontAxleRatio ?? ratio), 'front driveshaft'))
      : []),
    ...(engine === null
      ? []
      : [
          ...[0.5, 1, 1.5, 2, 2.5, 3, 4, firing, 2 * firing].map((k) => line('engine', k, k * engine)),
          ...(vehicle.accessories ?? []).map((a) => line('accessory', 1, a.ratio * engine, a.name)),
        ]),
  ];
};

export const sameLine = (
  a: { readonly part: string; readonly order: number | null; readonly name?: string },
  b: { readonly part: string; readonly order: number | null; readonly name?: string },
): boolean => {
  if (a.part !== b.part || a.order !== b.order) return false;
  if (a.part === 'accessory') return a.name === b.name;
  return a.part !== 'driveshaft' || (a.name === 'front driveshaft') === (b.name === 'front driveshaft');
};

const isEngine = (part: string): boolean => part === 'engine' || part === 'accessory';

/** Nominal places are compared: slip and the spread of four tires move lines that no analysis could part for it. */
const coinciding = (scenario: Scenario, named: TrueLine): readonly TrueLine[] => {
  const resolution = 1 / scenario.drive.durationS;
  const slips = scenario.vehicle.converter === true;
  const all = allLines(scenario);
  const nominal = all.find((line) => sameLine(line, named)) ?? named;
  return all.filter((other) => {
    if (sameLine(other, named)) return false;
    const apart = Math.abs(other.hz - nominal.hz);
    const slipping = slips && isEngine(other.part) !== isEngine(named.part);
    return apart < Math.max(resolution, slipping ? SLIP_APART * named.hz : 0);
  });
};

/** @param density Noise density of the run, see detectability.ts. */
export const trueFault = (
  scenario: Scenario,
  fault: Fault,
  density: (hz: number) => readonly [number, number, number],
): TrueFault => {
  const lines = linesOf(scenario, fault);
  const strongest = lines[0];
  if (strongest === undefined) return { kind: fault.kind, lines, named: [], coinciding: [], detectability: Infinity };
  const axes = axesOf(scenario, fault, strongest);
  const named = lines.filter((l) => l.felt >= 0.5 * strongest.felt);
  const seenAt = imageHz(strongest.hz, scenario.sensor.rateHz);
  return {
    kind: fault.kind,
    lines,
    named,
    coinciding: named.flatMap((line) => coinciding(scenario, line)),
    detectability: detectability(axes, seenAt, scenario.drive.durationS, density),
  };
};

const axesOf = (scenario: Scenario, fault: Fault, line: TrueLine): [number, number, number] => {
  const orders = trueOrdersOf(alone(scenario, fault)).filter((o) => o.order === line.order);
  return [0, 1, 2].map((i) => orders.reduce((sum, o) => sum + o.axisMps2[i]!, 0)) as [number, number, number];
};

/** Greatest felt level any normal order has, all wheels at their worst together, and the greatest above 80 Hz. */
export const normalPeak = (scenario: Scenario): { readonly felt: number; readonly heardMps2: number } => {
  const byLine = new Map<string, TrueOrder[]>();
  for (const o of trueOrdersOf({ ...scenario, without: ['faults'] })) {
    const key = `${o.part} ${o.order}`;
    byLine.set(key, [...(byLine.get(key) ?? []), o]);
  }
  const lines = [...byLine.values()].map(lineOf);
  return {
    felt: Math.max(0, ...lines.map((l) => l.felt)),
    heardMps2: Math.max(0, ...lines.filter((l) => l.hz > 75).map((l) => l.levelMps2)),
  };
};
