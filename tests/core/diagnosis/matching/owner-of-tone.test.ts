import { describe, expect, it } from 'vitest';
import type { Match } from '../../../../src/core/diagnosis/matching/match.ts';
import { ownerOf } from '../../../../src/core/diagnosis/matching/tone-of-order.ts';

/** @param lines by label, the likeliest first, and where they are expected if not each at a place of its own */
const match = (
  lines: readonly (readonly [label: string, probability: number, hz?: number])[],
  fixed = 0,
  unlisted = 0,
): Match =>
  ({
    lines: lines.map(([label, probability, hz = 40 * (1 + label.length / 1000)]) => ({
      origin: { line: { label }, trueHz: hz },
      image: false,
      probability,
    })),
    others: { fixed, unlisted, resonance: 0, noise: 0 },
  }) as unknown as Match;
const owner = (...given: Parameters<typeof match>): string | null =>
  ownerOf(match(...given))?.origin.line.label ?? null;

describe('whose a tone is', () => {
  it('is the likeliest line, also where three share the frequency and none is likelier than the rest', () => {
    expect(owner([['tire 1×', 0.9]])).toBe('tire 1×');
    expect(
      owner([
        ['driveshaft 2×', 0.45],
        ['engine 2×', 0.3],
        ['engine 4× (firing)', 0.2],
      ]),
    ).toBe('driveshaft 2×');
  });

  it('is no one where the lines together are rather not it, or where it is likelier fixed or unknown', () => {
    expect(owner([])).toBeNull();
    expect(owner([['tire 1×', 0.4]])).toBeNull();
    const two = [
      ['tire 1×', 0.3],
      ['engine ½×', 0.25],
    ] as const;
    expect(owner(two)).toBe('tire 1×');
    expect(owner(two, 0.4)).toBeNull();
    expect(owner(two, 0, 0.4)).toBeNull();
  });

  it('is one of two that turn in one ratio, where these are likelier together than anything else', () => {
    const shafts = [
      ['front driveshaft 2×', 0.26, 58.25],
      ['driveshaft 2×', 0.26, 58.25],
    ] as const;
    expect(owner(shafts, 0.1, 0.31)).toBe('front driveshaft 2×');
    expect(owner([shafts[0], ['engine 2×', 0.26, 58.9]], 0.1, 0.31)).toBeNull();
  });
});
