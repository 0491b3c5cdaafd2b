import { readFileSync } from 'node:fs';

/** What a golden file holds. */
export const golden = (name: string): unknown => JSON.parse(readFileSync(`tests/golden/${name}.json`, 'utf8'));

/** Differences, as paths; numbers may differ by the given share, or by so much below a thousandth. */
export const differences = (got: unknown, wanted: unknown, share: number, path = ''): string[] => {
  if (typeof got === 'number' && typeof wanted === 'number') {
    const isClose = Math.abs(got - wanted) <= share * Math.max(1e-3, Math.abs(wanted));
    return isClose ? [] : [`${path}: ${got}, was ${wanted}`];
  }
  if (typeof got !== 'object' || typeof wanted !== 'object' || got === null || wanted === null) {
    return got === wanted ? [] : [`${path}: ${String(got)}, was ${String(wanted)}`];
  }
  const [a, b] = [got as Record<string, unknown>, wanted as Record<string, unknown>];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].flatMap((key) =>
    differences(a[key], b[key], share, `${path}/${key}`),
  );
};
