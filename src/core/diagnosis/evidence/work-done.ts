/** Work done before the complaint as evidence. */
import type { WorkDone } from '../../job/job.ts';
import type { CauseWeights } from '../weights.ts';

/** Heads of sentences. */
export const WORK_WORDS: Readonly<Record<WorkDone, string>> = {
  'joint-replaced-front': 'The front joint was replaced before this complaint',
  'joint-replaced-rear': 'The rear joint was replaced before this complaint',
  'joint-replaced-center': 'The center joint was replaced before this complaint',
  'ears-pressed-or-hammered': 'Yoke ears were pressed or hammered before this complaint',
  'shaft-removed': 'The driveshaft was out before this complaint',
  'shaft-replaced': 'The driveshaft was replaced before this complaint',
  'flange-removed': 'The companion flange was off before this complaint',
  'center-bearing-replaced': 'The center bearing was replaced before this complaint',
  'springs-changed': 'Springs were changed before this complaint',
  'ride-height-changed': 'The ride height was changed before this complaint',
  'mounts-changed': 'Mounts were changed before this complaint',
  'tires-rotated': 'The wheels were moved around before this complaint',
  'tires-replaced': 'Tires were replaced before this complaint',
  'wheels-balanced': 'The wheels were balanced before this complaint',
  'brakes-replaced': 'Brake parts were replaced before this complaint',
  'axle-ratio-changed': 'The axle ratio was changed before this complaint',
  'tire-size-changed': 'The tire size was changed before this complaint',
  'engine-repaired': 'The engine was repaired before this complaint',
  'exhaust-changed': 'The exhaust was changed before this complaint',
  'transmission-removed': 'The transmission was out before this complaint',
};

/** How the work done moves a cause: each work that names it, or the factor for causes that only work brings. */
export function workRatios(
  weights: CauseWeights,
  work: readonly WorkDone[],
): readonly { readonly work: WorkDone | null; readonly ratio: number }[] {
  const named = [...new Set(work)].flatMap((done) => {
    const ratio = weights.work?.[done];
    return ratio === undefined ? [] : [{ work: done, ratio }];
  });
  return named.length > 0 ? named : [{ work: null, ratio: weights.withoutWork ?? 1 }];
}

/**
 * All work together. Risks add and doubts multiply: two joints replaced are twice the chance of a wrong ring, not the
 * square of it, since each was one more occasion to go wrong.
 */
export function workRatio(weights: CauseWeights, work: readonly WorkDone[]): number {
  const ratios = workRatios(weights, work).map(({ ratio }) => ratio);
  const risk = ratios.filter((ratio) => ratio > 1).reduce((sum, ratio) => sum + ratio - 1, 1);
  return ratios.filter((ratio) => ratio < 1).reduce((product, ratio) => product * ratio, risk);
}
