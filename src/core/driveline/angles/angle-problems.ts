/** What can be wrong with angle readings, each with a sentence and a way out. */
import type { Problem } from '../../note.ts';
import type { AngleSetup } from './angle-chain.ts';

/** Past this no cross joint runs; a reading that says so was misread. */
const GREATEST_ANGLE_DEG = 45;
/** More parts in a row than any driveline has. */
const MOST_SHAFTS = 8;

const problem = (code: string, key: string, message: string, remedy: string): Problem => ({
  code,
  key,
  message,
  remedy,
});

/** The first thing wrong with a setup, or null. */
export const angleProblem = (setup: AngleSetup): Problem | null => {
  const { shafts, phasingDeg = [], joints = [], splitErrorDeg = [] } = setup;
  const jointCount = shafts.length - 1;
  if (jointCount < 1) {
    return problem(
      'too-few-shafts',
      'shafts',
      `Working angles need at least two parts in a row, and ${shafts.length} was given.`,
      'Give the slope of the transmission, each shaft piece and the pinion, front to rear.',
    );
  }
  if (shafts.length > MOST_SHAFTS) {
    return problem(
      'too-many-entries',
      'shafts',
      `${shafts.length} parts in a row were given; no driveline has more than ${MOST_SHAFTS}.`,
      'Give the transmission, each shaft piece and the pinion once, and the other driveshaft as a measurement of its own.',
    );
  }
  for (const [index, shaft] of shafts.entries()) {
    const planDeg = shaft.planDeg ?? 0;
    if (!isReading(shaft.slopeDeg) || !isReading(planDeg)) {
      return problem(
        'angle-out-of-range',
        `shafts[${index}]`,
        `Slope ${shaft.slopeDeg}° and plan angle ${planDeg}° of part ${index + 1} are not both between −${GREATEST_ANGLE_DEG}° and ${GREATEST_ANGLE_DEG}°.`,
        'Give angles from level and from straight ahead, in degrees, down to the rear and right to the rear positive.',
      );
    }
  }
  const lists: readonly (readonly [string, number, number, string])[] = [
    ['phasingDeg', phasingDeg.length, jointCount - 1, 'fork twists, one for each shaft piece'],
    ['joints', joints.length, jointCount, 'joint kinds, one between each part and the next'],
    ['splitErrorDeg', splitErrorDeg.length, jointCount, 'centering errors, one for each joint'],
  ];
  for (const [key, given, most, what] of lists) {
    if (given > most) {
      return problem(
        'too-many-entries',
        key,
        `${given} ${what} were given, and ${shafts.length} parts in a row have room for ${most}.`,
        'Leave out what does not belong to this driveline, or add the part that is missing.',
      );
    }
  }
  if (![...phasingDeg, ...splitErrorDeg].every((angle) => Number.isFinite(angle) && Math.abs(angle) <= 360)) {
    return problem(
      'angle-out-of-range',
      'phasingDeg',
      'A fork twist or centering error is not a number of degrees.',
      'Give fork twist in degrees, 0 where the forks are in line.',
    );
  }
  return null;
};

const isReading = (angleDeg: number): boolean => Number.isFinite(angleDeg) && Math.abs(angleDeg) <= GREATEST_ANGLE_DEG;
