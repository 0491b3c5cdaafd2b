/** Samples as they come from the sensor, and what can be said of them while they come. */

export interface MotionSample {
  /** On any steady clock, ms. */
  readonly timeMs: number;
  /** Acceleration with gravity, m/s², in the device's own axes. */
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export interface SpeedSample {
  readonly timeMs: number;
  readonly speedMps: number;
}

/** A pause this many times the usual one is a gap. */
const GAP_STEPS = 4;
/** Judged over the latest stretch, so that a hitch at the start is forgotten. */
const RATE_SAMPLES = 200;

export class RecordingBuffer {
  readonly #samples: MotionSample[] = [];
  readonly #speeds: SpeedSample[] = [];
  #gaps = 0;

  get samples(): readonly MotionSample[] {
    return this.#samples;
  }

  get speeds(): readonly SpeedSample[] {
    return this.#speeds;
  }

  get gaps(): number {
    return this.#gaps;
  }

  /** Samples that do not move the clock on are left out: they would be two readings of one moment. */
  add(sample: MotionSample): void {
    const last = this.#samples.at(-1);
    if (last && sample.timeMs <= last.timeMs) return;
    const rate = measuredRateHz(this.#samples);
    if (last && rate !== null && sample.timeMs - last.timeMs > (GAP_STEPS * 1000) / rate) this.#gaps += 1;
    this.#samples.push(sample);
  }

  addSpeed(sample: SpeedSample): void {
    if (Number.isFinite(sample.speedMps) && sample.speedMps >= 0) this.#speeds.push(sample);
  }

  get durationS(): number {
    const [first] = this.#samples;
    const last = this.#samples.at(-1);
    return first && last ? (last.timeMs - first.timeMs) / 1000 : 0;
  }
}

/** Samples a second over the latest ones, from the median step; null before there are enough. */
export function measuredRateHz(samples: readonly MotionSample[]): number | null {
  const latest = samples.slice(-RATE_SAMPLES);
  if (latest.length < 10) return null;
  const steps = latest.slice(1).map((sample, index) => sample.timeMs - (latest[index]?.timeMs ?? 0));
  const sorted = [...steps].sort((a, b) => a - b);
  const median = sorted[Math.floor(sorted.length / 2)] ?? 0;
  // The mean of the ordinary steps: stamps are often rounded to whole milliseconds, which a median would keep.
  const ordinary = steps.filter((step) => step < GAP_STEPS * median);
  const mean = ordinary.reduce((sum, step) => sum + step, 0) / ordinary.length;
  return mean > 0 ? 1000 / mean : null;
}
