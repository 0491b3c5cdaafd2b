import { describe, expect, it } from 'vitest';
import { nameOver } from '../../src/app/bench/results/angles.ts';
import { namesOf } from '../../src/app/sheet/read-cautions.svelte.ts';
import { CAUTIONS, cautionTexts } from '../../src/core/cautions.ts';
import { ALL_CHECKS } from '../../src/core/diagnosis/checks/all-checks.ts';

describe('cautions that were read', () => {
  it('fold to one line that still names what each is about', () => {
    expect(namesOf(cautionTexts(['hoist', 'turning-parts']))).toBe('hoist and stands, turning parts');
    // Every caution that a check of the answer carries has a name of its own, none of them a sentence.
    const names = ALL_CHECKS.flatMap(({ cautions = [] }) => cautions.map((id) => namesOf([CAUTIONS[id]])));
    expect(names.length).toBeGreaterThan(10);
    for (const name of names) expect(name.length).toBeLessThan(42);
    expect(namesOf(['Mind the step: it is wet.'])).toBe('Mind the step');
  });
});

describe('names in the picture of the driveline', () => {
  it('stand above their line, higher where it slopes, and inside the picture', () => {
    const ends = [
      [16, 50],
      [100, 50],
      [500, 250],
      [600, 250],
    ] as const;
    const [first, shaft, last] = [0, 1, 2].map((index) => nameOver(ends, index, 620));
    expect(first).toEqual({ x: 0, y: 36, anchor: 'start' });
    expect(last).toEqual({ x: 620, y: 236, anchor: 'end' });
    expect(shaft).toMatchObject({ x: 300, anchor: 'middle' });
    // A line that falls by half has risen by half of half a name at its left end.
    expect(shaft!.y).toBe(150 - 14 - 17);
  });
});
