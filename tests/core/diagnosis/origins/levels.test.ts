import { describe, expect, it } from 'vitest';
import { levelPriorOf } from '../../../../src/core/diagnosis/origins/levels.ts';
import { engineTemplates } from '../../../../src/core/vehicle/engine-lines.ts';
import type { Line } from '../../../../src/core/vehicle/line.ts';

/** Prior of engine 2× in an engine of so many cylinders. */
const twiceOf = (cylinders: number) => {
  const line = engineTemplates({ layout: 'rear-drive', cylinders }).find(({ order }) => order === 2);
  return levelPriorOf(line as unknown as Line, cylinders / 2);
};

describe('engine 2×', () => {
  // Pistons of a cross-plane vee-8 and of a vee-12 balance each other at 2×; those of most sixes leave a couple
  // (tabulated so in S. S. Rao, Mechanical Vibrations).
  it('is less to be expected where the pistons balance at 2×', () => {
    for (const balanced of [8, 12]) {
      expect(twiceOf(balanced).fault.presence).toBeLessThan(twiceOf(6).fault.presence);
      expect(twiceOf(balanced).normal.presence).toBeLessThan(twiceOf(6).normal.presence);
    }
  });

  it('is the firing order of a four', () =>
    expect(twiceOf(4).fault.presence).toBeGreaterThan(twiceOf(6).fault.presence));
});
