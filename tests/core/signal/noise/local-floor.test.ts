import { describe, expect, it } from 'vitest';
import { gammaLogTail } from '../../../../src/core/signal/numeric/distributions.ts';
import type { Level } from '../../../../src/core/signal/noise/levels.ts';
import { LEAST_DAMPING, resonantLogTail } from '../../../../src/core/signal/noise/local-floor.ts';
import { keptAmongLevels } from '../../../../src/core/signal/peaks/one-line-each.ts';
import type { Candidate, LevelView } from '../../../../src/core/signal/peaks/candidates.ts';
import type { Whitened } from '../../../../src/core/signal/noise/whiten.ts';

/** One axis over a floor of 1, `averages` averages, every bin its own. */
function viewOf(t: Float64Array, averages: number, lengthS = 40, binCorrelation = 1): LevelView {
  const level: Level = {
    ...{ samplingRateHz: 100, length: 100 * lengthS, lengthS, pad: 1, stepHz: 1 / lengthS, bins: t.length },
    ...{ segments: averages, averages, binCorrelation, matrix: [t] },
  };
  const whitened: Whitened = {
    t,
    averages,
    bandSamples: new Float64Array(t.length).fill(1000),
    whitenerAt: () => Float64Array.of(1),
  };
  return { level, whitened };
}

const logTail = (view: LevelView, bin: number, taken = new Uint8Array(view.level.bins)): number =>
  resonantLogTail(1, view.level, view.whitened, bin, taken);

const BIN = 1000;
/** A floor of 1 and a resonance of height R and damping ζ at bin 1000; the top bin itself is as high as told. */
const shaped = (r: number, damping: number, top: number): Float64Array => {
  const t = Float64Array.from({ length: 2000 }, (_, k) => 1 + r / (1 + ((k - BIN) / (damping * BIN)) ** 2));
  t[BIN] = top;
  return t;
};

describe('narrower than any resonance', () => {
  it('over a flat floor it is the plain χ² test, but for what a resonance might do', () => {
    for (const averages of [4, 20]) {
      for (const top of [3, 5]) {
        const own = logTail(viewOf(shaped(0, 0.01, top), averages), BIN);
        const plain = gammaLogTail(top * averages, averages);
        expect(own).toBeGreaterThan(plain);
        expect(own - plain).toBeLessThan(0.35 * -plain + 3);
      }
    }
  });

  it('a resonance of the least damping, 0.8 %, is no line however high; a narrower one than that is taken for one', () => {
    expect(LEAST_DAMPING).toBe(0.008);
    for (const r of [10, 100, 1e4]) {
      expect(logTail(viewOf(shaped(r, 0.008, 1 + r), 8), BIN)).toBeGreaterThan(Math.log(0.05));
      expect(logTail(viewOf(shaped(r, 0.02, 1 + r), 8), BIN)).toBeGreaterThan(Math.log(0.3));
    }
    expect(logTail(viewOf(shaped(1e4, 0.001, 1e4), 8), BIN)).toBeLessThan(Math.log(1e-6));
  });

  it('a line on a resonance counts over the resonance, not over the floor', () => {
    const r = 300;
    const on = (times: number): number => logTail(viewOf(shaped(r, 0.012, times * (1 + r)), 8), BIN);
    // Against the χ² tail of that many times a mean that its neighbours tell.
    expect(on(1)).toBeGreaterThan(Math.log(0.1));
    expect(on(6)).toBeLessThan(Math.log(1e-5));
    expect(on(3)).toBeGreaterThan(on(4));
    expect(on(6)).toBeGreaterThan(gammaLogTail(6 * 8, 8) - 1);
  });

  it('is the mean of χ² tails over all strengths of resonance, weighed by the neighbours: summed on a fine grid here', () => {
    // Prior: 0.9 that there is none, the rest flat in ln(1 + R), an eighth of it to each e-fold. Likelihood of a mean of
    // K powers p about m: −K(ln m + p/m). A resonance of damping 0.8 % at bin 1000 has half its height 8 bins off. The
    // noise beside stands 1, 2, 4 or 8 times over the smooth floor, with probabilities 0.7, 0.15, 0.1 and 0.05.
    const floors = [
      [1, 0.7],
      [2, 0.15],
      [4, 0.1],
      [8, 0.05],
    ] as const;
    const plain = (t: Float64Array, averages: number, distances: readonly number[]): number => {
      const terms: { log: number; tail: number }[] = [];
      for (const [floor, share] of floors) {
        for (let g = 0; g <= 24; g += 0.01) {
          const r = Math.exp(g) - 1;
          const log = distances.reduce(
            (sum, d) => {
              const m = floor * (1 + r / (1 + (d / 8) ** 2));
              return sum - averages * (Math.log(m) + t[BIN + d]! / m);
            },
            Math.log(share * (g === 0 ? 0.9 : (0.1 * 0.01) / 8)),
          );
          terms.push({ log, tail: gammaLogTail((t[BIN]! * averages) / (floor * (1 + r)), averages) });
        }
      }
      const most = Math.max(...terms.map(({ log }) => log));
      const weight = terms.reduce((sum, { log }) => sum + Math.exp(log - most), 0);
      return Math.log(terms.reduce((sum, { log, tail }) => sum + Math.exp(log - most + tail), 0) / weight);
    };
    // Three widths, 24 bins, to each side, but for the two of the lobe; the greatest of both sides together and each.
    const right = Array.from({ length: 22 }, (_, i) => i + 3);
    const left = right.map((d) => -d);
    for (const [r, top, averages] of [
      [0, 3, 4],
      [0, 6, 8],
      [3, 12, 8],
      [40, 200, 4],
      [300, 900, 2],
    ] as const) {
      const t = shaped(r, 0.012, top);
      const known = Math.max(...[[...left, ...right], left, right].map((side) => plain(t, averages, side)));
      expect(Math.abs(logTail(viewOf(t, averages), BIN) - known)).toBeLessThan(0.1);
    }
  });

  it('looks three widths of a resonance to each side, six bins at least, and no further', () => {
    const raised = (bin: number, distances: readonly number[]): number => {
      const t = new Float64Array(2000).fill(1);
      t[bin] = 6;
      for (const d of distances) t[bin + d] = 40;
      return logTail(viewOf(t, 8), bin);
    };
    for (const [bin, reach] of [
      [1000, 24],
      [100, 6],
      // Forty at most.
      [1900, 40],
    ] as const) {
      const none = raised(bin, []);
      expect(raised(bin, [reach + 1, -reach - 1, reach + 2, -2 * reach])).toBe(none);
      expect(Math.abs(raised(bin, [reach]) - none)).toBeGreaterThan(0.01);
      expect(Math.abs(raised(bin, [-reach]) - none)).toBeGreaterThan(0.01);
    }
  });

  it('a step of the noise is no line: each side is weighed by itself', () => {
    const step = Float64Array.from({ length: 2000 }, (_, k) => (k < BIN ? 1 : 30));
    step[BIN] = 45;
    expect(logTail(viewOf(step, 8), BIN)).toBeGreaterThan(Math.log(0.02));
    const alike = Float64Array.from({ length: 2000 }, () => 1);
    alike[BIN] = 45;
    expect(logTail(viewOf(alike, 8), BIN)).toBeLessThan(Math.log(1e-9));
  });

  it('what belongs to lines already found is no neighbour, nor is the line’s own lobe', () => {
    const flat = shaped(0, 0.01, 6);
    const own = logTail(viewOf(flat, 8), BIN);
    const lobe = flat.slice();
    for (const d of [-2, -1, 1, 2]) lobe[BIN + d] = 5;
    expect(logTail(viewOf(lobe, 8), BIN)).toBeCloseTo(own, 12);
    const beside = flat.slice();
    for (let k = BIN + 5; k <= BIN + 8; k += 1) beside[k] = 500;
    const taken = new Uint8Array(2000);
    taken.fill(1, BIN + 5, BIN + 9);
    expect(logTail(viewOf(beside, 8), BIN)).toBeGreaterThan(own + 3);
    expect(logTail(viewOf(beside, 8), BIN, taken)).toBeCloseTo(logTail(viewOf(flat, 8), BIN, taken), 12);
  });

  it('fewer independent neighbours leave more room for chance', () => {
    const t = shaped(50, 0.012, 400);
    expect(logTail(viewOf(t, 4, 40, 4), BIN)).toBeGreaterThan(logTail(viewOf(t, 4, 40, 1), BIN));
  });
});

describe('one entry for each line', () => {
  const flat = (bins: number, peaks: Readonly<Record<number, number>>): Float64Array => {
    const t = new Float64Array(bins).fill(1);
    for (const [k, v] of Object.entries(peaks)) t[Number(k)] = v;
    return t;
  };
  const candidate = (view: LevelView, bin: number): Candidate => ({
    ...{ view, bin, frequencyHz: bin * view.level.stepHz, logSmooth: -50, logResonant: -50, logAlarm: -50 },
  });
  const all = (c: Candidate): Candidate => c;

  it('the strongest first; what stands in its lobe or under four times its side lobes falls away', () => {
    // Hann side lobe in power at d bins: 1/(πd(d² − 1))²; at 5 bins 7.04e-6, at 10 bins 1.03e-7.
    const lobe = (d: number): number => 1 / (Math.PI * d * (d * d - 1)) ** 2;
    const t = flat(2000, { 800: 1e7, 802: 1e6, 805: 3.9e7 * lobe(5), 790: 4.1e7 * lobe(10), 1200: 9 });
    const view = viewOf(t, 8);
    const found = keptAmongLevels(
      [view],
      [805, 1200, 802, 790, 800].map((k) => candidate(view, k)),
      all,
    );
    // 790 stands at 4.2, 1200 at 9.
    expect(found.map((c) => c.bin)).toEqual([800, 1200, 790]);
  });

  it('a test that says no keeps a bin from being a line and from barring others', () => {
    const view = viewOf(flat(2000, { 800: 100, 801: 60 }), 8);
    const found = keptAmongLevels(
      [view],
      [800, 801].map((k) => candidate(view, k)),
      (c) => (c.bin === 800 ? null : c),
    );
    expect(found.map((c) => c.bin)).toEqual([801]);
  });

  it('the test is told which bins are taken: 2.5 bins to each side', () => {
    const view = viewOf(flat(2000, { 800: 100, 900: 60 }), 8);
    let seen: number[] = [];
    keptAmongLevels(
      [view],
      [800, 900].map((k) => candidate(view, k)),
      (c, taken) => {
        if (c.bin === 900) seen = [...taken.keys()].filter((k) => taken[k]);
        return c;
      },
    );
    expect(seen).toEqual([797, 798, 799, 800, 801, 802, 803]);
  });

  it('a steady line is kept at the finest length, a wandering one at the coarser that holds its power', () => {
    // Power over the floor times resolution: 400/40 s = 10 against 90/10 s = 9 is all of it; 100/40 = 2.5 is not.
    const fine = viewOf(flat(4000, { 800: 401, 1600: 101, 1603: 61 }), 1, 40);
    const coarse = viewOf(flat(1000, { 200: 91, 400: 91 }), 4, 10);
    const candidates = [
      ...[800, 1600, 1603].map((k) => candidate(fine, k)),
      ...[200, 400].map((k) => candidate(coarse, k)),
    ];
    const found = keptAmongLevels([fine, coarse], candidates, all);
    expect(found.map((c) => [c.frequencyHz, c.view === fine])).toEqual([
      [20, true],
      [40, false],
    ]);
  });

  it('a coarser line where the finer ones found nothing is kept', () => {
    const fine = viewOf(flat(4000, {}), 1, 40);
    const coarse = viewOf(flat(1000, { 200: 91 }), 4, 10);
    expect(keptAmongLevels([fine, coarse], [candidate(coarse, 200)], all).length).toBe(1);
    // As is one no higher than the floor, which the test has let through.
    const low = viewOf(flat(1000, { 200: 1 }), 4, 10);
    expect(keptAmongLevels([fine, low], [candidate(low, 200)], all).length).toBe(1);
  });

  it('lines outside a coarser line’s lobe are left alone', () => {
    const fine = viewOf(flat(4000, { 800: 11 }), 1, 40);
    const coarse = viewOf(flat(1000, { 203: 91 }), 4, 10);
    const found = keptAmongLevels([fine, coarse], [candidate(fine, 800), candidate(coarse, 203)], all);
    expect(found.length).toBe(2);
    const inside = keptAmongLevels(
      [fine, coarse],
      [candidate(fine, 800), candidate(viewOf(flat(1000, { 202: 91 }), 4, 10), 202)],
      all,
    );
    expect(inside.length).toBe(1);
  });
});
