/** On which vehicles a check can be made, and after which work one goes first: small questions the check files share. */
import type { WorkDone } from '../../job/job.ts';
import type { Vehicle } from '../../vehicle/vehicle.ts';

/** An electric motor is geared to the wheels: it changes no gear, cannot be held standing, and does not fall to idle. */
export const burnsFuel = ({ layout }: Vehicle): boolean => layout !== 'electric';

/** A converter whose lock-up can be released; true also where it was not said. */
export const mayHaveConverter = (vehicle: Vehicle): boolean => burnsFuel(vehicle) && vehicle.converter !== false;

export const drivesFront = ({ layout }: Vehicle): boolean => layout === 'four-wheel-drive';

/** Work in which the fasteners of joints or flanges were off. */
const FASTENERS_OFF: readonly WorkDone[] = [
  'joint-replaced-front',
  'joint-replaced-rear',
  'joint-replaced-center',
  'shaft-removed',
  'shaft-replaced',
  'flange-removed',
  'center-bearing-replaced',
];

export const fastenersWereOff = (work: readonly WorkDone[]): boolean =>
  work.some((done) => FASTENERS_OFF.includes(done));

export const heightWasChanged = (work: readonly WorkDone[]): boolean => work.includes('ride-height-changed');
