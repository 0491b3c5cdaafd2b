/**
 * Rows in groups that share a time stamp. Times are judged by the first row of each group. Where no stamp is shared,
 * every row is a group and nothing is stored: the usual, long file costs no memory here.
 */
import { medianOf } from '../layout/gravity-size.ts';

/** A step this much shorter than usual is no sampling step: the row was written late, together with others. */
const SHORT_STEP = 0.3;
/** From this share of short steps on, stamps are those of bunches, not of samples; judgment. */
const BUNCHED = 0.2;
/** Stamps this fine beside a step leave no doubt whether one step passed or two. */
const FINE = 0.25;
/** Share of like distances between double steps from which on they are regular; random ones reach 0.66 at the most. */
const REGULAR = 0.75;
/** At most so many windows or steps are looked at for a typical value. */
const LOOK_AT = 4000;

export class StampGroups {
  readonly count: number;
  /** Rows share stamps so often that a stamp stands for a bunch of rows. */
  readonly coarse: boolean;
  /** Share of rows whose step is too short to be a sampling step, 0..1. */
  readonly shortShare: number;
  /** Rows with exactly the stamp of the row before. */
  readonly equalStamps: number;
  readonly #rows: Uint32Array | null;
  readonly #times: Float64Array;
  readonly #lostBefore: ReadonlySet<number>;

  /** @param lostBefore rows before which a row is known to be lost: a double step there is no wonder */
  constructor(times: Float64Array, lostBefore: readonly number[] = []) {
    this.#times = times;
    this.#lostBefore = new Set(lostBefore);
    const limit =
      SHORT_STEP *
      (typicalSlope(
        times.length,
        (i) => times[i]!,
        (i) => i,
        1024,
      ) || 0);
    let equal = 0;
    let short = 0;
    for (let i = 1; i < times.length; i++) {
      const step = times[i]! - times[i - 1]!;
      if (step === 0) equal++;
      if (step <= limit) short++;
    }
    this.equalStamps = equal;
    this.shortShare = short / Math.max(1, times.length - 1);
    this.coarse = this.shortShare >= BUNCHED;
    const joined = this.coarse ? limit : 0;
    this.#rows = this.coarse || equal > 0 ? firstRows(times, joined) : null;
    this.count = this.#rows ? this.#rows.length : times.length;
  }

  /** First row of a group. */
  row(group: number): number {
    return this.#rows ? this.#rows[group]! : group;
  }
  /** Stamp of a group, s. */
  time(group: number): number {
    return this.#times[this.row(group)]!;
  }
  /** The first group that begins at this row or later. */
  from(row: number): number {
    if (!this.#rows) return Math.min(row, this.count);
    let low = 0;
    let high = this.count;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#rows[middle]! < row) low = middle + 1;
      else high = middle;
    }
    return low;
  }
  /**
   * Mean time from row to row, s, so that gaps do not count: of the single steps near their median where the stamps
   * are fine enough to tell one step from two, of whole windows else.
   */
  get typicalStep(): number {
    return this.#meanOfNearSteps() ?? this.#windowStep;
  }

  /** What rounding may move a stamp by, s: the stamps' resolution, unless that is the sampling step itself. */
  get resolution(): number {
    const resolution = stampResolution(this.#times);
    return this.#stepsAreTicks(resolution) ? 0 : resolution;
  }

  /** Null where fewer than four steps in five are near the usual one. */
  #meanOfNearSteps(): number | null {
    if (this.coarse || this.equalStamps > 0 || this.count < 8) return null;
    const usual = this.typicalGroupStep;
    if (!(this.resolution <= FINE * usual)) return null;
    let sum = 0;
    let near = 0;
    for (let j = 1; j < this.count; j++) {
      const step = this.time(j) - this.time(j - 1);
      if (!(step >= 0.5 * usual && step <= 1.5 * usual)) continue;
      sum += step;
      near++;
    }
    return near >= 0.8 * (this.count - 1) ? sum / near : null;
  }

  /**
   * The usual step is the resolution itself, and now and then a step is double. Either a row is missing there, or the
   * sensor is a little slower than the clock's ticks; then the doubles come as regularly as leap years.
   */
  #stepsAreTicks(resolution: number): boolean {
    if (this.coarse || this.equalStamps > 0) return false;
    if (!(Math.abs(this.typicalGroupStep / resolution - 1) < 0.01)) return false;
    const apart: number[] = [];
    let first = -1;
    let last = -1;
    for (let j = 1; j < this.count; j++) {
      const ticks = (this.time(j) - this.time(j - 1)) / resolution;
      if (!(ticks > 1.5 && ticks < 2.5) || this.#lostBefore.has(j)) continue;
      if (last >= 0) apart.push(j - last);
      else first = j;
      last = j;
    }
    if (apart.length < 3) return true;
    const usual = medianOf(apart);
    // A handful may be alike by chance: then all have to be, to a row.
    const few = apart.length < 8;
    const slack = few ? 1 : Math.max(1, 0.1 * usual);
    if (Math.max(first, this.count - last) > usual + slack) return true;
    const like = apart.filter((rows) => Math.abs(rows - usual) <= slack).length;
    return like < (few ? 1 : REGULAR) * apart.length;
  }

  get #windowStep(): number {
    return typicalSlope(
      this.count,
      (j) => this.time(j),
      (j) => this.row(j),
      64,
    );
  }
  /** Median time from group to group, s. */
  get typicalGroupStep(): number {
    return typicalSlope(
      this.count,
      (j) => this.time(j),
      (j) => j,
      1,
    );
  }
}

function firstRows(times: Float64Array, joined: number): Uint32Array {
  const rows = new Uint32Array(times.length);
  let count = 0;
  for (let i = 0; i < times.length; i++) {
    const step = i === 0 ? Infinity : times[i]! - times[i - 1]!;
    if (step === 0 || (joined > 0 && step <= joined)) continue;
    rows[count++] = i;
  }
  return rows.slice(0, count);
}

/** Median slope of y over x in windows of `width` points, a quarter of all at the most. */
function typicalSlope(count: number, y: (i: number) => number, x: (i: number) => number, width: number): number {
  const span = Math.max(1, Math.min(width, count >> 2));
  const stride = Math.max(1, Math.floor((count - span) / LOOK_AT));
  const slopes: number[] = [];
  for (let i = 0; i + span < count; i += stride) slopes.push((y(i + span) - y(i)) / (x(i + span) - x(i)));
  return medianOf(slopes);
}

/**
 * Resolution of the stamps, s: the largest of 5, 2 or 1 times a power of ten of which all steps are multiples;
 * 0 where there is none above a nanosecond.
 */
function stampResolution(times: Float64Array): number {
  const stride = Math.max(1, Math.floor(times.length / 1000));
  const steps: number[] = [];
  for (let i = stride; i < times.length; i += stride) steps.push(times[i]! - times[i - 1]!);
  for (let power = 0; power >= -9; power--) {
    for (const digit of [5, 2, 1]) {
      const unit = digit * 10 ** power;
      const slack = 1e-3 + 1e-12 / unit;
      if (steps.every((step) => Math.abs(step / unit - Math.round(step / unit)) < slack)) return unit;
    }
  }
  return 0;
}
