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
    file: 'src/core/signal/hermitian.ts',
    line: 'im += w.re[i]![k]! * m.im[k]![j]! + w.im[i]![k]! * m.re[k]![j]!;',
    was: '+=',
    text: '-=',
    because: 'all imaginary parts change sign together, and only products of two of them are used',
  },
  {
    file: 'src/core/driveline/balance-ambiguity.ts',
    line: 'const rows = spokes.map((spoke) => [spoke.re / (size(spoke) || 1), spoke.im / (size(spoke) || 1)]);',
    was: '1',
    text: '2',
    because: 'a spoke of no length is 0 over either',
  },
  {
    file: 'src/core/signal/segment-weights.ts',
    line: 'const sums = new Float64Array(Math.floor(x.length / cell) + 1);',
    was: 'floor',
    text: 'ceil',
    because: 'one more cell, that nothing is added to and that is not handed on',
  },
];
