/**
 * Peaks that the report lists, on recordings without any line in them. Ground truth: the recordings are made of noise;
 * by the false-alarm allowance at most one in a hundred may list a peak. (A larger study: tests/accuracy/noise-study.ts.)
 */
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/core/analyse.ts';
import { plainRecording } from '../../accuracy/plain-recording.ts';
import { noiseRecording, withTone, type NoiseColour } from '../../support/noise.ts';
import { seededRandom } from '../../support/random.ts';
import { madeJob } from '../../support/made-job.ts';
import { must } from '../../support/must.ts';

const JOB = madeJob(
  { tire: { kind: 'size', size: '265/70R17' }, layout: 'rear-drive', axleRatio: 3.73, cylinders: 8 },
  { file: 'noise.csv', speedMps: 27, speedSource: 'gps', gearRatio: 0.74, load: 'cruise' },
);
/** The hardest of 30 draws of each colour: here noise alone comes near a line. */
const HARD: readonly (readonly [NoiseColour, seed: number])[] = [
  ['white', 24],
  ['pink', 13],
  ['pink', 24],
  ['hump', 7],
  ['hump', 11],
  ['hump', 15],
  ['violet', 24],
  ['many resonances', 7],
];
const RATE = 200;

const listed = (colour: NoiseColour, seed: number, toneMps2 = 0): readonly number[] => {
  const noise = noiseRecording(colour, 30, RATE, 3, seededRandom(seed));
  const prepared = toneMps2 > 0 ? withTone(noise, 31.4, [toneMps2, toneMps2, toneMps2]) : noise;
  return must(analyse(JOB, [plainRecording(prepared.pieces[0]!.axes, RATE)])).report.peaks.map(
    (peak) => peak.frequencyHz,
  );
};

describe('peaks the report lists', () => {
  it.each(HARD)('none in %s noise, draw %i', (colour, seed) => {
    expect(listed(colour, seed)).toEqual([]);
  });

  it('a tone in the same noise is listed', () => {
    expect(listed('white', 1, 0.5).some((hz) => Math.abs(hz - 31.4) < 0.05)).toBe(true);
  });
});
