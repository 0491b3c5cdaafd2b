/** What a person feels or hears, whose it is, and how sure. */
import type { Span } from '../../reading/cut-recording.ts';
import type { Line, Part } from '../../vehicle/line.ts';
import type { RunInference } from '../matching/infer-run.ts';
import type { Match, OriginShare } from '../matching/match.ts';
import type { Perceived } from './perceived.ts';

/** A felt or heard tone with the origin held likeliest. */
export interface Finding {
  readonly part: Part;
  readonly name?: string;
  readonly order: number | null;
  readonly label: string;
  readonly role?: Line['role'];
  readonly probability: number;
  readonly inference: RunInference;
  readonly match: Match;
  /** The likeliest line; null where the tone is held to be fixed or unknown. */
  readonly chosen: OriginShare | null;
  /** At the tone's true frequency: an image is felt where its line is. */
  readonly trueHz: number;
  readonly frequencySdHz: number;
  /** Where it shook in parts of the run only, or only parts are judged: which. Levels are of these; else of all the run. */
  readonly during: readonly Span[] | null;
  readonly amplitudeMps2: number;
  readonly feltLevel: number;
  readonly perceived: Perceived;
  /** Root mean square over that of the road's own shake in the octave about it. */
  readonly overRoad: number;
  /** Felt level (as far as the road lets it be felt) × probability of the origin × probability that it is more than a sound vehicle's normal order. */
  readonly weight: number;
  /** Others with which it takes turns, see turns.ts; absent where there are none. */
  readonly turns?: readonly Finding[];
}
