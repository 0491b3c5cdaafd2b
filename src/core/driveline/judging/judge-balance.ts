/** Balance trials, judged: whether a weight can cure it, and whether the readings belong to one rotor. */
import type { Note, Result } from '../../note.ts';
import { success } from '../../note.ts';
import { balanceByAmplitudes } from '../balance/balance-amplitude.ts';
import { balanceByPhasors } from '../balance/balance-influence.ts';
import { forceOfUnbalanceN } from '../balance/balance-grade.ts';
import type { BenchConditions, JudgedMeasurement, Prediction } from './judged-measurement.ts';
import { judgedAs } from './judged-measurement.ts';
import type * as m from '../measurement.ts';
import type { ProcedureId } from '../procedures.ts';
import { ounceFromGram, ozInFromGmm } from '../../units.ts';

/**
 * Trials without phase. 'outside' (there is unbalance to take away) where the runs fit one rotor; 'cannot-tell' where
 * they do not, or two answers fit.
 */
export const judgeAmplitudeTrials = (
  measurement: m.BalanceAmplitudesMeasurement,
  conditions: BenchConditions,
): Result<JudgedMeasurement> => {
  const balance = balanceByAmplitudes(measurement);
  if (!balance.ok) return balance;
  const { correction, verdict, notes, consistency, usable } = balance.value;
  if (!usable) return success(notUsable('balance-amplitudes', 'balance-without-phase', notes));
  const text = `A correction of ${amountText(correction.size, measurement.weightUnit)} at ${Math.round(correction.angleDeg)}° is asked for (consistency ${consistency.toFixed(2)}).`;
  return success(
    judgedAs('balance-amplitudes', 'balance-without-phase', [], {
      verdict: verdict === 'clear' ? 'outside' : 'cannot-tell',
      predicted: forces([correction.size], measurement, conditions),
      notes: [{ code: 'correction', severity: 'info', text }, ...notes],
    }),
  );
};

/** '17.6 g (0.62 oz)': both, since a note is read in both worlds. */
const amountText = (amount: number, unit: m.WeightUnit): string => {
  const us = unit === 'g' ? ounceFromGram(amount) : ozInFromGmm(amount);
  return `${Number(amount.toPrecision(3))} ${unit} (${Number(us.toPrecision(2))} ${unit === 'g' ? 'oz' : 'oz·in'})`;
};

/** Trials with phase: 'outside' where a correction follows surely, 'cannot-tell' where the trials were weak. */
export const judgePhasorTrials = (
  measurement: m.BalancePhasorsMeasurement,
  conditions: BenchConditions,
): Result<JudgedMeasurement> => {
  const balance = balanceByPhasors(measurement);
  if (!balance.ok) return balance;
  const { corrections, notes, usable } = balance.value;
  if (!usable) return success(notUsable('balance-phasors', 'balance-with-phase', notes));
  const list = corrections.map(
    ({ size, angleDeg }, plane) =>
      `${amountText(size, measurement.weightUnit)} at ${Math.round(angleDeg)}° in plane ${plane + 1}`,
  );
  const text = `Correction: ${list.join(', ')}.`;
  const sizes = corrections.map(({ size }) => size);
  return success(
    judgedAs('balance-phasors', 'balance-with-phase', [], {
      verdict: notes.some(({ severity }) => severity === 'warning') ? 'cannot-tell' : 'outside',
      predicted: forces(sizes, measurement, conditions),
      notes: [{ code: 'correction', severity: 'info', text }, ...notes],
    }),
  );
};

/** Runs too poor for a weight: none is named, and nothing follows from it. */
const notUsable = (
  kind: 'balance-amplitudes' | 'balance-phasors',
  procedure: ProcedureId,
  notes: readonly Note[],
): JudgedMeasurement => {
  const text = 'No correction can be worked out from these runs: repeat them at one steady speed.';
  return judgedAs(kind, procedure, [], {
    verdict: 'cannot-tell',
    notes: [{ code: 'no-correction', severity: 'warning', text }, ...notes],
  });
};

/** Forces the corrected unbalance made, one a plane; only where the weights are unbalances and the speed is known. */
const forces = (
  sizes: readonly number[],
  { part, weightUnit }: Pick<m.BalanceAmplitudesMeasurement, 'part' | 'weightUnit'>,
  { driveshaftRpm, wheelRpm }: BenchConditions,
): Prediction[] => {
  const rpm = part === 'driveshaft' ? driveshaftRpm : wheelRpm;
  if (rpm === null || weightUnit !== 'g·mm') return [];
  return sizes.map((size, plane) => ({
    part,
    order: 1,
    quantity: 'force',
    value: forceOfUnbalanceN(size, rpm),
    unit: 'N',
    where: `in plane ${plane + 1}`,
  }));
};
