/** Trial runs, from options, recordings or a job, solved in the way they were made. */
import { balanceByAmplitudes } from '../../core/driveline/balance/balance-amplitude.ts';
import { balanceByPhasors } from '../../core/driveline/balance/balance-influence.ts';
import type { WeightUnit } from '../../core/driveline/measurement.ts';
import type { ProcedureId } from '../../core/driveline/procedures.ts';
import type { Note, Result } from '../../core/note.ts';
import { failure, success } from '../../core/note.ts';
import type { Arguments } from '../arguments.ts';
import type { Io } from '../io.ts';
import { UsageError } from '../io.ts';
import { amplitudeInput, isAmplitude, phasorInput, positionsOf, weightOf } from './balance-input.ts';
import { recordedInput } from './balance-recordings.ts';
import type { Weights } from './balance-text.ts';
import { amplitudeLines, phasorLines } from './balance-text.ts';
import type { Bench } from './bench-options.ts';

/** What was solved, in whichever way, ready to be told. */
export interface Solved extends Weights {
  readonly procedure: ProcedureId;
  readonly heading: string;
  readonly lines: readonly string[];
  readonly notes: readonly Note[];
  readonly result: object;
}

export type BalancedPart = 'driveshaft' | 'tire';

/** Null where no runs were given at all. */
export async function solve(
  given: Arguments,
  bench: Bench,
  io: Io,
  part: BalancedPart,
): Promise<Result<Solved> | null> {
  if (given.texts('run').length > 0) {
    const { input, unit } = phasorInput(given);
    return phasorsSolved(input, unit, bench);
  }
  const positions = positionsOf(given);
  const trial = given.text('trial');
  const [found, more] = given.texts('found');
  if (found === undefined && positions.length === 0) return jobSolved(bench, part);
  if (found === undefined || trial === undefined || positions.length === 0 || more !== undefined) {
    throw new UsageError(
      'without phase, --found and --trial are given once and --at for each position; with phase, --found and --run.',
    );
  }
  const { amount, unit } = weightOf('trial', trial);
  const numbers = [found, ...positions.map(({ shown }) => shown)].map(isAmplitude);
  if (numbers.every(Boolean)) return amplitudesSolved(amplitudeInput(found, amount, positions), unit, bench, []);
  if (numbers.some(Boolean)) {
    const odd = [found, ...positions.map(({ shown }) => shown)].find((text) => !isAmplitude(text));
    throw new UsageError(
      `"${odd}" is not an amplitude, so it was taken for a recording; give all runs as amplitudes, or all as recordings.`,
    );
  }
  const recorded = await recordedInput(io, bench, { found, trialWeight: amount, positions }, `${part} 1×`);
  return recorded.ok ? amplitudesSolved(recorded.value.input, unit, bench, recorded.value.notes) : recorded;
}

/** The trials held in the job; null where there are none. */
function jobSolved(bench: Bench, part: BalancedPart): Result<Solved> | null {
  const held = bench.job.measurements.findLast(
    (one) => (one.kind === 'balance-amplitudes' || one.kind === 'balance-phasors') && one.part === part,
  );
  if (held?.kind === 'balance-amplitudes') return amplitudesSolved(held, held.weightUnit, bench, []);
  return held?.kind === 'balance-phasors' ? phasorsSolved(held, held.weightUnit, bench) : null;
}

function phasorsSolved(
  input: Parameters<typeof balanceByPhasors>[0],
  unit: WeightUnit,
  { units }: Bench,
): Result<Solved> {
  const solved = balanceByPhasors(input);
  if (!solved.ok) return failure(solved.problem);
  const { corrections, notes, usable } = solved.value;
  return success({
    procedure: 'balance-with-phase',
    unit,
    corrections: usable ? corrections : [],
    trials: [...new Set(input.trials.map(({ weight }) => weight))],
    heading: 'Correction, from runs with phase',
    lines: phasorLines(solved.value, input.trials, unit, units),
    notes,
    result: { input: { baseline: input.baseline, trials: input.trials }, phasors: solved.value },
  });
}

function amplitudesSolved(
  input: Parameters<typeof balanceByAmplitudes>[0],
  unit: WeightUnit,
  { units }: Bench,
  notes: readonly Note[],
): Result<Solved> {
  const solved = balanceByAmplitudes(input);
  if (!solved.ok) return failure(solved.problem);
  const { baseline, trialWeight, positions } = input;
  return success({
    procedure: 'balance-without-phase',
    unit,
    corrections: solved.value.usable ? [solved.value.correction] : [],
    trials: [trialWeight],
    heading: `Correction, from runs without phase: ${solved.value.verdict}`,
    lines: amplitudeLines(solved.value, unit, units),
    notes: [...notes, ...solved.value.notes],
    result: { input: { baseline, trialWeight, positions }, amplitudes: solved.value },
  });
}
