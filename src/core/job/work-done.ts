/** The words for work done before the complaint. */
import { oneOf } from './guards.ts';
import type { WorkDone } from './job.ts';

/** Every word once; the type makes sure that none is forgotten. */
const WORK: Readonly<Record<WorkDone, true>> = {
  'joint-replaced-front': true,
  'joint-replaced-rear': true,
  'joint-replaced-center': true,
  'ears-pressed-or-hammered': true,
  'shaft-removed': true,
  'shaft-replaced': true,
  'flange-removed': true,
  'center-bearing-replaced': true,
  'springs-changed': true,
  'ride-height-changed': true,
  'mounts-changed': true,
  'tires-rotated': true,
  'tires-replaced': true,
  'wheels-balanced': true,
  'brakes-replaced': true,
  'axle-ratio-changed': true,
  'tire-size-changed': true,
  'engine-repaired': true,
  'exhaust-changed': true,
  'transmission-removed': true,
};

/** All words for work done, for the form, the command line and the reader of job files. */
export const WORK_DONE = Object.keys(WORK) as readonly WorkDone[];

export const workGuard = oneOf<WorkDone>(...WORK_DONE);
