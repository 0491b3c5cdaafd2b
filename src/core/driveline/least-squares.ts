/** Small linear least-squares problems by Gram-Schmidt, columns scaled: the bench has a handful of unknowns. */

export interface LeastSquaresFit {
  readonly solution: readonly number[];
  /** Standard deviation of one value about the fit; null where there are no more values than unknowns. */
  readonly scatter: number | null;
  /** Ratio of the largest to the smallest pivot, after scaling the columns: how far errors may grow. */
  readonly condition: number;
}

/** A column that keeps less than this share of itself beside the others adds nothing that can be told. */
const DEPENDENT = 1e-9;

/**
 * The x that makes Σ(row·x − value)² least.
 * @returns null where the rows cannot tell the unknowns apart
 */
export const leastSquares = (
  rows: readonly (readonly number[])[],
  values: readonly number[],
): LeastSquaresFit | null => {
  const unknowns = rows[0]?.length ?? 0;
  if (unknowns === 0 || rows.length < unknowns) return null;
  const columns = Array.from({ length: unknowns }, (_, column) => rows.map((row) => row[column]!));
  const norms = columns.map((column) => Math.hypot(...column));
  if (norms.some((norm) => !(norm > 0))) return null;
  const scaled = columns.map((column, index) => column.map((value) => value / norms[index]!));
  // Orthogonal basis, each column taking twice off what the ones before already say (once is not exact enough).
  const basis: number[][] = [];
  const triangle: number[][] = [];
  const pivots: number[] = [];
  for (const column of scaled) {
    const rest = [...column];
    const coefficients = basis.map(() => 0);
    for (let pass = 0; pass < 2; pass++) {
      for (const [index, direction] of basis.entries()) {
        const share = dotOf(direction, rest);
        coefficients[index]! += share;
        for (let row = 0; row < rest.length; row++) rest[row]! -= share * direction[row]!;
      }
    }
    const pivot = Math.hypot(...rest);
    if (pivot < DEPENDENT) return null;
    basis.push(rest.map((value) => value / pivot));
    triangle.push([...coefficients, pivot]);
    pivots.push(pivot);
  }
  const rotated = basis.map((direction) => dotOf(direction, values));
  const solution = new Array<number>(unknowns).fill(0);
  for (let index = unknowns - 1; index >= 0; index--) {
    let value = rotated[index]!;
    for (let later = index + 1; later < unknowns; later++) value -= triangle[later]![index]! * solution[later]!;
    solution[index] = value / pivots[index]!;
  }
  const unscaled = solution.map((value, index) => value / norms[index]!);
  const spare = rows.length - unknowns;
  const misfit = rows.reduce((sum, row, index) => sum + (dotOf(row, unscaled) - values[index]!) ** 2, 0);
  return {
    solution: unscaled,
    scatter: spare > 0 ? Math.sqrt(misfit / spare) : null,
    condition: Math.max(...pivots) / Math.min(...pivots),
  };
};

const dotOf = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, index) => sum + value * b[index]!, 0);
