/**
 * Small Hermitian matrices (one row per axis, at most three) packed as real numbers: the diagonal first, then re and
 * im of each entry above it: [d0, d1, d2, re01, im01, re02, im02, re12, im12]. A product of traces of two such
 * matrices is a plain weighted sum, which lets a whole spectrum of them be whitened by nine array passes.
 */
export type Hermitian = Float64Array;

/** Packed length for a number of axes: its square. */
export const packedLength = (axes: number): number => axes * axes;

/** The identity: as a whitener it lets every axis count as it is. */
export const identity = (axes: number): Hermitian => new Float64Array(packedLength(axes)).fill(1, 0, axes);

/** Place of re of entry (i, j), i < j; im stands behind it. */
export const offDiagonal = (axes: number, i: number, j: number): number => {
  const before = i * axes - (i * (i + 1)) / 2 + (j - i - 1);
  return axes + 2 * before;
};

/** Re tr(A·B) of two packed matrices. */
export const traceOfProduct = (axes: number, a: Hermitian, b: Hermitian): number => {
  let sum = 0;
  for (let q = 0; q < a.length; q++) sum += (q < axes ? 1 : 2) * a[q]! * b[q]!;
  return sum;
};

export const trace = (axes: number, a: Hermitian): number => {
  let sum = 0;
  for (let q = 0; q < axes; q++) sum += a[q]!;
  return sum;
};

interface Full {
  readonly re: number[][];
  readonly im: number[][];
}

const unpacked = (axes: number, a: Hermitian): Full => {
  const re = Array.from({ length: axes }, () => new Array<number>(axes).fill(0));
  const im = Array.from({ length: axes }, () => new Array<number>(axes).fill(0));
  for (let i = 0; i < axes; i++) {
    re[i]![i] = a[i]!;
    for (let j = i + 1; j < axes; j++) {
      const q = offDiagonal(axes, i, j);
      re[i]![j] = a[q]!;
      re[j]![i] = a[q]!;
      im[i]![j] = a[q + 1]!;
      im[j]![i] = -a[q + 1]!;
    }
  }
  return { re, im };
};

const packed = (axes: number, { re, im }: Full): Hermitian => {
  const out = new Float64Array(packedLength(axes));
  for (let i = 0; i < axes; i++) {
    out[i] = re[i]![i]!;
    for (let j = i + 1; j < axes; j++) {
      const q = offDiagonal(axes, i, j);
      out[q] = re[i]![j]!;
      out[q + 1] = im[i]![j]!;
    }
  }
  return out;
};

/** Inverse of a positive definite packed matrix by Gauss–Jordan elimination (no pivoting is needed for such). */
export const inverse = (axes: number, a: Hermitian): Hermitian => {
  const { re, im } = unpacked(axes, a);
  for (let k = 0; k < axes; k++) {
    const pivot = 1 / re[k]![k]!;
    // Sweep operator: after sweeping each diagonal entry, the matrix holds minus its inverse.
    for (let i = 0; i < axes; i++) {
      if (i === k) continue;
      const fr = re[i]![k]! * pivot;
      const fi = im[i]![k]! * pivot;
      for (let j = 0; j < axes; j++) {
        if (j === k) continue;
        re[i]![j]! -= fr * re[k]![j]! - fi * im[k]![j]!;
        im[i]![j]! -= fr * im[k]![j]! + fi * re[k]![j]!;
      }
    }
    for (let i = 0; i < axes; i++) {
      if (i === k) continue;
      re[i]![k]! *= pivot;
      im[i]![k]! *= pivot;
      re[k]![i]! *= pivot;
      im[k]![i]! *= pivot;
    }
    re[k]![k] = -pivot;
    im[k]![k] = 0;
  }
  const out = packed(axes, { re, im });
  for (let q = 0; q < out.length; q++) out[q] = -out[q]!;
  return out;
};

/** Re and im of an entry (i, j). */
export interface Entry {
  readonly re: number;
  readonly im: number;
}

/**
 * The entries below the diagonal of M, lower triangular with ones on its diagonal, where A = Mᴴ·D·M and D is diagonal:
 * row by row, (1,0), (2,0), (2,1). The last row is that of A over its last entry; A less what it makes is one smaller.
 * @param a positive definite
 */
export const unitFactor = (axes: number, a: Hermitian): readonly (readonly Entry[])[] => {
  const { re, im } = unpacked(axes, a);
  const rows: Entry[][] = Array.from({ length: axes }, () => []);
  for (let last = axes - 1; last > 0; last--) {
    const pivot = re[last]![last]!;
    const row = Array.from({ length: last }, (_, j) => ({ re: re[last]![j]! / pivot, im: im[last]![j]! / pivot }));
    rows[last] = row;
    for (let i = 0; i < last; i++) {
      for (let j = 0; j < last; j++) {
        re[i]![j]! -= re[i]![last]! * row[j]!.re - im[i]![last]! * row[j]!.im;
        im[i]![j]! -= re[i]![last]! * row[j]!.im + im[i]![last]! * row[j]!.re;
      }
    }
  }
  return rows;
};

/** @param matrices one at least */
export const meanMatrix = (matrices: readonly Hermitian[]): Hermitian =>
  matrices[0]!.map((_, q) => matrices.reduce((sum, matrix) => sum + matrix[q]!, 0) / matrices.length);

/** A·B·A. */
export const sandwich = (axes: number, a: Hermitian, b: Hermitian): Hermitian => {
  const columns = Array.from({ length: axes }, (_, k) => {
    const unit = { re: new Array<number>(axes).fill(0).fill(1, k, k + 1), im: new Array<number>(axes).fill(0) };
    return times(axes, a, times(axes, b, times(axes, a, unit)));
  });
  const rows = (part: 're' | 'im'): number[][] =>
    Array.from({ length: axes }, (_, i) => columns.map((column) => column[part][i]!));
  return packed(axes, { re: rows('re'), im: rows('im') });
};

/** A complex vector, one entry an axis. */
export interface ComplexVector {
  readonly re: number[];
  readonly im: number[];
}

/** A·v. */
export const times = (axes: number, a: Hermitian, v: ComplexVector): ComplexVector => {
  const m = unpacked(axes, a);
  const re: number[] = [];
  const im: number[] = [];
  for (let i = 0; i < axes; i++) {
    let sr = 0;
    let si = 0;
    for (let j = 0; j < axes; j++) {
      sr += m.re[i]![j]! * v.re[j]! - m.im[i]![j]! * v.im[j]!;
      si += m.re[i]![j]! * v.im[j]! + m.im[i]![j]! * v.re[j]!;
    }
    re.push(sr);
    im.push(si);
  }
  return { re, im };
};

/** v·vᴴ packed, so that vᴴ·A·v = traceOfProduct(outer(v), A). */
export const outer = (axes: number, v: ComplexVector): Hermitian => {
  const out = new Float64Array(packedLength(axes));
  for (let i = 0; i < axes; i++) {
    out[i] = v.re[i]! ** 2 + v.im[i]! ** 2;
    for (let j = i + 1; j < axes; j++) {
      const q = offDiagonal(axes, i, j);
      out[q] = v.re[i]! * v.re[j]! + v.im[i]! * v.im[j]!;
      out[q + 1] = v.im[i]! * v.re[j]! - v.re[i]! * v.im[j]!;
    }
  }
  return out;
};

const innerRe = (a: ComplexVector, b: ComplexVector): number =>
  a.re.reduce((sum, v, i) => sum + v * b.re[i]! + a.im[i]! * b.im[i]!, 0);

/**
 * The direction in which S stands highest above the noise: the v that maximises vᴴSv / vᴴΣv, scaled to vᴴΣv = 1 and
 * returned as v·vᴴ. Power iteration on Σ⁻¹S; `whitener` is Σ⁻¹.
 */
export const loudestDirection = (axes: number, whitener: Hermitian, s: Hermitian): Hermitian => {
  // Start from the column of the loudest axis; it is never orthogonal to the loudest direction in practice.
  let start = 0;
  for (let i = 1; i < axes; i++) if (s[i]! * whitener[i]! > s[start]! * whitener[start]!) start = i;
  let v: ComplexVector = {
    re: Array.from({ length: axes }, (_, i) => (i === start ? 1 : 0)),
    im: new Array<number>(axes).fill(0),
  };
  for (let pass = 0; pass < 6; pass++) {
    const w = times(axes, s, v);
    const next = times(axes, whitener, w);
    const scale = 1 / Math.sqrt(Math.max(innerRe(w, next), Number.MIN_VALUE));
    v = { re: next.re.map((x) => x * scale), im: next.im.map((x) => x * scale) };
  }
  return outer(axes, v);
};
