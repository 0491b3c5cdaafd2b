import { expect, test } from 'vitest';
import { lineLabel, orderText } from '../../../src/core/vehicle/labels.ts';

test.each([
  [0.5, '½×'],
  [1, '1×'],
  [1.5, '1½×'],
  [2, '2×'],
  [2.5, '2½×'],
  [11, '11×'],
  [2.844828, '2.84×'],
  [0.25, '0.25×'],
])('order %d is written %s', (order, text) => {
  expect(orderText(order)).toBe(text);
});

test('a label names the part, or which of several, and what is special', () => {
  expect(lineLabel('driveshaft', 2)).toBe('driveshaft 2×');
  expect(lineLabel('driveshaft', 2, 'front driveshaft')).toBe('front driveshaft 2×');
  expect(lineLabel('engine', 4, undefined, 'firing')).toBe('engine 4× (firing)');
  expect(lineLabel('engine', 18, 'motor', 'electric')).toBe('motor 18× (electrical)');
  expect(lineLabel('driveshaft', 11, undefined, 'mesh')).toBe('driveshaft 11× (gear mesh)');
  expect(lineLabel('driveshaft', 4, undefined, 'companion')).toBe('driveshaft 4×');
});
