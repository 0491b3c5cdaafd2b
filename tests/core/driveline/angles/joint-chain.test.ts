import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AngleSetup } from '../../../../src/core/driveline/angles/angle-chain.ts';
import { angleChain } from '../../../../src/core/driveline/angles/angle-chain.ts';
import type { Direction } from '../../../../src/core/driveline/angles/compound-angle.ts';
import { combine, cross, directionFromSlope, dot, unit } from '../../../../src/core/driveline/angles/compound-angle.ts';
import { chainMotion } from '../../../../src/core/driveline/angles/exact-chain.ts';
import type { ChainJoint } from '../../../../src/core/driveline/angles/joint-chain.ts';
import { chainRipple, handResidualDeg, planeChain } from '../../../../src/core/driveline/angles/joint-chain.ts';
import { angleOfRipple, rippleOfAngle } from '../../../../src/core/driveline/angles/single-joint.ts';
import { add, polar, scale, size, ZERO } from '../../../../src/core/complex.ts';
import { radPerSFromRpm } from '../../../../src/core/units.ts';
import { exactRipple } from '../../../support/exact-ripple.ts';

/** The first-order rule |Σ q·e^(j2ψ)|, ψ the angle of each driving fork out of its own joint's plane, as an angle. */
const firstOrderResidualDeg = (joints: readonly ChainJoint[]): number => {
  let sum = ZERO;
  let turnDeg = 0;
  for (const joint of joints) {
    turnDeg += joint.turnDeg;
    sum = add(sum, scale(polar(1, 2 * turnDeg), rippleOfAngle(joint.angleDeg)));
  }
  return angleOfRipple(size(sum));
};

const printed = (value: number, figure: number, places: number): void =>
  expect(Math.abs(value - figure)).toBeLessThanOrEqual(0.5000001 * 10 ** -places);

describe('joints in series', () => {
  // Derived; the exact columns were computed by stepping the joint laws. Hand rule °, q rule °, 2× amplitude rad,
  // peak acceleration/ω², rad/s² at 3000 rev/min.
  const cases: readonly (readonly [string, readonly ChainJoint[], number, number, number, number, number])[] = [
    ['4 and 3.5 in phase', planeChain([4, 3.5]), 1.93649, 1.9377, 0.00028599, 0.00114396, 112.904],
    ['4 and 4, forks 90° out', planeChain([4, 4], [90]), 5.65685, 5.65456, 0.00243892, 0.00975596, 962.874],
    ['4 and 3, forks 90° out', planeChain([4, 3], [90]), 5, 4.99854, 0.00190516, 0.00762078, 752.141],
    ['2, 4, 3 in phase', planeChain([2, 4, 3]), 1.73205, 1.73425, 0.00022908, 0.00091632, 90.437],
    ['1.5, 5, 4.5 in phase', planeChain([1.5, 5, 4.5]), 1.58114, 1.58441, 0.0001912, 0.0007648, 75.483],
    ['5 and 5, twist 5°', planeChain([5, 5], [5]), 2.08753, 2.08863, 0.00033229, 0.00132915, 131.182],
    ['5 and 5, twist 10°', planeChain([5, 5], [10]), 2.94659, 2.94781, 0.00066205, 0.00264819, 261.366],
    ['5 and 4, planes 30° apart', planeChain([5, 4], [-30]), 4.68313, 4.68337, 0.00167223, 0.00668902, 660.179],
  ];

  it.each(cases)(
    'leave of %s what the rules and the exact composition say',
    (_, chain, hand, rule, double, peak, at) => {
      printed(handResidualDeg(chain), hand, 5);
      printed(firstOrderResidualDeg(chain), rule, 5);
      for (const { doubleAmplitudeRad, peakAccelerationRatio } of [chainRipple(chain), exactRipple(chain)]) {
        printed(doubleAmplitudeRad, double, 8);
        printed(peakAccelerationRatio, peak, 8);
        printed(peakAccelerationRatio * radPerSFromRpm(3000) ** 2, at, 3);
      }
    },
  );

  it('leave nothing of 4 and 4 in phase, while the middle shaft keeps the ripple of one joint', () => {
    const chain = planeChain([4, 4]);
    expect(chainRipple(chain).doubleAmplitudeRad).toBeLessThan(1e-15);
    expect(exactRipple(chain).peakAccelerationRatio).toBeLessThan(1e-13);
    printed(chainRipple(chain.slice(0, 1)).peakAccelerationRatio, 0.0048779, 7);
  });

  const joint = fc.record({
    angleDeg: fc.double({ min: 0, max: 15, noNaN: true }),
    turnDeg: fc.double({ min: -180, max: 180, noNaN: true }),
  });

  it('have in closed form the residual of stepwise composition, for random chains up to 15°', () => {
    fc.assert(
      fc.property(fc.array(joint, { minLength: 1, maxLength: 6 }), (chain) => {
        const closed = chainRipple(chain);
        const exact = exactRipple(chain, 360);
        // 0.1 % is asked for; what is left is rounding, also where the chain nearly cancels.
        expect(Math.abs(closed.doubleAmplitudeRad - exact.doubleAmplitudeRad)).toBeLessThan(
          1e-9 * exact.doubleAmplitudeRad + 1e-13,
        );
        expect(Math.abs(closed.peakAccelerationRatio - exact.peakAccelerationRatio)).toBeLessThan(
          1e-6 * exact.peakAccelerationRatio + 1e-13,
        );
      }),
      { numRuns: 300 },
    );
  });

  it('obey the first-order rule but for terms of third order in the ripple put in', () => {
    fc.assert(
      fc.property(fc.array(joint, { minLength: 1, maxLength: 4 }), (chain) => {
        const putIn = chain.reduce((sum, { angleDeg }) => sum + Math.tan((angleDeg * Math.PI) / 360) ** 2, 0);
        const rule = Math.tan((firstOrderResidualDeg(chain) * Math.PI) / 360) ** 2;
        const exact = exactRipple(chain, 360).doubleAmplitudeRad;
        expect(Math.abs(rule - exact)).toBeLessThanOrEqual(putIn ** 3 + 1e-13);
      }),
      { numRuns: 200 },
    );
  });

  it('run as unevenly turned about, rear end driving', () => {
    fc.assert(
      fc.property(fc.array(joint, { minLength: 2, maxLength: 4 }), (chain) => {
        // Behind a joint the driven fork is a quarter turn on: turned about, the turns between stay, their sense changes.
        const about = chain
          .map((one, index) => ({ angleDeg: one.angleDeg, turnDeg: 180 - (chain[index + 1]?.turnDeg ?? 0) }))
          .reverse();
        expect(chainRipple(about).doubleAmplitudeRad).toBeCloseTo(chainRipple(chain).doubleAmplitudeRad, 12);
      }),
      { numRuns: 100 },
    );
  });

  it('have a speed and an acceleration that are the derivatives of the angle', () => {
    const chain: ChainJoint[] = [
      { angleDeg: 12, turnDeg: 20 },
      { angleDeg: 9, turnDeg: 70 },
      { angleDeg: 14, turnDeg: -40 },
    ];
    const h = 0.01;
    for (let at = 0; at < 360; at += 13) {
      const [before, here, after] = [at - h, at, at + h].map((angle) => chainMotion(chain, angle).at(-1)!);
      expect((after!.angleDeg - before!.angleDeg) / (2 * h)).toBeCloseTo(here!.speedRatio, 7);
      const slope = ((after!.speedRatio - before!.speedRatio) / (2 * h)) * (180 / Math.PI);
      expect(slope).toBeCloseTo(here!.accelerationRatio, 6);
    }
  });

  it('take the turn before a joint forwards: 30° before 10° is the single joint at 30°', () => {
    const [motion] = chainMotion([{ angleDeg: 10, turnDeg: 30 }], 0);
    expect(motion!.angleDeg).toBeCloseTo(30.381255, 6);
    expect(motion!.speedRatio).toBeCloseTo(1.00759478, 8);
    expect(motion!.accelerationRatio).toBeCloseTo(-0.02692102, 8);
  });
});

/** Turn of the last shaft, degrees, by nothing but vectors: each cross keeps its two trunnions square. */
const turnByVectors = (setup: AngleSetup, firstDeg: number): number => {
  const along = setup.shafts.map((shaft) => directionFromSlope(shaft.slopeDeg, shaft.planDeg));
  const rotate = (vector: Direction, axis: Direction, angleDeg: number): Direction => {
    const angle = (angleDeg * Math.PI) / 180;
    return combine(vector, Math.cos(angle), cross(axis, vector), Math.sin(angle));
  };
  const start = unit(cross(along[0]!, [0.3, 0.5, 1]));
  const walk = (inputDeg: number): Direction => {
    let trunnion = rotate(start, along[0]!, inputDeg);
    for (let index = 1; index < along.length; index++) {
      const across = unit(cross(along[index]!, trunnion));
      const twist = index < along.length - 1 ? (setup.phasingDeg?.[index - 1] ?? 0) : 0;
      trunnion = rotate(across, along[index]!, twist);
    }
    return trunnion;
  };
  const last = along.at(-1)!;
  const from = walk(0);
  const to = walk(firstDeg);
  return (Math.atan2(dot(last, cross(from, to)), dot(from, to)) * 180) / Math.PI;
};

describe('a driveline read with an inclinometer', () => {
  const shaft = fc.record({
    slopeDeg: fc.double({ min: -9, max: 9, noNaN: true }),
    planDeg: fc.double({ min: -5, max: 5, noNaN: true }),
  });

  it('turns as trunnions at right angles make it turn: true angles, planes, twist senses and all', () => {
    fc.assert(
      fc.property(
        fc.array(shaft, { minLength: 2, maxLength: 5 }),
        fc.array(fc.double({ min: -90, max: 90, noNaN: true }), { minLength: 3, maxLength: 3 }),
        (readings, twists) => {
          const shafts = readings.map((reading) => ({ part: 'shaft' as const, ...reading }));
          const setup: AngleSetup = { shafts, phasingDeg: twists.slice(0, shafts.length - 2) };
          const { crosses } = angleChain(setup);
          // Ripple by vectors, least squares over a turn.
          let re = 0;
          let im = 0;
          const steps = 24;
          for (let step = 0; step < steps; step++) {
            const at = (360 * step) / steps;
            const turned = turnByVectors(setup, at) - at;
            const error = turned - 360 * Math.round(turned / 360);
            re += (error * Math.cos((2 * at * Math.PI) / 180) * 2) / steps;
            im += (error * Math.sin((2 * at * Math.PI) / 180) * 2) / steps;
          }
          const byVectorsRad = (Math.hypot(re, im) * Math.PI) / 180;
          expect(Math.abs(byVectorsRad - chainRipple(crosses).doubleAmplitudeRad)).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('has the compound angles, plane mismatch and residual of the worked vehicle (derived)', () => {
    const { joints, crosses } = angleChain({
      shafts: [
        { part: 'transmission', slopeDeg: 3 },
        { part: 'shaft', slopeDeg: 6.2, planDeg: 1.5 },
        { part: 'pinion', slopeDeg: 2.4 },
      ],
    });
    printed(joints[0]!.angleDeg, 3.531987, 6);
    printed(joints[1]!.angleDeg, 4.083689, 6);
    printed(180 - Math.abs(joints[1]!.planeTurnDeg), 3.5613, 4);
    printed(handResidualDeg(crosses), 2.137224, 6);
    const { peakAccelerationRatio } = chainRipple(crosses);
    printed(peakAccelerationRatio, 0.00139331, 8);
    printed(peakAccelerationRatio * radPerSFromRpm(3000) ** 2, 137.515, 3);
    printed(chainRipple(crosses.slice(0, 1)).peakAccelerationRatio * radPerSFromRpm(3000) ** 2, 375.292, 3);
    printed(chainRipple(crosses.slice(1)).peakAccelerationRatio * radPerSFromRpm(3000) ** 2, 501.801, 3);
  });

  it('leaves 242.99 rad/s² at 3000 rev/min of a 20° double-Cardan joint split 10.2 to 9.8 (derived)', () => {
    const double = (splitErrorDeg: number) =>
      angleChain({
        shafts: [
          { part: 'transmission', slopeDeg: 0 },
          { part: 'shaft', slopeDeg: 20 },
        ],
        joints: ['double-cardan'],
        splitErrorDeg: [splitErrorDeg],
      }).crosses;
    expect(chainRipple(double(0)).doubleAmplitudeRad).toBeLessThan(1e-15);
    expect(double(0.2).map(({ angleDeg }) => Number(angleDeg.toFixed(9)))).toEqual([10.2, 9.8]);
    printed(handResidualDeg(double(0.2)), 2.828427, 6);
    printed(exactRipple(double(0.2)).peakAccelerationRatio, 0.002462, 8);
    printed(chainRipple(double(0.2)).peakAccelerationRatio * radPerSFromRpm(3000) ** 2, 242.99, 2);
  });

  it('lets constant-velocity joints contribute nothing, whatever their angle', () => {
    const shafts = [
      { part: 'transmission' as const, slopeDeg: 0 },
      { part: 'shaft' as const, slopeDeg: 8 },
      { part: 'shaft' as const, slopeDeg: 3 },
      { part: 'pinion' as const, slopeDeg: 7 },
    ];
    const only = angleChain({ shafts, joints: ['constant-velocity', 'flexible-disc', 'cross'] });
    expect(only.crosses.map(({ angleDeg }) => Number(angleDeg.toFixed(9)))).toEqual([4]);
    // A constant-velocity joint between two crosses hands the forks on: 5° and 5° still cancel.
    const between = angleChain({
      shafts: [
        { part: 'transmission', slopeDeg: 0 },
        { part: 'shaft', slopeDeg: 5 },
        { part: 'shaft', slopeDeg: 9 },
        { part: 'pinion', slopeDeg: 4 },
      ],
      joints: ['cross', 'constant-velocity', 'cross'],
    });
    expect(chainRipple(between.crosses).equivalentAngleDeg).toBeLessThan(1e-5);
  });

  it('keeps the plane through a joint that happens to stand straight', () => {
    const straight = angleChain({
      shafts: [
        { part: 'transmission', slopeDeg: 0 },
        { part: 'shaft', slopeDeg: 0 },
        { part: 'shaft', slopeDeg: 5, planDeg: 2 },
        { part: 'pinion', slopeDeg: 0 },
      ],
    });
    expect(chainRipple(straight.crosses).equivalentAngleDeg).toBeLessThan(0.01);
    expect(straight.joints[0]!.angleDeg).toBe(0);
  });
});
