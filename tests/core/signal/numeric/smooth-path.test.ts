import { describe, expect, it } from 'vitest';
import { smoothPath, smoothWith, type Reading } from '../../../../src/core/signal/numeric/smooth-path.ts';
import { parkMiller } from '../made.ts';

/** Solves A·X = B by Gauss's elimination with pivoting; also ln |det A|. */
function solve(a: number[][], b: number[][]): { x: number[][]; logDet: number } {
  const n = a.length;
  const m = a.map((row, i) => [...row, ...b[i]!]);
  let logDet = 0;
  for (let k = 0; k < n; k += 1) {
    let p = k;
    for (let i = k + 1; i < n; i += 1) if (Math.abs(m[i]![k]!) > Math.abs(m[p]![k]!)) p = i;
    [m[k], m[p]] = [m[p]!, m[k]!];
    logDet += Math.log(Math.abs(m[k]![k]!));
    for (let i = 0; i < n; i += 1) {
      if (i === k) continue;
      const f = m[i]![k]! / m[k]![k]!;
      if (f !== 0) for (let j = k; j < m[k]!.length; j += 1) m[i]![j]! -= f * m[k]![j]!;
    }
  }
  return { x: m.map((row, i) => row.slice(n).map((v) => v / row[i]!)), logDet };
}

/**
 * The same path as a Gaussian process (C. E. Rasmussen & C. K. I. Williams, 2006, eqs. 2.23 … 2.30), all readings at
 * once: rate r = r₀ + √q·W(t), δ = δ₀ + ∫r, ψ = ψ₀ + ∫δ; covariances of the integrals of white noise in closed form.
 */
function process(
  q: number,
  start: readonly [number, number, number],
): (i: 0 | 1, s: number, j: 0 | 1, t: number) => number {
  // ∫₀^min (s−u)^a/a! · (t−u)^b/b! du: a = 2 for ψ, 1 for δ.
  const noise = (i: 0 | 1, s: number, j: 0 | 1, t: number): number => {
    const order = (c: 0 | 1): number => (c === 0 ? 2 : 1);
    const [a, b, low] = [order(i), order(j), Math.min(s, t)];
    const factorial = (n: number): number => (n < 2 ? 1 : n);
    // Gauss–Legendre with five points is exact for these polynomials of degree four.
    const nodes = [0, 0.5384693101056831, -0.5384693101056831, 0.906179845938664, -0.906179845938664];
    const weights = [
      0.5688888888888889, 0.47862867049936647, 0.47862867049936647, 0.23692688505618908, 0.23692688505618908,
    ];
    let sum = 0;
    nodes.forEach((x, k) => {
      const u = (low / 2) * (1 + x);
      sum += ((weights[k]! * low) / 2) * ((s - u) ** a / factorial(a)) * ((t - u) ** b / factorial(b));
    });
    return q * sum;
  };
  const basis = (c: 0 | 1, t: number): number[] => (c === 0 ? [1, t, (t * t) / 2] : [0, 1, t]);
  return (i, s, j, t) =>
    noise(i, s, j, t) + basis(i, s).reduce((sum, v, k) => sum + v * basis(j, t)[k]! * start[k]! ** 2, 0);
}

const ROUGH = 0.02;
const START: [number, number, number] = [0.3, 0.5, 0.2];
const readings: Reading[] = (() => {
  const off = parkMiller(5, 40);
  return [0, 0.4, 1, 1.3, 2.6, 3, 3.1, 4.4, 5, 6.2].flatMap((timeS, i): Reading[] => {
    const integral: Reading = {
      timeS,
      component: 0,
      value: Math.sin(timeS) + 0.3 * off[i]!,
      variance: 0.02 + 0.01 * i,
    };
    const speed: Reading = { timeS, component: 1, value: Math.cos(timeS) + 0.3 * off[i + 20]!, variance: 0.05 };
    return i % 3 === 0 ? [integral, speed] : i % 3 === 1 ? [integral] : [speed];
  });
})();

describe('a smooth path through uncertain readings', () => {
  it('is the posterior of the Gaussian process, all readings at once: integral, value and uncertainty', () => {
    const k = process(ROUGH, START);
    const gram = readings.map((a, i) =>
      readings.map((b, j) => k(a.component, a.timeS, b.component, b.timeS) + (i === j ? a.variance : 0)),
    );
    const own = smoothWith(readings, { roughness: ROUGH, startSd: START });
    expect(Array.from(own.timeS)).toEqual([0, 0.4, 1, 1.3, 2.6, 3, 3.1, 4.4, 5, 6.2]);
    const { x: weights, logDet } = solve(
      gram,
      readings.map((r) => [r.value]),
    );
    own.timeS.forEach((t, i) => {
      const cross = (c: 0 | 1): number[] => readings.map((r) => k(c, t, r.component, r.timeS));
      const at = (c: 0 | 1): number => cross(c).reduce((sum, v, j) => sum + v * weights[j]![0]!, 0);
      expect(own.integral[i]).toBeCloseTo(at(0), 8);
      expect(own.value[i]).toBeCloseTo(at(1), 8);
      const { x } = solve(
        gram,
        cross(1).map((v) => [v]),
      );
      const variance = k(1, t, 1, t) - cross(1).reduce((sum, v, j) => sum + v * x[j]![0]!, 0);
      expect(own.sd[i]).toBeCloseTo(Math.sqrt(variance), 8);
    });
    // The likelihood leaves out ½ ln 2π a reading.
    const quadratic = readings.reduce((sum, r, j) => sum + r.value * weights[j]![0]!, 0);
    expect(own.logLikelihood).toBeCloseTo(-0.5 * (quadratic + logDet), 8);
  });

  it('readings of infinite variance only mark moments', () => {
    const marks: Reading[] = [0.7, 2, 5.5].map((timeS) => ({ timeS, component: 1, value: 99, variance: Infinity }));
    const both = [...readings, ...marks].sort((a, b) => a.timeS - b.timeS);
    const prior = { roughness: ROUGH, startSd: START };
    const [a, b] = [smoothWith(readings, prior), smoothWith(both, prior)];
    expect(b.timeS.length).toBe(a.timeS.length + 3);
    a.timeS.forEach((t, i) => expect(b.value[b.timeS.indexOf(t)]).toBeCloseTo(a.value[i]!, 9));
    expect(b.logLikelihood).toBeCloseTo(a.logLikelihood, 9);
  });

  it('takes a periodic reading at the multiple nearest to what is expected', () => {
    const path = (t: number): number => 0.4 * t;
    const full = Array.from({ length: 30 }, (_, i): Reading => ({
      timeS: i / 5,
      component: 0,
      value: path(i / 5),
      variance: 1e-6,
    }));
    const wrapped = full.map((r): Reading => ({ ...r, value: r.value - 0.5 * Math.round(r.value / 0.5), period: 0.5 }));
    const prior = { roughness: 1e-3, startSd: [0.01, 0.5, 0.1] as const };
    const [a, b] = [smoothWith(full, prior), smoothWith(wrapped, prior)];
    a.value.forEach((v, i) => expect(b.value[i]).toBeCloseTo(v, 9));
    expect(b.integral.at(-1)).toBeCloseTo(path(5.8), 2);
  });

  it('finds from the readings themselves how smooth the path is', () => {
    const off = parkMiller(9, 200);
    const of = (f: (t: number) => number): number => {
      const made = Array.from(off, (v, i): Reading => ({
        timeS: i / 4,
        component: 1,
        value: f(i / 4) + 0.02 * v,
        variance: 0.02 ** 2 / 12,
      }));
      return smoothPath(made, [1e-8, 1e-6, 1e-4, 1e-2], [0.1, 1, 1]).prior.roughness;
    };
    expect(of((t) => 0.01 * t)).toBe(1e-8);
    expect(of((t) => 0.3 * Math.sin(t))).toBe(1e-2);
  });
});
