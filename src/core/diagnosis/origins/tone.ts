/** A tone: one peak of one run as diagnosis weighs it, its frequency given at the run's mean speed. */
import type { Peak } from '../../signal/peaks/peak.ts';
import type { Fold } from '../../signal/peaks/folds.ts';
import type { Motion } from '../track/motion.ts';

export interface Tone {
  readonly peak: Peak;
  readonly feltLevel: number;
  /** How it moved while the speed moved; null where the speed was too steady to tell. */
  readonly motion: Motion | null;
  /** The motion by which it was found, where that is an image's: by so many hertz per unit of a track's relative speed. */
  readonly imageMotion: ImageMotion | null;
  /** What uneven sampling instants say of its images; none where they are even, or no expected line may show here. */
  readonly folds: readonly ToneFold[];
}

export interface ToneFold extends Fold {
  /** Share of a true level that is left where the tone shows; 1 where it cannot be of this fold. */
  readonly kept: number;
}

export interface ImageMotion {
  readonly track: number;
  /** Negative where it falls as the speed rises. */
  readonly slopeHz: number;
}
