import { describe, expect, it } from 'vitest';
import { isMadeAtEndStop } from '../../../../src/core/diagnosis/findings/end-stop.ts';
import type { Finding } from '../../../../src/core/diagnosis/findings/finding.ts';
import type { RunInference } from '../../../../src/core/diagnosis/matching/infer-run.ts';

const inferenceOf = (clippedShare: number): RunInference =>
  ({ run: { recording: { clippedShare } } }) as unknown as RunInference;
const findingOf = (inference: RunInference, frequencyHz: number, amplitudeMps2: number): Finding =>
  ({ inference, match: { tone: { peak: { frequencyHz, amplitudeMps2, limitWidthHz: 0.04 } } } }) as unknown as Finding;

/** A turn of a sine between two end stops: share of its samples that stand there, and its Fourier amplitudes. */
const clipped = (low: number, high: number) => {
  const count = 7200;
  const turn = Array.from({ length: count }, (_, i) =>
    Math.min(high, Math.max(low, Math.sin((2 * Math.PI * (i + 0.5)) / count))),
  );
  const amplitude = (multiple: number): number => {
    const part = (of: (x: number) => number): number =>
      turn.reduce((sum, v, i) => sum + v * of((2 * Math.PI * multiple * (i + 0.5)) / count), 0);
    return (2 / count) * Math.hypot(part(Math.cos), part(Math.sin));
  };
  return { share: turn.filter((v) => v === low || v === high).length / count, amplitude };
};

describe('a multiple of a shake that stood at the end stop of the sensor', () => {
  it('is held to be the end stop’s wherever that alone can make it', () => {
    // Fourier series of a sine cut off at one end or both, from just touching to a square wave.
    for (const [low, high] of [-1, 0, 0.3, 0.6, 0.9].flatMap((at) => [
      [-1, at],
      [-Math.abs(at), Math.abs(at)],
    ])) {
      if (!(high! > low!)) continue;
      const { share, amplitude } = clipped(low!, high!);
      const inference = inferenceOf(share);
      const strong = findingOf(inference, 11.41, amplitude(1));
      for (const multiple of [2, 3, 4, 5]) {
        const made = findingOf(inference, 11.41 * multiple, amplitude(multiple));
        if (share > 0 && amplitude(multiple) > 1e-6) expect(isMadeAtEndStop(made, strong)).toBe(true);
      }
    }
  });

  it('is a shake of its own where it is stronger than that, elsewhere, or where nothing was cut off', () => {
    const third = inferenceOf(1 / 3);
    const strong = findingOf(third, 11.41, 2);
    expect(isMadeAtEndStop(findingOf(third, 22.82, 1.2), strong)).toBe(false);
    expect(isMadeAtEndStop(findingOf(third, 42.6, 0.3), strong)).toBe(false);
    expect(isMadeAtEndStop(strong, findingOf(third, 22.82, 0.3))).toBe(false);
    const hardly = inferenceOf(0.002);
    expect(isMadeAtEndStop(findingOf(hardly, 22.82, 0.1), findingOf(hardly, 11.41, 2))).toBe(false);
    const whole = inferenceOf(0);
    expect(isMadeAtEndStop(findingOf(whole, 22.82, 0.1), findingOf(whole, 11.41, 2))).toBe(false);
    // Another run's end stop is not this one's.
    expect(isMadeAtEndStop(findingOf(whole, 22.82, 0.1), strong)).toBe(false);
  });
});
