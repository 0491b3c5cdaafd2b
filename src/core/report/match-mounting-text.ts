/** A tire to be turned on its rim, in words. */
import type { MatchMounting } from '../driveline/runout/match-mounting.ts';
import { angleText, judgedText, smallLengthText } from './bench-text.ts';
import type { UnitSystem } from './format.ts';

export const MATCH_MOUNTING = 'Tire turned on its rim (match mounting)';

/** What is still missing, where only one of the two was read around the clock. */
export const MATCH_MOUNTING_NEEDS =
  'With readings around the clock on the tire and on the rim, from one mark and in one sense, it is worked out here what turning the tire on its rim leaves.';

/** Less than a wheel’s dial shows. */
const LEAST_SHOWN_MM = 0.005;

/** '150° (5 o’clock)', to the half hour, the mark at 12. */
const spotText = (degrees: number): string => {
  const halfHours = Math.round(degrees / 15) % 24;
  const hour = Math.floor(halfHours / 2) || 12;
  return `${angleText(degrees)} (${hour}${halfHours % 2 === 1 ? ':30' : ''} o’clock)`;
};

/** What to do, and the two figures that tell why. */
export function matchMountingLines(match: MatchMounting, units: UnitSystem): string[] {
  const { tireHighSpotDeg, rimLowSpotDeg, apartDeg, turnDeg, nowTirMm, left, leftSdMm, pays } = match;
  const mm = (value: number): string => smallLengthText(value, units, 2);
  const [tire, rim] = [spotText(tireHighSpotDeg), spotText(rimLowSpotDeg)];
  const parts = `Once round the tire alone has ${mm(match.tireOwnTirMm)}, the rim ${mm(match.rimTirMm)}. The tire’s high spot is at ${tire}, the rim’s low spot at ${rim}: ${angleText(apartDeg)} apart.`;
  if (!pays)
    return [
      parts,
      `Leave the tire where it sits: the best place on the rim would leave ${mm(left.measured)} instead of ${mm(nowTirMm)}, too little gained to break the bead for.`,
    ];
  const sense =
    turnDeg >= 0 ? 'towards the places that were read later' : 'back, towards the places that were read earlier';
  const sure = leftSdMm === null || leftSdMm < LEAST_SHOWN_MM ? '' : `, give or take ${mm(leftSdMm)}`;
  return [
    parts,
    `Mark the tire at ${tire} and turn it on the rim by ${angleText(apartDeg)}, ${sense}, until the mark stands at ${rim}: ${mm(left.measured)} should be left instead of ${mm(nowTirMm)} once round${sure}.`,
    judgedText(left, units),
    left.inside
      ? 'Degrees and hours count from the mark, 12 o’clock, in the sense in which the places were read. Read the tire again afterwards, then balance.'
      : 'Turning is not enough: replace what runs out more, tire or rim. Degrees and hours count from the mark, 12 o’clock, in the sense in which the places were read.',
    'A dial does not show uneven stiffness, and turning does not cure what goes twice round: where the shake stays, measure the force under load.',
  ];
}
