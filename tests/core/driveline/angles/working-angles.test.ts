import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { angleChain } from '../../../../src/core/driveline/angles/angle-chain.ts';
import { applyChange, completeGeometry } from '../../../../src/core/driveline/angles/angle-change.ts';
import { angleSensitivity } from '../../../../src/core/driveline/angles/angle-sensitivity.ts';
import { angleWhatIf } from '../../../../src/core/driveline/angles/angle-what-if.ts';
import { secondaryCouple } from '../../../../src/core/driveline/angles/secondary-couple.ts';
import type { WorkingAnglesInput } from '../../../../src/core/driveline/angles/working-angles.ts';
import { residualOverSpeeds, workingAngles } from '../../../../src/core/driveline/angles/working-angles.ts';
import { radPerSFromRpm } from '../../../../src/core/units.ts';
import { exactRipple } from '../../../support/exact-ripple.ts';
import { must } from '../../../support/must.ts';

/** One-piece shaft with these joint angles, forks in line, in one plane; parallel ends where they are equal. */
const onePiece = (frontDeg: number, rearDeg: number, more: Partial<WorkingAnglesInput> = {}): WorkingAnglesInput => ({
  shafts: [
    { part: 'transmission', slopeDeg: 3 },
    { part: 'shaft', slopeDeg: 3 + frontDeg },
    { part: 'pinion', slopeDeg: 3 + frontDeg - rearDeg },
  ],
  driveshaftRpm: 3000,
  ...more,
});

describe('working angles', () => {
  it('judge the worked vehicle: 137.515 residual, 375.292 on drive, 501.801 rad/s² on coast (derived)', () => {
    const angles = must(
      workingAngles({
        shafts: [
          { part: 'transmission', slopeDeg: 3 },
          { part: 'shaft', slopeDeg: 6.2, planDeg: 1.5 },
          { part: 'pinion', slopeDeg: 2.4 },
        ],
        driveshaftRpm: 3000,
      }),
    );
    expect(angles.residual.accelerationRadPerS2).toBeCloseTo(137.515, 3);
    expect(angles.inertiaDrive.accelerationRadPerS2).toBeCloseTo(375.292, 3);
    expect(angles.inertiaCoast.accelerationRadPerS2).toBeCloseTo(501.801, 3);
    expect(angles.verdict).toBe('inside');
    expect(angles.judged.map(({ limit }) => [limit.id, limit.value, limit.status])).toEqual([
      ['residual-acceleration', 400, 'common-practice'],
      ['inertia-drive', 1000, 'common-practice'],
      ['inertia-coast', 1000, 'common-practice'],
      ['joint-angle-difference', 1, 'common-practice'],
    ]);
    // The joints are in one plane to 3.6°; that is said. Both are over the 3° of common practice; that is advice.
    expect(angles.notes.map(({ code }) => code)).toEqual(['ride-height', 'joint-planes-differ']);
    expect(angles.advisory.filter(({ inside }) => !inside).map(({ title }) => title)).toEqual([
      'angle of the joint at the transmission, at road speed',
      'angle of the joint at the pinion, at road speed',
    ]);
  });

  it('find forks 90° out on 4° and 4° outside: 962.874 rad/s² at 3000 rev/min (derived)', () => {
    const angles = must(workingAngles(onePiece(4, 4, { phasingDeg: [90] })));
    expect(angles.residual.accelerationRadPerS2).toBeCloseTo(962.874, 3);
    expect(angles.verdict).toBe('outside');
    expect(angles.notes.some(({ code }) => code === 'forks-twisted')).toBe(true);
    expect(angles.residualLimitRpm).toBeCloseTo(3000 * Math.sqrt(400 / 962.874), 2);
  });

  it('speak of forks out of line from a degree on, half a turn counting as in line', () => {
    const twisted = (twist: number) =>
      must(workingAngles(onePiece(4, 4, { phasingDeg: [twist] }))).notes.some(({ code }) => code === 'forks-twisted');
    expect([0, 0.9, -0.9, 180, 179.5].map(twisted)).toEqual([false, false, false, false, false]);
    expect([1.1, -1.1, 90, 178].map(twisted)).toEqual([true, true, true, true]);
  });

  it('hold the forks to 3° (common practice, no source) though the residual would still do', () => {
    const twist = { limit: { id: 'fork-twist', value: 3, status: 'common-practice' } };
    const tooth = must(workingAngles(onePiece(4, 4, { phasingDeg: [22.5], driveshaftRpm: 2800 })));
    expect(tooth.judged.map(({ inside }) => inside)).toEqual([true, true, true, true, false]);
    expect(tooth.judged.at(-1)).toMatchObject({ ...twist, measured: 22.5 });
    expect(tooth.verdict).toBe('outside');
    const verdict = (phasingDeg: number[], more: Partial<WorkingAnglesInput> = {}) =>
      must(workingAngles(onePiece(4, 4, { phasingDeg, ...more }))).verdict;
    expect([0, 2.9, -2.9, 3.1, -3.1, 177.1, 176.9].map((deg) => verdict([deg]))).toEqual([
      'inside',
      'inside',
      'inside',
      'outside',
      'outside',
      'inside',
      'outside',
    ]);
    expect(verdict([22.5], { driveshaftRpm: null })).toBe('outside');
    expect(verdict([22.5], { driveshaftRpm: 2800, limits: { 'fork-twist': { value: 25 } } })).toBe('inside');
  });

  it('let forks be that would leave more in line: joint planes a quarter turn apart want them a quarter turn out', () => {
    // Published for the double-Cardan driveline (Fischer & Paul): fork twist equal to the angle of the joint planes.
    const shafts: WorkingAnglesInput['shafts'] = [
      { part: 'transmission', slopeDeg: 3 },
      { part: 'shaft', slopeDeg: 7 },
      { part: 'pinion', slopeDeg: 7, planDeg: 4 },
    ];
    const set = must(workingAngles({ shafts, phasingDeg: [90], driveshaftRpm: 2800 }));
    expect(set.verdict).toBe('inside');
    expect(set.judged.some(({ limit }) => limit.id === 'fork-twist')).toBe(false);
    expect(set.notes.find(({ code }) => code === 'forks-set-so')?.text).toContain('in line they would leave no less');
    expect(set.notes.some(({ code }) => code === 'forks-twisted')).toBe(false);
  });

  it('do not call a two-piece shaft good without a speed because its forks are in line', () => {
    const shafts: WorkingAnglesInput['shafts'] = [
      { part: 'transmission', slopeDeg: 3 },
      { part: 'shaft', slopeDeg: 4 },
      { part: 'shaft', slopeDeg: 8 },
      { part: 'pinion', slopeDeg: 3 },
    ];
    const verdict = (phasingDeg: number[]) => must(workingAngles({ shafts, phasingDeg, driveshaftRpm: null })).verdict;
    expect([verdict([0, 0]), verdict([0, 30])]).toEqual(['cannot-tell', 'outside']);
  });

  it('let the maker’s figure override the default', () => {
    const strict = must(workingAngles(onePiece(5, 3, { limits: { 'residual-acceleration': { value: 300 } } })));
    const loose = must(workingAngles(onePiece(5, 3)));
    expect(strict.residual.accelerationRadPerS2).toBeGreaterThan(300);
    expect([strict.verdict, loose.verdict]).toEqual(['outside', 'outside']);
    const wide = {
      'residual-acceleration': { value: 700, source: 'maker’s service data' },
      'joint-angle-difference': { value: 2.5 },
    };
    const own = must(workingAngles(onePiece(5, 3, { limits: wide })));
    expect(own.verdict).toBe('inside');
    expect(own.judged[0]?.limit).toMatchObject({ status: 'maker', source: 'maker’s service data', value: 700 });
  });

  it('are outside where they differ by more than a degree, though the speed is too low for the acceleration', () => {
    const slow = must(workingAngles(onePiece(5.5, 2.8, { driveshaftRpm: 1960 })));
    expect(slow.judged.map(({ inside }) => inside)).toEqual([true, true, true, false]);
    expect(slow.verdict).toBe('outside');
  });

  it('judge without a speed by the difference of the two angles only, and say so', () => {
    expect(must(workingAngles(onePiece(4, 3.5, { driveshaftRpm: null }))).verdict).toBe('inside');
    const unequal = must(workingAngles(onePiece(4, 1.5, { driveshaftRpm: null })));
    expect(unequal.verdict).toBe('outside');
    expect(unequal.notes.map(({ code }) => code)).toContain('no-speed');
  });

  it('count the drive from the transfer case on a front driveshaft, where the pinion comes first', () => {
    const shafts = [
      { part: 'pinion' as const, slopeDeg: -3 },
      { part: 'shaft' as const, slopeDeg: -5 },
      { part: 'transmission' as const, slopeDeg: -2 },
    ];
    const front = must(workingAngles({ shafts, driveshaftRpm: 3000 }));
    const rear = must(workingAngles({ shafts: [...shafts].reverse(), driveshaftRpm: 3000 }));
    // One joint alone (derived): 3° at the driving end, 2° at the pinion.
    expect(front.inertiaDrive.accelerationRadPerS2).toBeCloseTo(270.7051, 4);
    expect(front.inertiaCoast.accelerationRadPerS2).toBeCloseTo(120.2826, 4);
    expect(rear.inertiaDrive.accelerationRadPerS2).toBeCloseTo(270.7051, 4);
    expect(front.judged.map(({ measured }) => measured)).toEqual(
      rear.judged.map(({ measured }) => expect.closeTo(measured, 9)),
    );
  });

  it('report each piece of a two-piece shaft from the front and from the rear', () => {
    const angles = must(
      workingAngles({
        shafts: [
          { part: 'transmission', slopeDeg: 4 },
          { part: 'shaft', slopeDeg: 2 },
          { part: 'shaft', slopeDeg: 6 },
          { part: 'pinion', slopeDeg: 3 },
        ],
        driveshaftRpm: 3000,
      }),
    );
    expect(angles.joints.map(({ angleDeg }) => Number(angleDeg.toFixed(6)))).toEqual([2, 4, 3]);
    expect(angles.residual.accelerationRadPerS2).toBeCloseTo(90.437, 3);
    expect(angles.pieces).toHaveLength(2);
    expect(angles.pieces[0]!.fromFront.accelerationRadPerS2).toBeCloseTo(120.2826, 4);
    expect(angles.pieces[1]!.fromRear.accelerationRadPerS2).toBeCloseTo(270.7051, 4);
    expect(angles.inertiaCoast.accelerationRadPerS2).toBe(
      Math.max(...angles.pieces.map(({ fromRear }) => fromRear.accelerationRadPerS2!)),
    );
  });

  it('give the residual over a speed range, growing with the square of speed', () => {
    const { residual } = must(workingAngles(onePiece(4, 3.5)));
    const [half, whole] = residualOverSpeeds(residual, [1500, 3000]);
    expect(whole!.accelerationRadPerS2).toBeCloseTo(112.904, 3);
    expect(half!.accelerationRadPerS2).toBeCloseTo(112.904 / 4, 3);
  });

  it.each([
    [{ shafts: [{ part: 'shaft', slopeDeg: 1 }] }, 'too-few-shafts'],
    [
      {
        shafts: [
          { part: 'shaft', slopeDeg: 1 },
          { part: 'pinion', slopeDeg: Number.NaN },
        ],
      },
      'angle-out-of-range',
    ],
    [{ ...onePiece(4, 4), phasingDeg: [0, 0] }, 'too-many-entries'],
    [{ shafts: Array.from({ length: 9 }, () => ({ part: 'shaft', slopeDeg: 1 })) }, 'too-many-entries'],
    [{ ...onePiece(4, 4), phasingDeg: [Number.NaN] }, 'angle-out-of-range'],
    [{ ...onePiece(4, 4), driveshaftRpm: Number.NaN }, 'speed-not-a-number'],
  ] as const)('refuse %j with a sentence and a way out', (input, code) => {
    const result = workingAngles({ driveshaftRpm: 3000, ...input } as WorkingAnglesInput);
    expect(result).toMatchObject({ ok: false, problem: { code } });
    expect(!result.ok && result.problem.message.length > 20 && result.problem.remedy.length > 20).toBe(true);
  });
});

describe('the secondary couple', () => {
  it('has the worked values at 10° for a unit torque (derived)', () => {
    expect(secondaryCouple(1, 10).steadyNm).toBeCloseTo(0.08816349, 8);
    expect(secondaryCouple(1, 10).doubleNm).toBeCloseTo(0.08816349, 8);
  });

  it('puts 32.808249 N at 2× on bearings 0.40 m apart at 300 N·m and 5° (derived)', () => {
    const couple = secondaryCouple(300, 5, 400);
    expect(couple.peakNm).toBeCloseTo(26.246599, 6);
    expect(couple.doubleReactionN).toBeCloseTo(32.808249, 6);
    expect(secondaryCouple(300, 5).doubleReactionN).toBeNull();
  });

  it('is in the fixed frame a steady part and an equal one at twice the speed', () => {
    // The couple turns with the driving fork: size |sin φ|, direction φ. Its mean and its 2× part, by a plain sum.
    const steps = 360;
    const mean = [0, 0];
    const double = [0, 0];
    for (let step = 0; step < steps; step++) {
      const at = (2 * Math.PI * step) / steps;
      const size = Math.tan(Math.PI / 36) * Math.sin(at);
      mean[0]! += (size * Math.cos(at)) / steps;
      mean[1]! += (size * Math.sin(at)) / steps;
      // Turning against 2φ leaves what turns with 2φ.
      const [x, y] = [size * Math.cos(at), size * Math.sin(at)];
      double[0]! += (x * Math.cos(2 * at) + y * Math.sin(2 * at)) / steps;
      double[1]! += (y * Math.cos(2 * at) - x * Math.sin(2 * at)) / steps;
    }
    expect(Math.hypot(mean[0]!, mean[1]!)).toBeCloseTo(secondaryCouple(1, 5).steadyNm, 12);
    expect(Math.hypot(double[0]!, double[1]!)).toBeCloseTo(secondaryCouple(1, 5).doubleNm, 12);
  });
});

const geometry = { pieceLengthsMm: [1400], mountSpanMm: 900, frontMountToJointMm: 1100, pinionLengthMm: 280 };

describe('what a change does', () => {
  const input = onePiece(4, 1);
  const complete = completeGeometry(geometry, input);
  const slopes = (setup: { shafts: readonly { slopeDeg: number }[] }) => setup.shafts.map(({ slopeDeg }) => slopeDeg);

  it('to a raised mount: the powertrain levels out and its joint rises, by plain trigonometry', () => {
    const after = slopes(applyChange(input, complete, { kind: 'mount-height', amount: 9 }));
    const turn = (Math.atan(9 / 900) * 180) / Math.PI;
    expect(after[0]).toBeCloseTo(3 - turn, 10);
    expect(Math.sin((after[1]! * Math.PI) / 180)).toBeCloseTo(Math.sin((7 * Math.PI) / 180) + 11 / 1400, 10);
    expect(after[2]).toBe(6);
  });

  it('to a shimmed axle: the pinion turns up, and its joint lifts the rear of the shaft', () => {
    const after = slopes(applyChange(input, complete, { kind: 'axle-shim', amount: 2 }));
    expect(after[2]).toBeCloseTo(8, 10);
    const lift = 280 * Math.sin((2 * Math.PI) / 180);
    expect(Math.sin((after[1]! * Math.PI) / 180)).toBeCloseTo(Math.sin((7 * Math.PI) / 180) - lift / 1400, 10);
  });

  it('to a body that sinks: only the shaft to the axle changes', () => {
    const after = slopes(applyChange(input, complete, { kind: 'ride-height', amount: -28 }));
    expect([after[0], after[2]]).toEqual([3, 6]);
    expect(Math.sin((after[1]! * Math.PI) / 180)).toBeCloseTo(Math.sin((7 * Math.PI) / 180) - 28 / 1400, 10);
  });

  it('to a front driveshaft is the mirror image of the same rear one', () => {
    const rear = onePiece(4, 1);
    // Seen from the other end: order reversed, slopes of opposite sign.
    const shafts = [...rear.shafts].reverse().map((shaft) => ({ ...shaft, slopeDeg: -shaft.slopeDeg }));
    const front: WorkingAnglesInput = { ...rear, shafts };
    for (const change of [
      { kind: 'ride-height', amount: 15 },
      { kind: 'center-bearing-height', amount: 0 },
    ] as const) {
      const one = slopes(applyChange(rear, complete, change));
      const other = slopes(applyChange(front, complete, change));
      expect(other[1]).toBeCloseTo(-one[1]!, 10);
    }
    // Front end up is, seen from the other end, rear end down.
    const up = slopes(applyChange(rear, complete, { kind: 'axle-shim', amount: 1 }));
    const down = slopes(applyChange(front, complete, { kind: 'axle-shim', amount: -1 }));
    expect(down[1]).toBeCloseTo(-up[1]!, 10);
    expect(down[0]).toBeCloseTo(-up[2]!, 10);
  });
});

describe('what would bring the residual under its limit', () => {
  it('is nothing where it is inside already, and nothing can be said without a speed', () => {
    expect(must(angleWhatIf(onePiece(4, 3.5), geometry))).toMatchObject({ alreadyInside: true, single: [] });
    const blind = must(angleWhatIf(onePiece(4, 1, { driveshaftRpm: null }), geometry));
    expect(blind).toMatchObject({ alreadyInside: false, single: [], together: null });
  });

  it('is the least change: a hundredth less of it does not do', () => {
    const input = onePiece(5, 2.5, { limits: { 'joint-angle-difference': { value: 9 } } });
    const complete = completeGeometry(geometry, input);
    const answer = must(angleWhatIf(input, geometry));
    const reaching = answer.single.filter(({ reachesLimit }) => reachesLimit);
    expect(reaching.map(({ changes }) => changes[0]!.kind).sort()).toEqual(['axle-shim', 'mount-height']);
    for (const { changes, steps, practicalAmount } of reaching) {
      // Shims come in half degrees, plates in 3 mm: the practical amount is the next whole step.
      const step = changes[0]!.kind === 'axle-shim' ? 0.5 : 3;
      expect(steps).toBeCloseTo(Math.abs(changes[0]!.amount) / step, 9);
      expect(practicalAmount).toBeCloseTo(Math.sign(changes[0]!.amount) * Math.ceil(steps) * step, 9);
    }
    for (const { changes, residualRadPerS2 } of reaching) {
      expect(residualRadPerS2).toBeLessThanOrEqual(400);
      const less = { ...changes[0]!, amount: changes[0]!.amount * 0.99 };
      const after = must(workingAngles({ ...input, ...applyChange(input, complete, less) }));
      expect(after.residual.accelerationRadPerS2).toBeGreaterThan(400);
    }
    // Brute force on a fine grid of shims finds nothing smaller.
    const shim = reaching.find(({ changes }) => changes[0]!.kind === 'axle-shim')!.changes[0]!.amount;
    for (let amount = 0; amount < Math.abs(shim) - 0.01; amount += 0.01) {
      for (const signed of [amount, -amount]) {
        const setup = applyChange(input, complete, { kind: 'axle-shim', amount: signed });
        const after = must(workingAngles({ ...input, ...setup }));
        expect(after.residual.accelerationRadPerS2).toBeGreaterThan(400);
      }
    }
  });

  it('brings the difference of the angles inside too, where that is what is outside', () => {
    const input = onePiece(5.5, 2.8, { driveshaftRpm: 1960 });
    const complete = completeGeometry(geometry, input);
    const answer = must(angleWhatIf(input, geometry));
    expect(answer.alreadyInside).toBe(false);
    const { changes, reachesLimit } = answer.single[0]!;
    expect(reachesLimit).toBe(true);
    const difference = (share: number) => {
      const setup = applyChange(input, complete, { ...changes[0]!, amount: share * changes[0]!.amount });
      const [front, rear] = must(workingAngles({ ...input, ...setup })).joints;
      return Math.abs(front!.angleDeg - rear!.angleDeg);
    };
    expect(difference(1)).toBeLessThanOrEqual(1 + 1e-9);
    expect(difference(0.99)).toBeGreaterThan(1);
  });

  it('is the whole twist of the forks and nothing else, in teeth, where that alone does', () => {
    const remedy = (phasingDeg: number, splineTeeth?: number) =>
      must(angleWhatIf(onePiece(4, 4, { phasingDeg: [phasingDeg], driveshaftRpm: 2800 }), geometry, { splineTeeth }));
    const quarter = remedy(90, 16);
    expect(quarter).toMatchObject({ alreadyInside: false, together: null });
    expect(quarter.single).toMatchObject([
      { changes: [{ kind: 'phasing', amount: 90, piece: 0, teeth: 4 }], steps: 4, reachesLimit: true },
    ]);
    expect(quarter.single[0]!.residualRadPerS2).toBeLessThan(1);
    // Outside by its twist alone: the residual of 321 rad/s² would do.
    expect(remedy(22.5, 16).single).toMatchObject([{ changes: [{ amount: -22.5, teeth: 1 }], reachesLimit: true }]);
    // Read as 21.5°, which is one tooth; 12° is no number of teeth, and where none are known the twist itself is told.
    expect(remedy(21.5, 16).single).toMatchObject([{ changes: [{ amount: -22.5, teeth: 1 }], reachesLimit: true }]);
    for (const { single } of [remedy(12, 16), remedy(12)]) {
      expect(single).toHaveLength(1);
      expect(single[0]!.changes).toEqual([{ kind: 'phasing', amount: -12, piece: 0 }]);
    }
  });

  it('is all twisted pieces of a shaft at once', () => {
    const shafts: WorkingAnglesInput['shafts'] = [
      { part: 'transmission', slopeDeg: 4 },
      { part: 'shaft', slopeDeg: 2 },
      { part: 'shaft', slopeDeg: 6 },
      { part: 'pinion', slopeDeg: 3 },
    ];
    const input = { shafts, phasingDeg: [30, -20], driveshaftRpm: 3000 };
    const { single, together } = must(angleWhatIf(input, geometry));
    expect(single.map(({ changes }) => changes.map(({ amount }) => amount))).toEqual([[-30, 20]]);
    expect([single[0]!.reachesLimit, together]).toEqual([true, null]);
    // In line it is the plain 2, 4, 3 chain (derived).
    expect(single[0]!.residualRadPerS2).toBeCloseTo(90.437, 3);
  });

  it('is another change besides only where forks in line do not do', () => {
    const input = onePiece(6, 4, { phasingDeg: [90], driveshaftRpm: 3600 });
    const { single, together } = must(angleWhatIf(input, geometry, { splineTeeth: 16 }));
    expect(single).toEqual([]);
    expect(together!.changes.map(({ kind }) => kind)).toEqual(['phasing', expect.stringMatching(/mount|axle/)]);
    expect(together!.changes[0]).toMatchObject({ amount: 90, teeth: 4 });
    expect(together!.reachesLimit).toBe(true);
    const inLine = must(angleWhatIf({ ...input, phasingDeg: [0] }, geometry)).single;
    const least = Math.min(...inLine.filter(({ reachesLimit }) => reachesLimit).map(({ steps }) => steps));
    // Four teeth, and what it would take had they been in line.
    expect(together!.steps).toBeCloseTo(4 + least, 2);
  });

  it('never trades the residual for an inertia figure or for needles that stand still', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.6, max: 7, noNaN: true }),
        fc.double({ min: 0.6, max: 7, noNaN: true }),
        (frontDeg, rearDeg) => {
          const input = onePiece(frontDeg, rearDeg);
          const complete = completeGeometry(geometry, input);
          const before = must(workingAngles(input));
          for (const { changes, reachesLimit } of must(angleWhatIf(input, geometry)).single) {
            if (!reachesLimit) continue;
            const after = must(workingAngles({ ...input, ...applyChange(input, complete, changes[0]!) }));
            expect(after.judged[0]!.inside).toBe(true);
            for (const [index, number] of after.judged.slice(1).entries()) {
              expect(number.inside || number.measured <= before.judged[index + 1]!.measured).toBe(true);
            }
            for (const joint of after.joints) expect(joint.angleDeg).toBeGreaterThanOrEqual(0.5 - 1e-9);
          }
        },
      ),
      { numRuns: 15 },
    );
  });

  it('takes two changes together only where one alone does not do, and says what one alone would spoil', () => {
    // A shim alone could take the residual to nothing, but only by raising the inertia figure that is out already.
    const input = onePiece(8, 3, { driveshaftRpm: 4500 });
    const complete = completeGeometry(geometry, input);
    const { single, together } = must(angleWhatIf(input, geometry));
    expect(single.map(({ reachesLimit }) => reachesLimit)).toEqual([false, false]);
    expect(single[0]).toMatchObject({ changes: [{ kind: 'axle-shim' }], spoils: ['inertia'] });
    expect(single[0]!.residualRadPerS2).toBeLessThan(1);
    // A mount is moved 40 mm at the most.
    expect(single[1]!.changes).toEqual([{ kind: 'mount-height', amount: expect.closeTo(-40, 9) }]);
    expect(together!.changes.map(({ kind }) => kind)).toEqual(['axle-shim', 'mount-height']);
    const setup = together!.changes.reduce<WorkingAnglesInput>(
      (current, change) => ({ ...current, ...applyChange(current, complete, change) }),
      input,
    );
    const after = must(workingAngles(setup));
    expect(after.residual.accelerationRadPerS2).toBeLessThanOrEqual(400);
    expect(after.residual.accelerationRadPerS2).toBeCloseTo(together!.residualRadPerS2, 9);
  });

  it('names what it had to assume', () => {
    expect(must(angleWhatIf(onePiece(5, 2.5), {})).assumed).toHaveLength(4);
    expect(must(angleWhatIf(onePiece(5, 2.5), geometry)).assumed).toEqual([]);
  });
});

describe('what a plate of 3 mm or half a degree of shim buys', () => {
  it('is the difference that exact composition gives for the changed driveline', () => {
    const input = onePiece(4, 2);
    const complete = completeGeometry(geometry, input);
    const { smallSteps, rideHeight, windUp } = must(angleSensitivity(input, geometry));
    const nowRatio = exactRipple(angleChain(input).crosses).peakAccelerationRatio;
    for (const effect of [...smallSteps, ...rideHeight, ...windUp]) {
      const { crosses } = angleChain(applyChange(input, complete, effect.change));
      const difference = (exactRipple(crosses).peakAccelerationRatio - nowRatio) * radPerSFromRpm(3000) ** 2;
      expect(effect.residualDifferenceRadPerS2).toBeCloseTo(difference, 3);
      const now = must(workingAngles(input)).residual.equivalentAngleDeg;
      expect(now + effect.residualDifferenceDeg).toBeCloseTo(effect.residualDeg, 9);
    }
    expect(smallSteps.map(({ change }) => `${change.kind} ${change.amount}`)).toEqual([
      'axle-shim 0.5',
      'mount-height 3',
      'phasing 0.5',
      'axle-shim -0.5',
      'mount-height -3',
      'phasing -0.5',
    ]);
    expect(rideHeight.map(({ change }) => change.amount)).toEqual([-40, -20, -10, 10, 20, 40]);
    expect(windUp.map(({ change }) => change.amount)).toEqual([0.5, 1, 2, 3]);
  });
});
