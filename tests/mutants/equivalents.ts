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
];
