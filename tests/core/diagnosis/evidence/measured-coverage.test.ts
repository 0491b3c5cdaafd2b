import { describe, expect, it } from 'vitest';
import { coverageOf } from '../../../../src/core/diagnosis/evidence/measured-coverage.ts';
import type { Measurement, RunoutPlace } from '../../../../src/core/driveline/measurement.ts';
import type { Vehicle } from '../../../../src/core/vehicle/vehicle.ts';

const onePiece: Vehicle = { layout: 'rear-drive' };
const twoPieces: Vehicle = { layout: 'rear-drive', driveshaftPieces: [{}, {}] };
const runoutAt = (place: RunoutPlace): number => coverageOf({ kind: 'runout', place, tirMm: 0.1 }, onePiece);
const endPlay: Measurement = { kind: 'end-play', joint: 'front', axisPlayMm: [0, 0] };
const axis = { grooveSpanMm: 82, crossAndCupsMm: 78.6, ring1Mm: 1.6, ring2Mm: 1.6 };
const rings = (axes: number): Measurement => ({
  kind: 'rings',
  joint: 'front',
  axes: Array.from({ length: axes }, () => axis),
});

describe('the share of a whole check that one reading is', () => {
  it('makes a whole of all places that belong to one check', () => {
    const together = (...places: RunoutPlace[]): number => places.reduce((sum, place) => sum + runoutAt(place), 0);
    expect(together('tube-front', 'tube-middle', 'tube-rear')).toBeCloseTo(1, 12);
    expect(together('companion-flange-radial', 'companion-flange-face')).toBeCloseTo(1, 12);
    expect(4 * together('wheel-radial', 'wheel-lateral')).toBeCloseTo(1, 12);
    expect(4 * together('tire-radial', 'tire-lateral')).toBeCloseTo(1, 12);
    expect(4 * coverageOf({ kind: 'wheel-unbalance', innerG: 0, outerG: 0, radiusMm: 200 }, onePiece)).toBe(1);
  });

  it('counts what shakes up and down for more than what shakes sideways (common practice, no source)', () => {
    expect(runoutAt('tire-radial')).toBeGreaterThan(runoutAt('tire-lateral'));
    expect(runoutAt('wheel-radial')).toBeGreaterThan(runoutAt('wheel-lateral'));
    expect(runoutAt('companion-flange-radial')).toBeGreaterThan(runoutAt('companion-flange-face'));
  });

  it('is one of two joints on a shaft in one piece, of three on two pieces; rings of one axis are half a joint', () => {
    expect([coverageOf(endPlay, onePiece), coverageOf(endPlay, twoPieces)]).toEqual([1 / 2, 1 / 3]);
    expect([coverageOf(rings(2), onePiece), coverageOf(rings(2), twoPieces)]).toEqual([1 / 2, 1 / 3]);
    expect(coverageOf(rings(1), onePiece)).toBe(1 / 4);
  });

  it('is less than whole for a centre bearing, whose roughness a dial does not find', () => {
    const play = (place: 'slip-yoke' | 'center-bearing'): Measurement => ({ kind: 'radial-play', place, playMm: 0.1 });
    expect(coverageOf(play('slip-yoke'), onePiece)).toBe(1);
    expect(coverageOf(play('center-bearing'), onePiece)).toBeLessThan(1);
  });
});
