/** Changes that no test can notice, each with the reason; they are listed and left out of the count. */
export interface Equivalent {
  readonly file: string;
  /** The line as it stands, without its indent. */
  readonly line: string;
  readonly was: string;
  readonly text: string;
  readonly because: string;
}

export const EQUIVALENTS: readonly Equivalent[] = [
  {
    file: 'src/core/signal/peaks/folds.ts',
    line: 'powers.reduce((sum, power) => sum + logBesselI0(2 * Math.sqrt(strength * power)) - strength, 0),',
    was: '0',
    text: '1',
    because: 'all places get as much more, and only their differences are told',
  },
  {
    file: 'src/core/signal/numeric/hermitian.ts',
    line: 'im += w.re[i]![k]! * m.im[k]![j]! + w.im[i]![k]! * m.re[k]![j]!;',
    was: '+=',
    text: '-=',
    because: 'all imaginary parts change sign together, and only products of two of them are used',
  },
  {
    file: 'src/core/driveline/balance/balance-ambiguity.ts',
    line: 'const rows = spokes.map((spoke) => [spoke.re / (size(spoke) || 1), spoke.im / (size(spoke) || 1)]);',
    was: '1',
    text: '2',
    because: 'a spoke of no length is 0 over either',
  },
  {
    file: 'src/core/signal/numeric/peak-interpolation.ts',
    line: 'if (d < 1e-9) return 1;',
    was: '1e-9',
    text: '1.3e-9',
    because: 'so near the top the quotient below is 1 to fifteen digits',
  },
  {
    file: 'src/core/signal/numeric/smooth-path.ts',
    line: 'const [f, product, back, gain] = Array.from({ length: 4 }, () => new Float64Array(SIZE * SIZE)) as [',
    was: '4',
    text: '5',
    because: 'a fifth array that nobody takes',
  },
  {
    file: 'src/core/signal/numeric/statistics.ts',
    line: 'const middle = (low + high) >>> 1;',
    was: '1',
    text: '2',
    because: 'any element may be the pivot; the middle one is the quickest on sorted values',
  },
  {
    file: 'src/core/diagnosis/matching/run-prior.ts',
    line: 'const anyGear = 1 / (2 * ANY_GEAR_REACH);',
    was: '*',
    text: '/',
    because: 'the reach is 1',
  },
  {
    file: 'src/core/diagnosis/matching/loudness.ts',
    line: 'normal: { ...normal, medianMps2: normal.medianMps2 * factor, spread: NORMAL_SPREADS.own },',
    was: '*',
    text: '/',
    because: 'the factors are 1, and two that are each other’s reciprocal and equally likely',
  },
  {
    file: 'src/core/signal/speed/order-level.ts',
    line: 'if (i > 0) phase += (Math.PI * frequencyHz * (before + now)) / samplingRateHz;',
    was: '+=',
    text: '-=',
    because: 'the carrier turns the other way, and a real signal has the same amplitude at both',
  },
  {
    file: 'src/core/signal/noise/segment-weights.ts',
    line: 'const sums = new Float64Array(Math.floor(x.length / cell) + 1);',
    was: 'floor',
    text: 'ceil',
    because: 'one more cell, that nothing is added to and that is not handed on',
  },
  {
    file: 'src/core/signal/spectra/welch.ts',
    line: 'prepared.pieces.reduce((most, piece) => Math.max(most, piece.axes[0]?.length ?? 0), 0);',
    was: '0',
    text: '1',
    because: 'every piece has samples on its first axis',
  },
  {
    file: 'src/core/driveline/angles/angle-sensitivity.ts',
    line: 'residualRadPerS2 === null || nowRadPerS2 === null ? null : residualRadPerS2 - nowRadPerS2,',
    was: '||',
    text: '&&',
    because: 'both are worked out at one speed, or both without',
  },
  ...['above', 'below'].map((side) => ({
    file: 'src/core/signal/peaks/band-power.ts',
    line: `const ${side} = { re: axes.map(() => 0), im: axes.map(() => 0) };`,
    was: '0',
    text: '1',
    because: 'written anew before it is read',
  })),
];
