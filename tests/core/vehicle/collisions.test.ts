import { describe, expect, test } from 'vitest';
import { collisions, recordLengthToPartS } from '../../../src/core/vehicle/collisions.ts';
import type { Collision } from '../../../src/core/vehicle/collisions.ts';
import { expectedLines } from '../../../src/core/vehicle/expected-lines.ts';
import type { RunCondition, Vehicle } from '../../../src/core/vehicle/vehicle.ts';
import { mpsFromKmh } from '../../../src/core/units.ts';
import { must } from '../../support/must.ts';

const rear: Vehicle = {
  layout: 'rear-drive',
  tire: { kind: 'size', size: '205/55R16' },
  cylinders: 4,
  converter: false,
};
const at100: RunCondition = { speedMps: mpsFromKmh(100), speedSource: 'gps' };

const pairsOf = (vehicle: Vehicle, condition: RunCondition, lengthS: number): Map<string, Collision> => {
  const result = must(expectedLines(vehicle, condition));
  const all = collisions(result.lines, lengthS);
  return new Map(all.map((pair) => [`${pair.first.label} / ${pair.second.label}`, pair]));
};

describe('near ratios: separation at 100 km/h on 205/55R16, and four Hann bins of 1/T (Harris 1978)', () => {
  test.each([
    [3.08, 'tire 3× / driveshaft 1×', 1.153027, 3.47],
    [3.91, 'tire 4× / driveshaft 1×', 1.297155, 3.08],
    [4.1, 'tire 4× / driveshaft 1×', 1.441283, 2.78],
  ])('axle %d: %s lie %d Hz apart, parted in %d s', (axleRatio, pair, separationHz, seconds) => {
    const found = pairsOf({ ...rear, axleRatio }, at100, 2).get(pair);
    expect(found?.separationHz).toBeCloseTo(separationHz, 6);
    expect(found?.recordLengthS).toBeCloseTo(seconds, 2);
    expect(pairsOf({ ...rear, axleRatio }, at100, 4).has(pair)).toBe(false);
  });
  test('1 Hz apart needs 4 s', () => {
    expect(recordLengthToPartS(1)).toBe(4);
  });
});

describe('one ratio: no length helps', () => {
  test('direct gear with nothing slipping: engine and driveshaft', () => {
    const pairs = pairsOf({ ...rear, axleRatio: 3.73 }, { ...at100, gearRatio: 1 }, 600);
    expect(pairs.get('driveshaft 1× / engine 1×')?.recordLengthS).toBeNull();
    expect(pairs.get('driveshaft 2× / engine 2× (firing)')?.recordLengthS).toBeNull();
    expect(pairs.get('driveshaft 2× / engine 2× (firing)')?.separationHz).toBe(0);
  });
  test('tripod 3× and tire 3×', () => {
    const pairs = pairsOf({ layout: 'front-drive', tire: { kind: 'size', size: '205/55R16' } }, at100, 600);
    expect(pairs.get('tire 3× / half-shaft 3×')?.recordLengthS).toBeNull();
  });
  test('the two driveshafts of a four-wheel drive with equal ratios', () => {
    const pairs = pairsOf({ ...rear, layout: 'four-wheel-drive', axleRatio: 3.73 }, at100, 600);
    expect(pairs.get('driveshaft 2× / front driveshaft 2×')?.recordLengthS).toBeNull();
  });
  test('axle 3.73 in overdrive has none within a minute', () => {
    expect([...pairsOf({ ...rear, axleRatio: 3.73 }, { ...at100, gearRatio: 0.69 }, 60).keys()]).toEqual([]);
  });
});
