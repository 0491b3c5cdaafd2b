/**
 * The firing order (a multiple, not a sequence): firing pulses per crankshaft turn of an evenly firing four-stroke engine: half the number of cylinders.
 * (Phasor sum of N pulses over 720°; standard text result.)
 *
 * @returns null where the number of cylinders is not known or not a whole number from 1 up.
 */
export const firingOrder = (cylinders: number | undefined): number | null =>
  cylinders !== undefined && Number.isInteger(cylinders) && cylinders >= 1 ? cylinders / 2 : null;
