/** Which causes the sheet offers as put right: our own rule, checked on a made-up ranking. */
import { expect, it } from 'vitest';
import { repairable } from '../../src/app/sheet/repairable.ts';
import type { Report } from '../../src/core/report/report.ts';

const cause = (id: string, repair = 'Do it.') => ({ id, title: `Title ${id}`, repair });
const ids = 'hgfedcba'.split('');
const report = {
  findings: [
    { label: 'tire 1×', causes: [cause('other')] },
    { label: 'driveshaft 2×', causes: [...ids.map((id) => cause(id)), cause('x'), cause('something-else', '')] },
  ],
  proof: { complaint: 'driveshaft 2×' },
} as unknown as Report;

it('offers the likeliest causes of the complaint that can be put right, and those named already', () => {
  expect(repairable(report, []).map(({ id }) => id)).toEqual('abcdefgh'.split(''));
  expect(repairable(report, ['x']).map(({ id }) => id)).toContain('x');
});

it('offers nothing where nothing was complained of', () => {
  expect(repairable({ ...report, proof: undefined } as unknown as Report, [])).toEqual([]);
});
