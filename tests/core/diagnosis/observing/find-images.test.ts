import { describe, expect, it } from 'vitest';
import { wholeSpectra } from '../../../../src/core/diagnosis/track/basebands.ts';
import { findImages } from '../../../../src/core/diagnosis/observing/find-images.ts';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';
import { seededRandom } from '../../../support/random.ts';

const RATE = 100;
const COUNT = 4000;
const timeS = Float64Array.from({ length: 41 }, (_, i) => i);
const track = { timeS, relative: timeS.map((t) => 1 + 0.01 * Math.sin(t / 3)) };
/** At relative speed 1. */
const LINE_HZ = 118;
/** Shows at 18 Hz too, and falls there as the line rises. */
const FALLING_HZ = 82;

/** A line above half the rate, sampled: its phase is that of 118 Hz, and the sampling itself folds it to 18 Hz. */
const sampled = (amplitude: number, lineHz = LINE_HZ): Prepared => {
  const random = seededRandom(5);
  const noise = Float64Array.from({ length: COUNT }, () => random.normal());
  let turns = 0;
  const axis = noise.map((v, i) => {
    const value = amplitude * Math.cos(2 * Math.PI * turns) + 0.05 * v;
    for (let k = 0; k < 20; k++) {
      const t = (i + (k + 0.5) / 20) / RATE;
      const at = Math.min(39, Math.floor(t));
      turns +=
        (lineHz * (track.relative[at]! + (t - at) * (track.relative[at + 1]! - track.relative[at]!))) / RATE / 20;
    }
    return value;
  });
  return { samplingRateHz: RATE, durationS: COUNT / RATE, pieces: [{ startS: 0, axes: [axis] }], up: null };
};

const imagesIn = (prepared: Prepared, linesHz: readonly number[]) =>
  findImages(prepared, wholeSpectra(prepared), [track], linesHz, RATE, 0.01);

describe('the image of a line above half the rate, which wanders by hertz', () => {
  // Sampling theorem: 118 Hz at 100 Hz shows at 18 Hz and rises with the line.
  it('is found where it shows, with its amplitude and its motion, though the speed was stated 2 % wrong', () => {
    const [image, ...more] = imagesIn(sampled(0.1), [LINE_HZ * 1.02]);
    expect(more).toEqual([]);
    expect(image!.peak.frequencyHz).toBeCloseTo(18, 1);
    expect(image!.peak.amplitudeMps2 / 0.1).toBeCloseTo(1, 1);
    expect(image!.motion.slopeHz).toBeCloseTo(LINE_HZ, 0);
  });

  it('falls where the line lies below a multiple of the rate', () => {
    const [image, ...more] = imagesIn(sampled(0.1, FALLING_HZ), [FALLING_HZ, LINE_HZ]);
    expect(more).toEqual([]);
    expect(image!.peak.amplitudeMps2 / 0.1).toBeCloseTo(1, 1);
    expect(image!.motion.slopeHz).toBeCloseTo(-FALLING_HZ, 0);
  });

  it('is not found in noise, nor where no such line is expected', () => {
    expect(imagesIn(sampled(0), [LINE_HZ])).toEqual([]);
    expect(imagesIn(sampled(0.1), [160])).toEqual([]);
  });
});
