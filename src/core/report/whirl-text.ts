/** What the margin of a driveshaft piece to its critical speed means, in words. */
import type { WhirlPiece } from '../driveline/whirl.ts';
import { rpmText } from './format.ts';

/**
 * Sentences for one piece, the one that forbids first.
 * @param pieceCount pieces of the shaft: one that is already parted can only be parted again
 */
export function whirlAdvice(piece: WhirlPiece, pieceCount: number): string[] {
  const speeds = [piece.atComplaint, piece.atTopSpeed].filter((number) => number !== null);
  return [
    ...(speeds.some(({ inside }) => !inside) ? beyondLines(piece, pieceCount) : enoughLines(piece, speeds.length)),
    ...(piece.nearHalfCritical
      ? [
          `The complaint speed is near half the critical speed (${rpmText(piece.halfCriticalRpm)}): the 2× of the joints then drives the bending of this piece. Small and equal working angles take away what drives it.`,
        ]
      : []),
  ];
}

const beyondLines = ({ safeRpm }: WhirlPiece, pieceCount: number): string[] => {
  const parting =
    pieceCount > 1
      ? 'shorten this piece by moving its center bearing or adding another'
      : 'two shorter pieces with a center bearing between them';
  return [
    `Do not run this piece above ${rpmText(safeRpm)}: it bends more the faster it turns, and can leave the vehicle.`,
    `What helps, in this order: a lower top speed, held by the driver or a limiter (another gear does not help, since this shaft turns with the wheels; an axle ratio with a smaller number does); then ${parting}; then a larger tube or another material, as the maker of the shaft works it out.`,
  ];
};

const enoughLines = ({ atTopSpeed }: WhirlPiece, speedCount: number): string[] =>
  speedCount === 0
    ? []
    : [
        atTopSpeed === null
          ? 'The margin to the critical speed is enough at the complaint. Give the top speed as well, to see whether it is enough there too.'
          : 'The margin is enough up to top speed: nothing has to be changed on this piece for its critical speed.',
      ];
