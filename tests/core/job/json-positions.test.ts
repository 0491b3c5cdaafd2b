import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { lineAndColumn, mapJson, offsetOf } from '../../../src/core/job/json-positions.ts';

describe('where keys stand', () => {
  const text = '{\n  "vehicle": { "axleRatio": 3.73 },\n  "runs": [\n    { "file": "a" },\n    { "file": "b" }\n  ]\n}';
  const map = mapJson(text);
  test.each([
    ['vehicle', 2, 3],
    ['vehicle.axleRatio', 2, 16],
    ['runs', 3, 3],
    ['runs[1]', 5, 5],
    ['runs[1].file', 5, 7],
  ])('%s on line %d, column %d', (path, line, column) => {
    expect(lineAndColumn(text, offsetOf(map, path) ?? -1)).toEqual({ line, column });
  });
  test('a key that is not there has the place of what it should stand in', () => {
    expect(offsetOf(map, 'vehicle.tire.size')).toBe(offsetOf(map, 'vehicle'));
    expect(offsetOf(map, 'runs[1].speedMps')).toBe(offsetOf(map, 'runs[1]'));
    expect(offsetOf(map, 'runs[7].file')).toBe(offsetOf(map, 'runs'));
    expect(offsetOf(map, 'title')).toBeNull();
    expect(offsetOf(map, 'a.b[0][1].c')).toBeNull();
  });
});

test.each(['11e309', '-1E+400', '9'.repeat(310)])(
  'the number %s, which no double holds, is told with its place',
  (text) => {
    const map = mapJson(`{ "vehicle": { "ratios": [3.06, ${text}] }, "b": 1e308, "c": 1e999 }`);
    expect(map.fault).toBeNull();
    expect(map.tooLarge).toEqual({ offset: 32, path: 'vehicle.ratios[1]', text });
    expect(mapJson('{ "b": 1e308, "c": "1e999" }').tooLarge).toBeNull();
  },
);

/** Keys once each: JSON.parse lets the last one win, here it is a fault. */
const repeatsKey = (text: string): boolean => mapJson(text).fault?.text.startsWith('the key') ?? false;

const parses = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

test('a text has a fault exactly where JSON.parse refuses it (the judge), repeated keys aside', () => {
  const broken = fc
    .tuple(fc.json(), fc.nat(), fc.constantFrom('', ',', '"', '}', ']', '0', '\\', '\n', ' ', 'e', '-', '.'))
    .map(([json, at, sign]) => {
      const start = at % (json.length + 1);
      return json.slice(0, start) + sign + json.slice(start + (sign === '' ? 1 : 0));
    });
  fc.assert(
    fc.property(fc.oneof(fc.json(), broken, fc.string()), (text) => {
      fc.pre(!repeatsKey(text));
      expect(mapJson(text).fault === null).toBe(parses(text));
    }),
    { numRuns: 1500 },
  );
});
