/** Readings in inches beside a limit that the trade says in round inches: 25.4 mm to the inch, by hand. */
import { expect, it } from 'vitest';
import { judge, limitOf } from '../../../src/core/driveline/limits/limit.ts';
import { measuredText } from '../../../src/core/report/bench-text.ts';

const endPlay = (mm: number): string => measuredText(judge(mm, limitOf('end-play')), 'us').replaceAll('\u00a0', ' ');

it.each([
  // 0.030 / 25.4 = 0.00118
  [0.03, '0.0012 in (0.030 mm)'],
  [0.05, '0.0020 in (0.050 mm)'],
  [0.04999, '0.0020 in (0.050 mm)'],
  // Outside 0.002 in by a hair: 0.051 / 25.4 = 0.00201 would read as the limit itself.
  [0.051, '0.0021 in (0.051 mm)'],
  [-0.05, '−0.0020 in (−0.050 mm)'],
])('%f mm of end play', (mm, text) => {
  expect(endPlay(mm)).toBe(text);
});
