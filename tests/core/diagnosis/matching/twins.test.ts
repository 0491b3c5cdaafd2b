import { describe, expect, it } from 'vitest';
import { heldToTwins, type Match } from '../../../../src/core/diagnosis/matching/match.ts';
import type { Origin } from '../../../../src/core/diagnosis/origins/origin.ts';
import type { Tone } from '../../../../src/core/diagnosis/origins/tone.ts';
import { amongTwins, twinsOf } from '../../../../src/core/diagnosis/matching/twins.ts';

const origin = (label: string, trueHz: number, faultPresence = 0.1): Origin =>
  ({
    line: { label },
    trueHz,
    levels: { fault: { presence: faultPresence }, normal: { presence: 0.5 } },
  }) as unknown as Origin;

const shaft = origin('driveshaft 1×', 45);
const engine = origin('engine 1×', 45);
const tire = origin('tire 3×', 45.5);
const ALL = [shaft, engine, tire];

const match = (shares: readonly (readonly [Origin, number])[]): Match => ({
  tone: {} as Tone,
  lines: shares.map(([one, probability]) => ({ origin: one, image: false, probability })),
  others: { fixed: 0, unlisted: 0, resonance: 0, noise: 0 },
});

describe('orders that turn in one ratio', () => {
  it('are told by their ratio, where both may be at fault', () => {
    const twins = twinsOf([...ALL, origin('engine 4×', 45, 0.001)]);
    expect(twins.get(shaft)).toEqual([engine]);
    expect(twins.get(tire)).toEqual([]);
  });

  it('leave judgment seven tenths of what they have together, and no more', () => {
    expect(amongTwins(0.95, [0.05])).toBeCloseTo(0.7, 12);
    expect(amongTwins(0.05, [0.95])).toBeCloseTo(0.3, 12);
    expect(amongTwins(0.6, [0.4])).toBe(0.6);
    expect(amongTwins(0.9, [])).toBe(0.9);
    // A converter that slips has moved the other one elsewhere: there is nothing to share, and no nought over nought.
    expect(amongTwins(1, [0])).toBe(1);
    expect(amongTwins(0, [1])).toBe(0);
    expect(amongTwins(0.9, [1e-9])).toBe(0.9);
  });

  it('are never sure one by one in a match; what does not turn with them stays as it was', () => {
    const [held] = heldToTwins(
      [
        match([
          [engine, 0.85],
          [shaft, 0.05],
          [tire, 0.1],
        ]),
      ],
      twinsOf(ALL),
    );
    const shares = held!.lines.map(({ origin: one, probability }) => [one.line.label, probability] as const);
    expect(shares.map(([label]) => label)).toEqual(['engine 1×', 'driveshaft 1×', 'tire 3×']);
    expect(shares[0]![1]).toBeCloseTo(0.63, 12);
    expect(shares[1]![1]).toBeCloseTo(0.27, 12);
    expect(shares[2]![1]).toBe(0.1);
  });
});
