import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Recording, Segment } from '../../../../src/core/reading/recording.ts';
import { withoutDrift, withoutLine } from '../../../../src/core/signal/prepare/drift.ts';
import { findPeaks } from '../../../../src/core/signal/peaks/detect.ts';
import { prepare, preparationNotes } from '../../../../src/core/signal/prepare/prepare.ts';
import { normals, parkMiller, samples, tone } from '../made.ts';

const RATE = 100;

function recording(segments: readonly Segment[], direction: readonly number[] | null = null): Recording {
  const count = segments.reduce((sum, s) => sum + s.accelerationMps2[0]!.length, 0);
  const channels = (['x', 'y', 'z'] as const).slice(0, segments[0]!.accelerationMps2.length);
  return {
    name: 'made',
    samplingRateHz: RATE,
    timeBase: { from: 'stamps', because: 'made', jitterSdS: 0, evenSampling: true },
    durationS: count / RATE,
    channels: channels.map((axis) => ({ axis, columnName: axis, unit: 'm/s²', unitBecause: 'made', mps2PerUnit: 1 })),
    segments,
    gravity: direction ? { mps2: 9.80665, direction } : null,
    clippedShare: 0,
    notes: [],
  };
}

const segment = (startS: number, axes: readonly Float64Array[], timeS: Float64Array | null = null): Segment => ({
  startS,
  timeS,
  accelerationMps2: axes,
});

/** Amplitude of a tone left after drift removal, away from the ends. */
function left(hz: number): number {
  const out = withoutDrift(samples(100 * RATE, RATE, tone(1, hz)), RATE);
  let [re, im] = [0, 0];
  // Whole periods: 80 s holds a whole number of all the frequencies asked for.
  for (let i = 10 * RATE; i < 90 * RATE; i += 1) {
    re += out[i]! * Math.cos((2 * Math.PI * hz * i) / RATE);
    im += out[i]! * Math.sin((2 * Math.PI * hz * i) / RATE);
  }
  return Math.hypot(re, im) / (40 * RATE);
}

describe('taking out what is too slow to be vibration', () => {
  it.each([0.05, 0.25, 0.5, 1, 2, 5, 13.75])('at %f Hz leaves 1 − D(f)³, D the response of a 1.51 s mean', (hz) => {
    // Exact response of a mean over 151 samples, three times (Dirichlet kernel).
    const d = Math.sin((Math.PI * hz * 151) / RATE) / (151 * Math.sin((Math.PI * hz) / RATE));
    expect(left(hz)).toBeCloseTo(Math.abs(1 - d ** 3), 4);
    if (hz >= 2) expect(Math.abs(left(hz) - 1)).toBeLessThan(0.003);
  });

  it('takes out a constant and a ramp to the very ends', () => {
    const out = withoutDrift(
      samples(1000, RATE, (t) => 9.8 - 0.3 * t),
      RATE,
    );
    for (const v of out) expect(Math.abs(v)).toBeLessThan(1e-9);
  });

  it('takes a straight line out of what is shorter than the mean', () => {
    const short = withoutDrift(
      samples(50, RATE, (t) => 4 + 2 * t),
      RATE,
    );
    for (const v of short) expect(Math.abs(v)).toBeLessThan(1e-12);
    // Least squares by hand: 0, 1, 0 about its mean, slope 0.
    const hill = withoutLine(Float64Array.of(0, 1, 0));
    [-1 / 3, 2 / 3, -1 / 3].forEach((v, i) => expect(hill[i]).toBeCloseTo(v, 12));
    const line = withoutLine(Float64Array.of(0, 0, 3));
    [0.5, -1, 0.5].forEach((v, i) => expect(line[i]).toBeCloseTo(v, 12));
    expect(Array.from(withoutLine(Float64Array.of(5)))).toEqual([0]);
  });
});

describe('a recording made ready', () => {
  it('takes gravity out and keeps its direction, whatever the mounting; the share along it is right', () => {
    const normal = normals(3);
    const noise = Array.from({ length: 3 }, () => samples(30 * RATE, RATE, () => 0.02 * normal()));
    const direction = fc
      .tuple(...([0, 0, 0] as const).map(() => fc.double({ min: -1, max: 1, noNaN: true })))
      .filter((d) => Math.hypot(...d) > 0.2)
      .map((d) => d.map((v) => v / Math.hypot(...d)));
    fc.assert(
      fc.property(direction, direction, (up, shake) => {
        const line = tone(0.5, 14.4);
        const axes = up.map((u, a) => noise[a]!.map((v, i) => 9.80665 * u + shake[a]! * line(i / RATE) + v));
        const prepared = prepare(recording([segment(0, axes)], up));
        expect(prepared.up).toEqual(up);
        for (const axis of prepared.pieces[0]!.axes)
          expect(Math.abs(axis.reduce((s, v) => s + v, 0) / axis.length)).toBeLessThan(0.05);
        const peak = findPeaks(prepared).find((p) => Math.abs(p.frequencyHz - 14.4) < 0.05)!;
        const along = up.reduce((sum, u, a) => sum + u * shake[a]!, 0);
        expect(peak.verticalShare).toBeCloseTo(along ** 2, 1);
        expect(Math.abs(peak.verticalShare! - along ** 2)).toBeLessThan(0.02);
        expect(Math.abs(peak.amplitudeMps2 - 0.5)).toBeLessThan(0.01);
      }),
      { numRuns: 8, seed: 5 },
    );
    expect(prepare(recording([segment(0, noise)])).up).toBeNull();
  });

  it('keeps the pieces between gaps apart, with their own beginnings', () => {
    const a = parkMiller(1, 400);
    const b = parkMiller(2, 600);
    const prepared = prepare(recording([segment(0, [a]), segment(30, [b])]));
    expect(prepared.pieces.map((p) => [p.startS, p.axes[0]!.length])).toEqual([
      [0, 400],
      [30, 600],
    ]);
    expect(prepared.durationS).toBe(10);
    expect(Array.from(prepared.pieces[1]!.axes[0]!)).toEqual(Array.from(withoutDrift(b, RATE)));
  });

  it('leaves pieces under two seconds out and says so; keeps the longest where there is nothing else', () => {
    const piece = (startS: number, n: number): Segment => segment(startS, [parkMiller(4, n)]);
    const most = recording([piece(0, 150), piece(10, 1000), piece(40, 199), piece(50, 200)]);
    expect(prepare(most).pieces.map((p) => p.startS)).toEqual([10, 50]);
    const [note] = preparationNotes(most);
    expect(note).toMatchObject({ code: 'short-pieces-left-out', severity: 'warning' });
    expect(note!.text).toBe(
      '2 pieces between gaps, 3.5 s in all, were left out: under 2 s a piece cannot tell lines apart.',
    );
    const few = recording([piece(0, 100), piece(5, 1900)]);
    expect(preparationNotes(few)[0]).toMatchObject({
      severity: 'info',
      text: expect.stringContaining('1 piece between gaps, 1.0 s in all, was left out'),
    });
    expect(prepare(recording([piece(0, 60), piece(2, 120), piece(9, 80)])).pieces.map((p) => p.startS)).toEqual([2]);
  });

  it('brings uneven stamps to even ones on the recording’s clock and says so', () => {
    const off = parkMiller(7, 3000);
    const timeS = Float64Array.from({ length: 3000 }, (_, i) => 0.5 + (i + 0.5 * off[i]!) / RATE);
    const made = recording([segment(20, [timeS.map((t) => Math.cos(2 * Math.PI * 20 * (20 + t)))], timeS)]);
    const prepared = prepare(made);
    const { startS, axes } = prepared.pieces[0]!;
    expect(startS).toBeCloseTo(20 + timeS[0]!, 12);
    let worst = 0;
    for (let i = 300; i < 2700; i += 1) {
      worst = Math.max(worst, Math.abs(axes[0]![i]! - Math.cos(2 * Math.PI * 20 * (startS + i / RATE))));
    }
    expect(worst).toBeLessThan(0.01);
    expect(preparationNotes(made)[0]).toMatchObject({
      code: 'resampled-evenly',
      severity: 'info',
      text: 'Uneven samples were resampled evenly at 100 Hz.',
    });
  });
});
