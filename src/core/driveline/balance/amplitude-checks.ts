/** What can be wrong with balance runs without phase, and what to say of weak ones. */
import type { Note, Problem } from '../../note.ts';
import type { AmplitudeBalanceInput } from './amplitude-trials.ts';
import { wrapDeg } from '../../complex.ts';
import type { UncertainVector } from './propagate.ts';

/** Consistency outside these is rejected, and a trial whose effect is a smaller share of the level is too light. */
const CONSISTENT: readonly [number, number] = [0.8, 1.2];
const LIGHT_SHARE = 0.3;
/** A correction whose angle is less sure than this, degrees, would as likely spoil as mend; judgment. */
const UNSURE_DEG = 30;

/** A correction of more trial weights than this rests on a change too small to reckon with; judgment. */
const MOST_TRIALS = 10;

/** True where a weight may be named: the runs fit one rotor, and say size and angle well enough to do more good than harm. */
export const isUsable = (
  { consistency, correction }: Pick<AmplitudeFacts, 'consistency' | 'correction'>,
  trialWeight: number,
): boolean =>
  isConsistent(consistency) &&
  (correction.angleSdDeg ?? 0) <= UNSURE_DEG &&
  correction.size <= MOST_TRIALS * trialWeight;

/** More trial positions than anybody drives. */
const MOST_POSITIONS = 72;

export const isConsistent = (consistency: number): boolean =>
  consistency >= CONSISTENT[0] && consistency <= CONSISTENT[1];

/** The first thing wrong with runs without phase, or null. */
export const amplitudeProblem = ({ baseline, trialWeight, positions }: AmplitudeBalanceInput): Problem | null => {
  const readings = [baseline, ...positions].flatMap(({ amplitude, amplitudeSd = 0 }) => [amplitude, amplitudeSd]);
  const angles = positions.map(({ angleDeg }) => angleDeg);
  if (![...readings, ...angles, trialWeight].every(Number.isFinite) || trialWeight <= 0 || Math.min(...readings) < 0) {
    return {
      code: 'reading-missing',
      key: 'positions',
      message: 'A trial weight, position or amplitude is missing or below zero.',
      remedy: 'Give the trial weight, and for each position its angle in degrees and the amplitude read there.',
    };
  }
  if (baseline.amplitude === 0) {
    return {
      code: 'nothing-to-correct',
      key: 'baseline',
      message: 'The run as found shows no vibration, so there is nothing to correct.',
      remedy: 'Check the amplitude of the run as found.',
    };
  }
  if (positions.length > MOST_POSITIONS) {
    return {
      code: 'too-many-positions',
      key: 'positions',
      message: `${positions.length} trial positions were given; ${MOST_POSITIONS} are the most.`,
      remedy: 'Give one reading for each position; three to eight positions are usual.',
    };
  }
  const different = new Set(angles.map((angle) => wrapDeg(Math.round(angle * 1e6) / 1e6))).size;
  if (different >= 3) return null;
  return {
    code: 'too-few-positions',
    key: 'positions',
    message: `${different} trial position${different === 1 ? '' : 's'} cannot tell one answer from its mirror image.`,
    remedy: 'Make one more run with the same trial weight in a third position, well away from the others.',
  };
};

interface AmplitudeFacts {
  readonly effect: number;
  readonly baseline: number;
  readonly consistency: number;
  readonly correction: UncertainVector;
  readonly ambiguous: boolean;
  /** True where the amplitudes came with an uncertainty. */
  readonly sdKnown: boolean;
  /** How many came without one, though others had it. */
  readonly withoutSd: number;
}

/** Notes on runs that fit badly, doubly or weakly. */
export const amplitudeNotes = (facts: AmplitudeFacts): Note[] => {
  const { effect, baseline, consistency, correction, ambiguous, sdKnown, withoutSd } = facts;
  const notes: Note[] = [];
  const add = (code: string, text: string, severity: Note['severity'] = 'warning') =>
    notes.push({ code, severity, text });
  if (!isConsistent(consistency)) {
    add(
      'inconsistent-runs',
      `The runs fit one rotor with a consistency of ${consistency.toFixed(2)}, where 1 is perfect: speed or weight differed between them. Repeat at one steady speed before correcting.`,
    );
  }
  if (ambiguous) {
    add('two-answers', 'Two corrections fit these runs almost alike. Try one; if it gets worse, use the other.');
  }
  if (effect < LIGHT_SHARE * baseline) {
    add('light-trial', 'The trial weight had little effect. A heavier one gives a surer answer.');
  }
  if (!sdKnown) {
    add('no-uncertainty', 'The amplitudes came without an uncertainty, so the answer has none.', 'info');
  } else if (withoutSd > 0) {
    add(
      'some-without-uncertainty',
      `${withoutSd === 1 ? 'One amplitude' : `${withoutSd} amplitudes`} came without an uncertainty and counted as exact, so the answer is less sure than told. Give one for each.`,
    );
  } else if ((correction.angleSdDeg ?? Infinity) > UNSURE_DEG) {
    // No uncertainty at all: within it the runs may have no answer.
    add(
      'unsure-angle',
      'The amplitudes are too unsure to say where the weight goes. Record longer, or use a heavier trial weight.',
    );
  }
  return notes;
};
