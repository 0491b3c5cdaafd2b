/** A sine, the samples a recorder takes of it, and the slower sine that leaves the same samples. */
import { aliasOfHz } from '../../core/vehicle/alias.ts';
import type { Point } from '../plot/plot.ts';

export interface Sampling {
  readonly frequencyHz: number;
  readonly rateHz: number;
}

export interface SampledSine {
  readonly truth: readonly Point[];
  readonly dots: readonly Point[];
  readonly image: readonly Point[];
  readonly shownHz: number;
  readonly isFalse: boolean;
}

/** Long enough for a slow image, short enough that single waves are seen. */
export const SHOWN_S = 0.5;
const CURVE_STEPS = 1200;

/** Cosines, so that the image has the same phase as the truth whichever way it folds. */
const wave = (frequencyHz: number, timeS: number): number => Math.cos(2 * Math.PI * frequencyHz * timeS);

export function sampledSine({ frequencyHz, rateHz }: Sampling): SampledSine {
  const shownHz = aliasOfHz(frequencyHz, rateHz);
  const curve = (hz: number): Point[] =>
    Array.from({ length: CURVE_STEPS + 1 }, (_, index) => {
      const timeS = (SHOWN_S * index) / CURVE_STEPS;
      return [timeS, wave(hz, timeS)] as const;
    });
  const count = Math.floor(SHOWN_S * rateHz + 1e-9) + 1;
  return {
    truth: curve(frequencyHz),
    image: curve(shownHz),
    dots: Array.from({ length: count }, (_, index) => [index / rateHz, wave(frequencyHz, index / rateHz)] as const),
    shownHz,
    isFalse: frequencyHz >= rateHz / 2,
  };
}

/** What is shown for each true frequency, at the corners of the zigzag. */
export function foldPoints(rateHz: number, toHz: number): readonly Point[] {
  const half = rateHz / 2;
  const corners = Array.from({ length: Math.ceil(toHz / half) + 1 }, (_, index) => Math.min(index * half, toHz));
  return corners.map((hz) => [hz, aliasOfHz(hz, rateHz)] as const);
}
