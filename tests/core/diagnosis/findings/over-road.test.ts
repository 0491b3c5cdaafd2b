import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import { NOTICED_FROM, overRoad } from '../../../../src/core/diagnosis/findings/over-road.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { normals } from '../../signal/made.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

const RATE_HZ = 200;
/** 3.05 times the outer diameter of 205/55R16, 631.9 mm. */
const WHEEL_HZ = 25 / 1.927295;

const JOB = madeJob(
  { tire: { kind: 'size', size: '205/55R16' }, layout: 'front-drive', finalDrive: 3.94, cylinders: 4 },
  { speedMps: 25, speedSource: 'gps', gearRatio: 0.74, load: 'cruise' },
);

/** Tire 1× of 0.15 m/s² and white noise of a standard deviation per sample, for a minute. */
const reportOn = (noiseMps2: number) => {
  const normal = normals(5);
  const samples = Float64Array.from({ length: 60 * RATE_HZ }, (_, i) => {
    const t = i / RATE_HZ;
    const turned = t + (0.002 / 0.3) * (1 - Math.cos(0.3 * t));
    return 0.15 * Math.cos(2 * Math.PI * WHEEL_HZ * turned) + noiseMps2 * normal();
  });
  return must(analyse(JOB, [plainRecording([samples], RATE_HZ)])).report;
};

describe('a tone against the road about it', () => {
  it('is measured as the seat passes both: a flat floor, Wk of ISO 2631-1 Table 3 by hand', () => {
    // Noise of 0.04 m/s² a bin: density 0.04²/(2·0.375) (m/s²)²/Hz. Wk at 8, 10, 12.5, 16 and 20 Hz: Table 3.
    const density = 0.04 ** 2 / 2 / 0.375;
    const table = [
      [8.84, 1.014],
      [10, 0.988],
      [12.5, 0.902],
      [16, 0.768],
      [17.68, 0.709],
    ] as const;
    const weighted = table.slice(1).reduce((sum, [hz, wk], i) => {
      const [lowHz, low] = table[i]!;
      return sum + ((hz - lowHz) * (wk ** 2 + low ** 2)) / 2;
    }, 0);
    const byHand = (0.902 * 0.3 * Math.SQRT1_2) / Math.sqrt(density * weighted);
    const spectrum = {
      kind: 'amplitude',
      stepHz: 0.25,
      enbwHz: 0.375,
      window: 'hann',
      segmentLength: 800,
      averages: 1,
      effectiveAverages: 1,
      amplitudeMps2: new Float64Array(401),
    } as const;
    expect(overRoad(spectrum, new Float64Array(401).fill(0.04), 12.5, 0.3) / byHand).toBeCloseTo(1, 1.5);
  });

  it('is noticed where it makes the shake a tenth stronger', () => {
    expect(Math.hypot(1, NOTICED_FROM)).toBeCloseTo(1.1, 12);
  });

  it('is found on a smooth road', () => {
    const report = reportOn(0.1);
    expect(report).toMatchObject({ verdict: 'found', findings: [{ label: 'tire 1×', perceived: 'felt' }] });
  });

  it('is no answer to the complaint where the road covers it, and the report asks for a smoother road', () => {
    const report = reportOn(0.9);
    expect(report).toMatchObject({ verdict: 'cannot-tell', findings: [{ label: 'tire 1×', perceived: 'buried' }] });
    // White noise of 0.9 m/s² in 100 Hz: 0.09 m/s²/√Hz; 9.2 Hz of it lie in the octave.
    const [{ amplitudeMps2, overRoad: told }] = report.findings as [(typeof report.findings)[number]];
    expect(told! / ((amplitudeMps2 * Math.SQRT1_2) / (0.09 * Math.sqrt(9.17)))).toBeCloseTo(1, 1);
    expect(report.sentence).toBe(
      'Cannot tell whether this is the complaint: tire 1× is there, at 13.0 Hz, but buried in the road’s own shake, ' +
        'which is three times as strong.',
    );
    expect(report.why).toContain('Record at the same speed on a smoother road');
  });
});
