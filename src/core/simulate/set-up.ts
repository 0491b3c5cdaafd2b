/** A scenario as the parts that turn, the body they shake and the forces they do it with; before any time runs. */
import type { Body } from './body.ts';
import { drawBody } from './body.ts';
import type { Excitation } from './excitation.ts';
import { excitationsFrom } from './excitation.ts';
import { planFaults, planNormal, toneParts } from './planning.ts';
import { randomSource } from './random.ts';
import type { Scenario } from './scenario.ts';
import type { Turning } from './turning.ts';
import { TORQUE_SHARE, turningParts, wheelCircumferences } from './turning.ts';

export interface SetUp {
  readonly body: Body;
  readonly parts: readonly Turning[];
  readonly excitations: readonly Excitation[];
  /** Mean drive torque, share of full. */
  readonly torque: number;
}

/** Inner time steps a second: at least four a sample, and enough for what lies above half a slow sensor's rate. */
export const innerRateHz = (sensorHz: number): number => Math.max(2000, 4 * sensorHz);

export const setUp = (scenario: Scenario, innerHz: number): SetUp => {
  const vehicleSeed = scenario.vehicleSeed ?? scenario.seed;
  const without = new Set(scenario.without ?? []);
  const body = drawBody(randomSource(vehicleSeed, 'body'));
  const circumferences = wheelCircumferences(scenario, randomSource(vehicleSeed, 'wheels'));
  const parts = [...turningParts(scenario.vehicle, scenario.drive, circumferences), ...toneParts(scenario.faults)];
  const plans = [
    ...(without.has('normal-orders') ? [] : planNormal(scenario, parts, circumferences, vehicleSeed)),
    ...(without.has('faults') ? [] : planFaults(scenario, circumferences)),
  ];
  const excitations = excitationsFrom(plans, body, innerHz).filter((e) => parts.some((p) => p.id === e.turning));
  return { body, parts, excitations, torque: TORQUE_SHARE[scenario.drive.load] };
};
