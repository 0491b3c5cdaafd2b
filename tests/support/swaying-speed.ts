/** A speed that sways about 1 as sines do, with its turns in closed form: the phase of an order needs no summing. */

/** One sway: its relative depth, and its period, s. */
export interface Sway {
  readonly depth: number;
  readonly periodS: number;
}

export interface SwayingSpeed {
  /** Relative speed at a time, s. */
  readonly at: (t: number) => number;
  /** ∫ of it from 0, s: so many seconds at speed 1 turn as far. */
  readonly turnedAt: (t: number) => number;
}

export const swayingSpeed = (sways: readonly Sway[]): SwayingSpeed => ({
  at: (t) => 1 + sways.reduce((sum, { depth, periodS }) => sum + depth * Math.sin((2 * Math.PI * t) / periodS), 0),
  turnedAt: (t) =>
    t +
    sways.reduce(
      (sum, { depth, periodS }) =>
        sum + ((depth * periodS) / (2 * Math.PI)) * (1 - Math.cos((2 * Math.PI * t) / periodS)),
      0,
    ),
});
