/**
 * Turning a shaft on its companion flange. What the dial (or the vibration) shows at the shaft's end is the flange's
 * own runout plus the shaft's own, as vectors; by turning the shaft a bolt position on, only the shaft's part turns.
 */
import type { Complex } from '../../complex.ts';
import { add, divide, multiply, polar, size, subtract } from '../../complex.ts';

export interface IndexPosition {
  /** Bolt positions the shaft is turned on from where it is now, in the sense of the readings' angles. */
  readonly steps: number;
  /** Runout at the shaft's end that this would leave, indicator reading, mm. */
  readonly tirMm: number;
}

/** Flange part and shaft part of the eccentricity, mm, as vectors in the flange's angles, shaft as it sits now. */
export interface FlangeAndShaft {
  readonly flangeMm: Complex;
  readonly shaftMm: Complex;
}

/** Split by measuring the flange's own pilot as well: the shaft's part is what is left. */
export const splitByFlange = (totalMm: Complex, flangeMm: Complex): FlangeAndShaft => ({
  flangeMm,
  shaftMm: subtract(totalMm, flangeMm),
});

/**
 * Split by measuring the shaft's end twice, now and with the shaft turned on by some bolt positions.
 * @param steps bolt positions turned; must not be whole turns
 */
export const splitByTurning = (
  totalNowMm: Complex,
  totalTurnedMm: Complex,
  steps: number,
  boltCount: number,
): FlangeAndShaft => {
  const turn = polar(1, (360 * steps) / boltCount);
  const shaftMm = divide(subtract(totalTurnedMm, totalNowMm), subtract(turn, { re: 1, im: 0 }));
  return { flangeMm: subtract(totalNowMm, shaftMm), shaftMm };
};

/** What each bolt position would leave, best first. */
export const indexPositions = ({ flangeMm, shaftMm }: FlangeAndShaft, boltCount: number): IndexPosition[] =>
  Array.from({ length: boltCount }, (_, steps) => ({
    steps,
    tirMm: 2 * size(add(flangeMm, multiply(shaftMm, polar(1, (360 * steps) / boltCount)))),
  })).sort((a, b) => a.tirMm - b.tirMm || a.steps - b.steps);
