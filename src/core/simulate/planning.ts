/** What is to shake in a run: faults and normal small orders, each with the condition its level is stated for. */
import type { OrderPlan } from './excitation.ts';
import { faultPlans } from './fault-orders.ts';
import type { AtReference } from './fault-orders.ts';
import type { Fault, Reference } from './fault.ts';
import { programMeanMps } from './motion.ts';
import { normalPlans } from './normal-orders.ts';
import { randomSource } from './random.ts';
import type { Scenario } from './scenario.ts';
import type { Turning, TurningId } from './turning.ts';
import { TORQUE_SHARE, turningHz, turningParts } from './turning.ts';

export const toneParts = (faults: readonly Fault[]): readonly Turning[] =>
  faults.flatMap((fault, i) =>
    fault.kind !== 'fixed-tone'
      ? []
      : [
          {
            id: `tone-${i}` as TurningId,
            perMetre: null,
            ownHz: fault.frequencyHz,
            wander: fault.wander,
            wanderTimeS: 5,
            wanderWith: '',
            base: 1,
          },
        ],
  );

/** Turning speeds and torque where a level is stated. */
const referenceOf = (scenario: Scenario, circumferences: readonly number[], at: Reference | undefined): AtReference => {
  const { durationS, speed: program, idleRpm, converterSlip } = scenario.drive;
  const gearRatio = at === undefined ? scenario.drive.gearRatio : at.gearRatio;
  const load = at?.load ?? scenario.drive.load;
  const drive = {
    durationS,
    speed: program,
    load,
    ...(idleRpm !== undefined && { idleRpm }),
    ...(converterSlip !== undefined && { converterSlip }),
    ...(gearRatio !== undefined && { gearRatio }),
  };
  const parts = turningParts(scenario.vehicle, drive, circumferences);
  const speed = at?.speedMps ?? programMeanMps(scenario.drive.speed);
  return (turning) => {
    const torque = TORQUE_SHARE[load];
    if (turning === 'engine' && at?.engineRpm !== undefined) return { turnHz: at.engineRpm / 60, torque };
    const part = parts.find((p) => p.id === turning) ?? toneParts(scenario.faults).find((p) => p.id === turning);
    return { turnHz: part === undefined ? 0 : turningHz(part, speed), torque };
  };
};

export const planFaults = (scenario: Scenario, circumferences: readonly number[]): readonly OrderPlan[] =>
  scenario.faults.flatMap((fault, i) =>
    faultPlans(fault, i, scenario.vehicle, referenceOf(scenario, circumferences, fault.at)),
  );

/** Normal levels hold at 27 m/s in cruise in the run's gear; standing or out of gear, at idle. */
export const planNormal = (
  scenario: Scenario,
  parts: readonly Turning[],
  circumferences: readonly number[],
  vehicleSeed: number,
): readonly OrderPlan[] => {
  const { gearRatio } = scenario.drive;
  const at: Reference = { speedMps: 27, load: 'cruise', ...(gearRatio !== undefined && { gearRatio }) };
  return normalPlans(
    scenario.vehicle,
    parts,
    referenceOf(scenario, circumferences, at),
    randomSource(vehicleSeed, 'normal orders'),
    scenario.normalLevel ?? 1,
  );
};
