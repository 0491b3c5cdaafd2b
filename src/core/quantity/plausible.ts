/**
 * What the figures of the bench can be, so that a wrong unit or a slipped decimal point is asked about before anything is
 * worked out from it. Wide enough for a go-kart and a heavy truck: common practice, no source.
 */
import { inchFromMm } from '../units.ts';
import type { QuantityKind } from './quantity-kinds.ts';
import { ACCELERATION_MPS2, LENGTH_MM, MASS_G, MASS_KG, TURNING_SPEED_RPM, UNBALANCE_GMM } from './quantity-kinds.ts';

/** '0.3 to 10 mm (0.012 to 0.39 in)' */
const between = (leastMm: number, mostMm: number): string => {
  const inch = (mm: number): string => String(Number(inchFromMm(mm).toPrecision(2)));
  return `${leastMm} to ${mostMm} mm (${inch(leastMm)} to ${inch(mostMm)} in)`;
};

const length = (name: string, leastMm: number, mostMm: number, example: string): QuantityKind => ({
  ...LENGTH_MM,
  name,
  range: [leastMm, mostMm],
  between: between(leastMm, mostMm),
  example,
});

const RUNOUT_EXAMPLE = '0.25 mm or 0.010 in';

/** Lengths read on the bench, by what they are of. */
export const LENGTHS = {
  ring: length('ring thickness', 0.3, 10, '1.55 mm or 0.061 in'),
  groove: length('groove span', 15, 400, '81.85 mm or 3.222 in'),
  cross: length('cross with its cups', 15, 400, '78.60 mm or 3.094 in'),
  'groove-offset': length('groove offset', -5, 5, '0.02 mm or 0.001 in'),
  play: length('play reading', 0, 5, '0.05 mm or 0.002 in'),
  runout: length('runout', 0, 25, RUNOUT_EXAMPLE),
  dial: length('dial reading', -25, 25, RUNOUT_EXAMPLE),
  piece: length('shaft length', 50, 4000, '1320 mm or 52 in'),
  tube: length('tube diameter', 10, 300, '76.2 mm or 3 in'),
  wall: length('wall thickness', 0.3, 30, '1.65 mm or 0.065 in'),
  distance: length('distance', 10, 6000, '900 mm or 35.4 in'),
} as const satisfies Record<string, QuantityKind>;

export type LengthOf = keyof typeof LENGTHS;

export const DRIVESHAFT_RPM: QuantityKind = {
  ...TURNING_SPEED_RPM,
  name: 'driveshaft speed',
  range: [0, 20_000],
  between: '0 to 20,000 rpm',
  example: '3000 rpm',
};

/** Of an order, zero to peak: none is below zero, and none reaches what would shake a sensor off. */
export const LEVEL_MPS2: QuantityKind = {
  ...ACCELERATION_MPS2,
  name: 'level',
  range: [0, 200],
  between: '0 to 200 m/s² (0 to 20 g)',
};

/** A shaft piece, or the yoke and joint at one end of it. */
export const SHAFT_MASS_KG: QuantityKind = {
  ...MASS_KG,
  range: [0.01, 200],
  between: '0.01 to 200 kg (0.02 to 440 lb)',
};

export const TRIAL_WEIGHT_G: QuantityKind = {
  ...MASS_G,
  name: 'weight',
  range: [0, 2000],
  between: '0 to 2000 g (0 to 70 oz)',
};

export const TRIAL_WEIGHT_GMM: QuantityKind = {
  ...UNBALANCE_GMM,
  name: 'weight',
  range: [0, 5e5],
  between: '0 to 500,000 g·mm (0 to 690 oz·in)',
  example: '500 g·mm or 0.7 oz·in',
};
