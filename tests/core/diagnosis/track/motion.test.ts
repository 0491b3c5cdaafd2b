import { describe, expect, it } from 'vitest';
import { findTones } from '../../../../src/core/diagnosis/observing/find-tones.ts';
import { wholeSpectra } from '../../../../src/core/diagnosis/track/basebands.ts';
import { motionOf } from '../../../../src/core/diagnosis/track/motion.ts';
import { resampleToEqualAngle, type SpeedTrack } from '../../../../src/core/signal/speed/equal-angle.ts';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';
import { seededRandom } from '../../../support/random.ts';
import { swayingSpeed } from '../../../support/swaying-speed.ts';

const RATE = 400;
const SECONDS = 36;
const LINE_HZ = 111;
/** It wanders over four hertz, and lingers at the ends of its way. */
const PERIOD_S = 24;
const speed = swayingSpeed([{ depth: 0.018, periodS: PERIOD_S }]);

const { normal } = seededRandom(3);
const axes = [0.3, 0.5, 1].map((share) =>
  Float64Array.from(
    { length: RATE * SECONDS },
    (_, i) => 0.4 * share * Math.cos(2 * Math.PI * LINE_HZ * speed.turnedAt(i / RATE)) + 0.02 * normal(),
  ),
);
const prepared: Prepared = { samplingRateHz: RATE, durationS: SECONDS, up: null, pieces: [{ startS: 0, axes }] };
const timeS = Float64Array.from({ length: 4 * SECONDS + 1 }, (_, i) => i / 4);
const track: SpeedTrack = { timeS, relative: timeS.map(speed.at) };

describe('a strong line that wanders over hertz', () => {
  it('keeps together on its own history by as much as its power over the noise, however much of it lies beside it', () => {
    const motion = motionOf(wholeSpectra(prepared), [track], LINE_HZ);
    // On the clock no more than a small part of it is gathered.
    expect(motion.along(0, LINE_HZ)).toBeGreaterThan(10 * motion.still);
    // Power over noise of the whole line, by Parseval: (a²/4)·N/(σ²·1.5) for a Hann window, all axes' together; the
    // evidence grows with its 0.6th power beyond 20.
    const overNoise = ((0.4 ** 2 * (0.3 ** 2 + 0.5 ** 2 + 1)) / 4) * ((RATE * SECONDS) / (1.5 * 0.02 ** 2));
    expect(motion.along(0, LINE_HZ)).toBeGreaterThan(0.7 * 20 * (overNoise / 20) ** 0.6);
  });
});

describe('a line whose phase turns as a sweep takes it through resonances', () => {
  it('keeps together slice by slice where over the whole it is scattered', () => {
    // A quarter of a turn more every second for 12 s: a quarter of a hertz off, and back again.
    const turned = (t: number): number => {
      const part = t % 24;
      return 0.25 * (part < 12 ? part : 24 - part);
    };
    const samples = Float64Array.from({ length: RATE * SECONDS }, (_, i) => {
      const t = i / RATE;
      return 0.05 * Math.cos(2 * Math.PI * (LINE_HZ * speed.turnedAt(t) + turned(t))) + 0.1 * normal();
    });
    const swept: Prepared = { ...prepared, pieces: [{ startS: 0, axes: [samples] }] };
    const spectra = wholeSpectra(swept);
    const [whole, sliced] = [motionOf(spectra, [track], LINE_HZ), motionOf(spectra, [track], LINE_HZ, 6)];
    expect(whole.along(0, LINE_HZ)).toBeLessThan(8);
    expect(sliced.along(0, LINE_HZ)).toBeGreaterThan(40);
    expect(sliced.still).toBeLessThan(sliced.along(0, LINE_HZ) / 4);
  });
});

describe('a faint tone that wanders beside a strong line of another history', () => {
  it('is not given that line’s level', () => {
    const strongHz = 22.787;
    const faintHz = 22.65;
    // The faint one's own wander, a tenth of a hertz about every eleven seconds; the strong one goes with the speed.
    const own = (t: number): number => 2 * Math.PI * faintHz * t + 1.2 * Math.sin((2 * Math.PI * t) / 11);
    const slightly = swayingSpeed([{ depth: 1.4e-3, periodS: PERIOD_S }]);
    const both = Float64Array.from({ length: RATE * 64 }, (_, i) => {
      const t = i / RATE;
      return 0.4 * Math.cos(2 * Math.PI * strongHz * slightly.turnedAt(t)) + 0.012 * Math.cos(own(t)) + 0.01 * normal();
    });
    const slow: Prepared = { samplingRateHz: RATE, durationS: 64, up: null, pieces: [{ startS: 0, axes: [both] }] };
    const quarters = Float64Array.from({ length: 257 }, (_, i) => i / 4);
    const history: SpeedTrack = { timeS: quarters, relative: quarters.map(slightly.at) };
    const tones = findTones(slow, [history], [resampleToEqualAngle(slow, history)], {
      linesHz: [strongHz],
      samplingRateHz: RATE,
      foldsOf: () => [],
    });
    const strong = tones.filter(({ peak }) => peak.amplitudeMps2 > 0.05);
    expect(strong.map(({ peak }) => peak.frequencyHz)).toHaveLength(1);
    expect(strong[0]!.peak.frequencyHz).toBeCloseTo(strongHz, 1);
    expect(strong[0]!.peak.amplitudeMps2).toBeCloseTo(0.4, 1);
  });
});

describe('a tone that stands still, beside a track with a step that means nothing', () => {
  it('is found where it stands, and not half a hundredth off as an image of a line above half the rate', () => {
    const rate = 104;
    const seconds = 41;
    const stillHz = 14.77;
    // Turned round, and weak, while the track stands off: an image keeps together even a little better than the tone itself.
    const samples = Float64Array.from({ length: rate * seconds }, (_, i) => {
      const t = i / rate;
      return (t < 5 ? -0.035 : 0.1) * Math.cos(2 * Math.PI * stillHz * t) + 0.01 * normal();
    });
    const slow: Prepared = {
      samplingRateHz: rate,
      durationS: seconds,
      up: null,
      pieces: [{ startS: 0, axes: [samples] }],
    };
    const times = Float64Array.from({ length: 2 * seconds + 1 }, (_, i) => i / 2);
    const step: SpeedTrack = { timeS: times, relative: times.map((t) => (t < 5 ? 0.9974 : 1.0003)) };
    const tones = findTones(slow, [step], [resampleToEqualAngle(slow, step)], {
      linesHz: [193.2],
      samplingRateHz: rate,
      foldsOf: () => [],
    });
    const strong = tones.filter(({ peak }) => peak.amplitudeMps2 > 0.05);
    expect(strong).toHaveLength(1);
    expect(strong[0]!.imageMotion).toBeNull();
    expect(strong[0]!.peak.frequencyHz).toBeCloseTo(stillHz, 1);
  });
});
