/** The words for work done before the complaint. */
import { oneOf } from './guards.ts';
import type { WorkDone } from './job.ts';

/** Every word once, as people say it; the type makes sure that none is forgotten. */
export const WORK_NAMES: Readonly<Record<WorkDone, string>> = {
  'joint-replaced-front': 'Front joint replaced',
  'joint-replaced-rear': 'Rear joint replaced',
  'joint-replaced-center': 'Center joint replaced',
  'ears-pressed-or-hammered': 'Yoke ears pressed or hammered',
  'shaft-removed': 'Driveshaft out and back',
  'shaft-replaced': 'Driveshaft replaced',
  'flange-removed': 'Companion flange off',
  'center-bearing-replaced': 'Center bearing replaced',
  'springs-changed': 'Springs changed',
  'ride-height-changed': 'Ride height changed',
  'mounts-changed': 'Engine or transmission mounts changed',
  'tires-rotated': 'Tires rotated',
  'tires-replaced': 'Tires replaced',
  'wheels-balanced': 'Wheels balanced',
  'brakes-replaced': 'Brakes replaced',
  'axle-ratio-changed': 'Axle ratio changed',
  'tire-size-changed': 'Tire size changed',
  'engine-repaired': 'Engine repaired',
  'exhaust-changed': 'Exhaust changed',
  'transmission-removed': 'Transmission out and back',
};

/** All words for work done, for the form, the command line and the reader of job files. */
export const WORK_DONE = Object.keys(WORK_NAMES) as readonly WorkDone[];

export const workGuard = oneOf<WorkDone>(...WORK_DONE);
