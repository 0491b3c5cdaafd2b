/** How each part is drawn. The pattern tells parts apart without colour; the colour comes from the style sheet. */
import type { Part } from '../../core/vehicle/line.ts';

export interface PartStyle {
  /** Class that sets --part to the part's colour. */
  readonly className: string;
  /** Stroke pattern in pixels; empty for an unbroken line. */
  readonly dashes: string;
}

export const PART_STYLES: Readonly<Record<Part, PartStyle>> = {
  tire: { className: 'part-tire', dashes: '1.5 3.5' },
  driveshaft: { className: 'part-driveshaft', dashes: '' },
  engine: { className: 'part-engine', dashes: '8 4' },
  'half-shaft': { className: 'part-half-shaft', dashes: '8 3 1.5 3' },
  accessory: { className: 'part-accessory', dashes: '3 3' },
  fixed: { className: 'part-fixed', dashes: '12 3' },
  unknown: { className: 'part-unknown', dashes: '1 5' },
};

/** The order in which parts stand on the lanes: the slowest first. */
export const LANE_ORDER: readonly Part[] = [
  'tire',
  'half-shaft',
  'driveshaft',
  'engine',
  'accessory',
  'fixed',
  'unknown',
];
