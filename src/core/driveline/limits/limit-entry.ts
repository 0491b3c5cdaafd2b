/** One limit as the table holds it: the figure, which way it binds, and where it comes from. */

/** Where a figure comes from. */
export type LimitStatus = 'standard' | 'published' | 'common-practice' | 'judgment' | 'maker';

export type LimitUnit = '°' | 'rad/s²' | 'mm' | 'g' | 'mm/s' | 'share';

export interface LimitEntry {
  readonly title: string;
  readonly value: number;
  readonly unit: LimitUnit;
  readonly sense: 'at-most' | 'at-least';
  readonly status: LimitStatus;
  /** Source in words: a standard by its name, or 'common practice, no source'. */
  readonly source: string;
  /** The figure as the trade says it in inches, where that is not a plain conversion. */
  readonly inchText?: string;
}
