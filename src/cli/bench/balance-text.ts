/** Corrections and allowances in words. */
import type { AmplitudeBalance } from '../../core/driveline/balance/balance-amplitude.ts';
import {
  forceOfUnbalanceN,
  gradeOfUnbalance,
  permissibleUnbalanceGmm,
  trialUnbalanceGmm,
} from '../../core/driveline/balance/balance-grade.ts';
import type { PhasorBalance } from '../../core/driveline/balance/balance-influence.ts';
import type { TrialRun, WeightUnit } from '../../core/driveline/measurement.ts';
import type { UncertainVector } from '../../core/driveline/balance/propagate.ts';
import { angleText, forceText, NO_CORRECTION, weightText } from '../../core/report/bench-text.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { rpmText, significant } from '../../core/report/format.ts';

/** The weights of a balancing, as trials and as what is asked for. */
export interface Weights {
  readonly unit: WeightUnit;
  /** Empty where the runs are too poor for a weight to be told. */
  readonly corrections: readonly UncertainVector[];
  /** Trial weights, each once. */
  readonly trials: readonly number[];
}

const correctionText = (
  { size, angleDeg, sizeSd, angleSdDeg }: UncertainVector,
  unit: WeightUnit,
  units: UnitSystem,
): string => {
  const sd =
    sizeSd === null || angleSdDeg === null
      ? ''
      : ` (give or take ${weightText(sizeSd, unit, units, 2)} and ${angleText(angleSdDeg, angleSdDeg < 1 ? 1 : 0)})`;
  return `${weightText(size, unit, units)} at ${angleText(angleDeg)}${sd}`;
};

export function phasorLines(
  { corrections, predictedRest, usable }: PhasorBalance,
  trials: readonly TrialRun[],
  unit: WeightUnit,
  units: UnitSystem,
): string[] {
  if (!usable) return [NO_CORRECTION];
  const lines = corrections.map((one, plane) => `Plane ${plane + 1}: add ${correctionText(one, unit, units)}.`);
  const first = trials.some(({ leftOn = false }) => leftOn)
    ? 'The trial weight that was left on stays on, any other comes off first.'
    : 'Every trial weight comes off first.';
  const rest = predictedRest.map(({ amplitude }) => (amplitude < 1e-9 ? '0' : significant(amplitude, 2)));
  lines.push(`${first} Angles count as those of the trial weights did.`);
  return [...lines, `Vibration that should be left: ${rest.join(', ')} in the unit it was read in.`];
}

export function amplitudeLines(balance: AmplitudeBalance, unit: WeightUnit, units: UnitSystem): string[] {
  const { correction, trialEffect, trialAngleDeg, consistency, rival, usable } = balance;
  if (!usable) return [NO_CORRECTION];
  const lines = [
    `Add ${correctionText(correction, unit, units)}. The trial weight comes off first; angles count as its positions did.`,
    `The trial weight alone makes ${significant(trialEffect, 3)}, and adds in full at ${angleText(trialAngleDeg)}. Consistency ${consistency.toFixed(2)}, where 1 is perfect.`,
  ];
  if (rival !== null) {
    lines.push(`Or, nearly as well: ${weightText(rival.weight, unit, units)} at ${angleText(rival.angleDeg)}.`);
  }
  return lines;
}

/** What the standard allows, the grade of what was found, and a first trial weight. */
export function allowanceLines(
  setting: { readonly massKg: number; readonly rpm: number; readonly gradeMmps: number },
  correctionsGmm: readonly number[],
  units: UnitSystem,
): string[] {
  const { massKg, rpm, gradeMmps } = setting;
  const allowedGmm = permissibleUnbalanceGmm(gradeMmps, massKg, rpm);
  const gmm = (value: number): string => weightText(value, 'g·mm', units);
  const lines = [
    `Allowed at ${rpmText(rpm)} and ${significant(massKg, 2)} kg by ISO 21940-11, G ${gradeMmps}: ${gmm(allowedGmm)} in all, ${gmm(allowedGmm / 2)} in each of two planes.`,
  ];
  for (const [plane, correctionGmm] of correctionsGmm.entries()) {
    lines.push(
      `The unbalance found${inPlane(correctionsGmm, plane)} is of grade G ${significant(gradeOfUnbalance(correctionGmm, massKg, rpm), 2)}.`,
    );
  }
  lines.push(
    `A first trial weight of a tenth of the shaft’s weight in force: ${gmm(trialUnbalanceGmm(massKg, rpm))} (common practice, no source).`,
  );
  return lines;
}

const inPlane = (all: readonly unknown[], plane: number): string => (all.length > 1 ? ` in plane ${plane + 1}` : '');

/** What trial weights and the unbalance found push with; of a weight in grams only its radius would tell. */
export function forceLines({ unit, trials, corrections }: Weights, rpm: number, units: UnitSystem): string[] {
  if (unit === 'g')
    return ['What the weights push with depends on their radius: give them in g·mm or oz·in to have it.'];
  const force = (gmm: number): string => forceText(forceOfUnbalanceN(gmm, rpm), units);
  return [
    ...trials.map((trial) => `A trial weight of ${weightText(trial, unit, units)} pushes with ${force(trial)}.`),
    ...corrections.map(
      ({ size }, plane) => `The unbalance found${inPlane(corrections, plane)} pushes with ${force(size)}.`,
    ),
  ];
}
