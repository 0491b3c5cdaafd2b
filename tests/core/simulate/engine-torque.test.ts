import { describe, expect, it } from 'vitest';
import { size } from '../../../src/core/complex.ts';
import { firingPhasor } from '../../../src/core/simulate/engine-torque.ts';

/** Even-firing engines, phasor sum over two turns of the crank; numbers by hand from the geometric series. */
describe('firing phasors', () => {
  const sound = (n: number): number[] => Array.from({ length: n }, () => 1);

  it('leave only multiples of half the cylinder count where all cylinders are alike', () => {
    for (const n of [3, 4, 5, 6, 8])
      for (let order = 0.5; order <= 8; order += 0.5)
        expect(size(firingPhasor(sound(n), order))).toBeCloseTo((2 * order) % n === 0 ? 1 : 0, 9);
  });

  it('show one dead cylinder of four as 0.25 at every half order and 0.75 at 2, 4, 6', () => {
    const dead = [1, 1, 0, 1];
    for (const order of [0.5, 1, 1.5, 2.5, 3]) expect(size(firingPhasor(dead, order))).toBeCloseTo(0.25, 9);
    for (const order of [2, 4, 6]) expect(size(firingPhasor(dead, order))).toBeCloseTo(0.75, 9);
  });

  it('show one cylinder of six at 80 % as 0.033333, and 0.966667 at the firing order', () => {
    const weak = [1, 1, 0.8, 1, 1, 1];
    expect(size(firingPhasor(weak, 0.5))).toBeCloseTo(0.2 / 6, 9);
    expect(size(firingPhasor(weak, 3))).toBeCloseTo(1 - 0.2 / 6, 9);
  });
});
