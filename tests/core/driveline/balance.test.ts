import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balanceByAmplitudes } from '../../../src/core/driveline/balance/balance-amplitude.ts';
import {
  forceOfUnbalanceN,
  gradeOfUnbalance,
  permissibleUnbalanceGmm,
  trialUnbalanceGmm,
} from '../../../src/core/driveline/balance/balance-grade.ts';
import { balanceByPhasors } from '../../../src/core/driveline/balance/balance-influence.ts';
import {
  placeAvailable,
  splitBetweenClamps,
  splitBetweenHoles,
} from '../../../src/core/driveline/balance/balance-split.ts';
import type { Complex } from '../../../src/core/complex.ts';
import { add, angleBetweenDeg, angleDegOf, multiply, polar, scale, size } from '../../../src/core/complex.ts';
import { must } from '../../support/must.ts';

const reading = (value: Complex) => ({ amplitude: size(value), phaseDeg: angleDegOf(value) });

describe('balance quality grades of ISO 21940-11:2016', () => {
  it.each([
    [16, 9, 3000, 458.366, 50.93],
    [40, 9, 3000, 1145.916, 127.324],
    [16, 9, 3600, 381.972, 42.441],
    [16, 12, 4500, 407.437, 33.953],
    [6.3, 9, 3000, 180.482, 20.054],
  ])('allow G %s, %s kg at %s rev/min %s g·mm', (grade, mass, rpm, allowed, perKg) => {
    expect(permissibleUnbalanceGmm(grade, mass, rpm)).toBeCloseTo((9549.297 * grade * mass) / rpm, 3);
    expect(permissibleUnbalanceGmm(grade, mass, rpm)).toBeCloseTo(allowed, 3);
    expect(permissibleUnbalanceGmm(grade, mass, rpm) / mass).toBeCloseTo(perKg, 3);
    expect(gradeOfUnbalance(allowed, mass, rpm)).toBeCloseTo(grade, 4);
  });

  it('are loose for a wheel: 7361.7 g·mm at 20 kg and 120 km/h is 38.75 g at 190 mm (derived)', () => {
    const allowed = permissibleUnbalanceGmm(40, 20, 1037.724);
    // The speed is printed to seven figures, so the allowance is good to as many.
    expect(Math.abs(allowed - 7361.725)).toBeLessThan(0.005);
    expect(allowed / 20).toBeCloseTo(368.1, 1);
    expect(allowed / 190).toBeCloseTo(38.75, 2);
    expect(gradeOfUnbalance(2 * 10 * 190, 20, 1037.724)).toBeCloseTo(20.6, 1);
    // 20 g at 190 mm at 100 km/h on a rolling circumference of 1.927295 m.
    expect(forceOfUnbalanceN(20 * 190, (60 * 100) / 3.6 / 1.927295)).toBeCloseTo(31.163, 3);
  });

  it.each([
    [1000, 1.0966227],
    [2000, 4.3864908],
    [3000, 9.8696044],
    [4000, 17.5459634],
  ])('come with a force: 100 g·mm at %s rev/min is %s N', (rpm, force) => {
    expect(forceOfUnbalanceN(100, rpm)).toBeCloseTo(force, 7);
  });

  it('size a first trial: a tenth of 9 kg at 3000 rev/min is 89.4259 g·mm, 2.3533 g at 38 mm (derived)', () => {
    expect(trialUnbalanceGmm(9, 3000)).toBeCloseTo(89.4259, 4);
    expect(trialUnbalanceGmm(9, 3000) / 38).toBeCloseTo(2.3533, 4);
    // A 25 g clamp at 40 mm: 99 N.
    expect(forceOfUnbalanceN(1000, 3000)).toBeCloseTo(98.7, 1);
  });
});

describe('balancing with phase', () => {
  it('solves the worked single-plane cases (derived)', () => {
    const first = must(
      balanceByPhasors({
        baseline: [{ amplitude: 7, phaseDeg: 160 }],
        trials: [{ plane: 0, weight: 100, angleDeg: 0, readings: [{ amplitude: 5, phaseDeg: 70 }] }],
      }),
    );
    expect(100 * first.influence[0]![0]!.size).toBeCloseTo(8.6023253, 7);
    expect(first.influence[0]![0]!.angleDeg).toBeCloseTo(15.5377, 4);
    expect(first.corrections[0]!.size).toBeCloseTo(81.3733, 4);
    expect(first.corrections[0]!.angleDeg).toBeCloseTo(324.4623, 4);
    const shaft = must(
      balanceByPhasors({
        baseline: [{ amplitude: 0.42, phaseDeg: 65 }],
        trials: [{ plane: 0, weight: 600, angleDeg: 30, readings: [{ amplitude: 0.31, phaseDeg: 122 }] }],
      }),
    );
    expect(shaft.influence[0]![0]!.size).toBeCloseTo(6.024856e-4, 10);
    expect(shaft.influence[0]![0]!.angleDeg).toBeCloseTo(169.0108, 4);
    expect(shaft.corrections[0]!.size).toBeCloseTo(697.1121, 4);
    expect(shaft.corrections[0]!.angleDeg).toBeCloseTo(75.9892, 4);
    expect(shaft.predictedRest[0]!.amplitude).toBeLessThan(1e-12);
    expect(shaft.corrections[0]!.sizeSd).toBeNull();
  });

  it('solves MacCamhaoil, "Static and Dynamic Balancing of Rigid Rotors", example 6', () => {
    const result = must(
      balanceByPhasors({
        baseline: [
          { amplitude: 170, phaseDeg: 112 },
          { amplitude: 53, phaseDeg: 78 },
        ],
        trials: [
          {
            plane: 0,
            weight: 1.15,
            angleDeg: 0,
            readings: [
              { amplitude: 235, phaseDeg: 94 },
              { amplitude: 58, phaseDeg: 68 },
            ],
          },
          {
            plane: 1,
            weight: 1.15,
            angleDeg: 0,
            readings: [
              { amplitude: 185, phaseDeg: 115 },
              { amplitude: 77, phaseDeg: 104 },
            ],
          },
        ],
      }),
    );
    const [one, two] = result.corrections;
    expect(one!.size).toBeCloseTo(1.97947, 5);
    expect(one!.angleDeg).toBeCloseTo(236.1704, 4);
    expect(two!.size).toBeCloseTo(1.07051, 5);
    expect(two!.angleDeg).toBeCloseTo(121.8439, 4);
    // Printed: 1.979 g at 236.2°, 1.071 g at 121.8°.
    expect([one!.size.toFixed(3), one!.angleDeg.toFixed(1)]).toEqual(['1.979', '236.2']);
    expect([two!.size.toFixed(3), two!.angleDeg.toFixed(1)]).toEqual(['1.071', '121.8']);
    const influence = result.influence.flat().map((value) => [value.size, value.angleDeg]);
    const published = [
      [78.433, 58.4],
      [15.34, 145.3],
      [9.462, 10.2],
      [32.56, 142.4],
    ];
    for (const [index, [amount, angle]] of published.entries()) {
      expect(influence[index]![0]! / amount!).toBeCloseTo(1, 3);
      expect(influence[index]![1]!).toBeCloseTo(angle!, 1);
    }
  });

  const vector = (min: number, max: number) =>
    fc
      .record({ amount: fc.double({ min, max, noNaN: true }), at: fc.double({ min: 0, max: 359, noNaN: true }) })
      .map(({ amount, at }) => polar(amount, at));

  it('solves random problems of one to three planes back to their truth', () => {
    const problem = fc.integer({ min: 1, max: 3 }).chain((planes) =>
      fc.record({
        unbalance: fc.array(vector(10, 500), { minLength: planes, maxLength: planes }),
        // One place to read more than there are planes; each plane acts most on its own place.
        cross: fc.array(fc.array(vector(0.01, 0.3), { minLength: planes, maxLength: planes }), {
          minLength: planes + 1,
          maxLength: planes + 1,
        }),
        trials: fc.array(vector(20, 400), { minLength: planes, maxLength: planes }),
        leftOn: fc.boolean(),
      }),
    );
    fc.assert(
      fc.property(problem, ({ unbalance, cross, trials, leftOn }) => {
        const influence = cross.map((row, place) =>
          row.map((value, plane) => (place === plane ? add(value, polar(1, 40)) : value)),
        );
        const shown = (weights: readonly Complex[]) =>
          influence.map((row) =>
            reading(row.reduce((sum, a, plane) => add(sum, multiply(a, weights[plane]!)), { re: 0, im: 0 })),
          );
        const result = must(
          balanceByPhasors({
            baseline: shown(unbalance),
            trials: trials.map((trial, plane) => ({
              plane,
              weight: size(trial),
              angleDeg: angleDegOf(trial),
              readings: shown(unbalance.map((weight, at) => (at === plane ? add(weight, trial) : weight))),
              ...(leftOn && plane === 0 ? { leftOn } : {}),
            })),
          }),
        );
        for (const [plane, correction] of result.corrections.entries()) {
          const truth = scale(unbalance[plane]!, -1);
          const wanted = leftOn && plane === 0 ? add(truth, scale(trials[0]!, -1)) : truth;
          const off = add(polar(correction.size, correction.angleDeg), scale(wanted, -1));
          expect(size(off)).toBeLessThan(1e-6);
        }
        for (const { amplitude } of result.predictedRest) expect(amplitude).toBeLessThan(1e-6);
      }),
      { numRuns: 200 },
    );
  });

  it('carries uncertainty as scatter shows it', () => {
    const baseline = polar(0.42, 65);
    const withTrial = polar(0.31, 122);
    const sd = 0.01;
    const runs = (first: Complex, second: Complex) =>
      must(
        balanceByPhasors({
          baseline: [{ ...reading(first), amplitudeSd: sd, phaseSdDeg: 2 }],
          trials: [
            { plane: 0, weight: 600, angleDeg: 30, readings: [{ ...reading(second), amplitudeSd: sd, phaseSdDeg: 2 }] },
          ],
        }),
      ).corrections[0]!;
    const told = runs(baseline, withTrial);
    // Judge: a seeded scatter of the same readings.
    let seed = 12345;
    const uniform = () => (seed = (seed * 48271) % 2147483647) / 2147483647;
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const sizes: number[] = [];
    for (let trial = 0; trial < 4000; trial++) {
      sizes.push(
        runs(polar(0.42 + sd * normal(), 65 + 2 * normal()), polar(0.31 + sd * normal(), 122 + 2 * normal())).size,
      );
    }
    const mean = sizes.reduce((sum, value) => sum + value, 0) / sizes.length;
    const scatter = Math.sqrt(sizes.reduce((sum, value) => sum + (value - mean) ** 2, 0) / sizes.length);
    expect(told.sizeSd! / scatter).toBeGreaterThan(0.93);
    expect(told.sizeSd! / scatter).toBeLessThan(1.07);
  });

  it('warns of a trial that did little, and refuses what tells nothing', () => {
    const run = (after: number, phaseDeg: number, weight = 50) =>
      balanceByPhasors({
        baseline: [{ amplitude: 1, phaseDeg: 10 }],
        trials: [{ plane: 0, weight, angleDeg: 0, readings: [{ amplitude: after, phaseDeg }] }],
      });
    expect(must(run(1.1, 15)).notes.map(({ code }) => code)).toEqual(['weak-trial']);
    expect(must(run(1.4, 15)).notes).toEqual([]);
    expect(must(run(1.05, 45)).notes).toEqual([]);
    const unsure = (amplitudeSd: number) =>
      must(
        balanceByPhasors({
          baseline: [{ amplitude: 1, phaseDeg: 10, amplitudeSd }],
          trials: [{ plane: 0, weight: 50, angleDeg: 0, readings: [{ amplitude: 1.5, phaseDeg: 10, amplitudeSd }] }],
        }),
      ).notes.map(({ code }) => code);
    // A change of 0.5 with an uncertainty of √2 times each: three of them are 0.42 and 0.64.
    expect(unsure(0.1)).toEqual([]);
    expect(unsure(0.15)).toEqual(['weak-trial']);
    expect(run(1, 10)).toMatchObject({ ok: false, problem: { code: 'trials-tell-nothing' } });
    expect(run(1.4, 15, 0)).toMatchObject({ ok: false, problem: { code: 'weight-not-positive' } });
    expect(run(-1.4, 15)).toMatchObject({
      ok: false,
      problem: { code: 'amplitude-below-zero', key: 'trials[0].readings' },
    });
    const below = balanceByPhasors({
      baseline: [{ amplitude: -1, phaseDeg: 10 }],
      trials: [{ plane: 0, weight: 50, angleDeg: 0, readings: [{ amplitude: 1, phaseDeg: 15 }] }],
    });
    expect(below).toMatchObject({ ok: false, problem: { code: 'amplitude-below-zero', key: 'baseline' } });
    expect(run(Number.NaN, 15)).toMatchObject({ ok: false, problem: { code: 'reading-missing' } });
    expect(balanceByPhasors({ baseline: [], trials: [] })).toMatchObject({
      ok: false,
      problem: { code: 'runs-missing' },
    });
    const secondPlaneOnly = balanceByPhasors({
      baseline: [{ amplitude: 1, phaseDeg: 10 }],
      trials: [{ plane: 1, weight: 5, angleDeg: 0, readings: [{ amplitude: 2, phaseDeg: 0 }] }],
    });
    expect(secondPlaneOnly).toMatchObject({ ok: false, problem: { code: 'runs-missing' } });
    const crowd = Array.from({ length: 65 }, () => ({ amplitude: 1, phaseDeg: 10 }));
    const tooMany = balanceByPhasors({
      baseline: crowd,
      trials: [{ plane: 0, weight: 5, angleDeg: 0, readings: crowd }],
    });
    expect(tooMany).toMatchObject({ ok: false, problem: { code: 'too-many-readings' } });
    for (const plane of [-1, 0.5, 1e9]) {
      const odd = balanceByPhasors({
        baseline: [{ amplitude: 1, phaseDeg: 10 }],
        trials: [{ plane, weight: 5, angleDeg: 0, readings: [{ amplitude: 2, phaseDeg: 0 }] }],
      });
      expect(odd).toMatchObject({ ok: false, problem: { code: 'plane-not-known' } });
    }
  });
});

const fourRun = (baseline: number, weight: number, amplitudes: readonly (readonly [number, number])[], sd?: number) =>
  balanceByAmplitudes({
    baseline: { amplitude: baseline, ...(sd === undefined ? {} : { amplitudeSd: sd }) },
    trialWeight: weight,
    positions: amplitudes.map(([angleDeg, amplitude]) => ({
      angleDeg,
      amplitude,
      ...(sd === undefined ? {} : { amplitudeSd: sd }),
    })),
  });

describe('balancing without phase', () => {
  it('solves the exact case: 666.6667 at 253°, effect 0.30 at 73°, consistency 1 (derived)', () => {
    const result = must(
      fourRun(0.4, 500, [
        [0, 0.5658349663],
        [120, 0.6431792957],
        [240, 0.1270873103],
      ]),
    );
    expect(result.trialEffect).toBeCloseTo(0.3, 9);
    expect(result.trialAngleDeg).toBeCloseTo(73, 6);
    expect(result.correction.size).toBeCloseTo(666.6667, 4);
    expect(result.correction.angleDeg).toBeCloseTo(253, 5);
    expect(result.consistency).toBeCloseTo(1, 8);
    expect(result).toMatchObject({ verdict: 'clear', rival: null });
  });

  it('solves rounded readings and the second case as worked (derived)', () => {
    const rounded = must(
      fourRun(0.4, 500, [
        [0, 0.57],
        [120, 0.64],
        [240, 0.13],
      ]),
    );
    expect(rounded.trialEffect).toBeCloseTo(0.3007768, 7);
    expect(rounded.correction.size).toBeCloseTo(664.945, 3);
    expect(rounded.correction.angleDeg).toBeCloseTo(251.8251, 4);
    expect(rounded.consistency).toBeCloseTo(0.991728, 6);
    const second = must(
      fourRun(6, 10, [
        [0, 8],
        [120, 10],
        [240, 3],
      ]),
    );
    expect(second.trialEffect).toBeCloseTo(4.6547467, 7);
    expect(second.correction.size).toBeCloseTo(12.8900677, 7);
    expect(second.correction.angleDeg).toBeCloseTo(263.1264, 4);
    expect(second.consistency).toBeCloseTo(0.947406, 6);
  });

  it('takes four positions as well as three (derived)', () => {
    const result = must(
      fourRun(0.4, 500, [
        [0, 0.5658349663],
        [90, 0.692468874],
        [180, 0.4240646069],
        [270, 0.1431323114],
      ]),
    );
    expect(result.correction.size).toBeCloseTo(666.6667, 4);
    expect(result.correction.angleDeg).toBeCloseTo(253, 5);
  });

  it('solves random rotors back to their truth, from any three to six positions a third of a turn wide', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        fc.double({ min: 0.2, max: 2, noNaN: true }),
        fc.integer({ min: 0, max: 359 }),
        fc.uniqueArray(fc.integer({ min: 0, max: 17 }), { minLength: 3, maxLength: 6 }),
        (baseline, share, heavyDeg, places) => {
          // Trial effect = share of the baseline; its direction is where the shaft is heavy.
          const runs = places.map((place) => {
            const angleDeg = place * 20;
            const shown = add({ re: baseline, im: 0 }, polar(share * baseline, heavyDeg - angleDeg));
            return [angleDeg, size(shown)] as const;
          });
          const result = must(fourRun(baseline, 100, runs));
          expect(result.correction.size).toBeCloseTo(100 / share, 4);
          expect(angleBetweenDeg(result.correction.angleDeg, heavyDeg + 180)).toBeLessThan(1e-4);
          expect(result.consistency).toBeCloseTo(1, 6);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('carries the amplitudes’ uncertainty into weight and angle, as scatter shows it', () => {
    const exact = [
      [0, 0.5658349663],
      [120, 0.6431792957],
      [240, 0.1270873103],
    ] as const;
    const sd = 0.01;
    const told = must(fourRun(0.4, 500, exact, sd)).correction;
    let seed = 777;
    const uniform = () => (seed = (seed * 48271) % 2147483647) / 2147483647;
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const sizes: number[] = [];
    const angles: number[] = [];
    for (let trial = 0; trial < 3000; trial++) {
      const scattered = exact.map(([at, amplitude]) => [at, amplitude + sd * normal()] as const);
      const { correction } = must(fourRun(0.4 + sd * normal(), 500, scattered));
      sizes.push(correction.size);
      angles.push(correction.angleDeg - 253);
    }
    const spread = (values: readonly number[]) => {
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
    };
    expect(Math.abs(told.sizeSd! / spread(sizes) - 1)).toBeLessThan(0.1);
    expect(Math.abs(told.angleSdDeg! / spread(angles) - 1)).toBeLessThan(0.1);
  });

  it('tells of two answers where the positions are bunched, and names both', () => {
    const heavyDeg = 100;
    const runs = [0, 12, 24].map((at) => {
      return [at, size(add({ re: 1, im: 0 }, polar(0.6, heavyDeg - at)))] as const;
    });
    const result = must(fourRun(1, 100, runs, 0.02));
    expect(result.verdict).toBe('ambiguous');
    // The circles' centers lie at −1 towards 0°, 12° and 24°: mirrored there, an effect of about 2.08 at 175°.
    expect(result.rival!.weight).toBeCloseTo(100 / 2.08, 0);
    expect(angleBetweenDeg(result.rival!.angleDeg, 355)).toBeLessThan(3);
    expect(result.notes.map(({ code }) => code)).toContain('two-answers');
  });

  it('trusts one answer where the readings are fine enough to part the two', () => {
    const bunched = (sd: number) =>
      must(
        fourRun(
          1,
          100,
          [0, 12, 24].map((at) => [at, size(add({ re: 1, im: 0 }, polar(0.6, 100 - at)))] as const),
          sd,
        ),
      );
    // The mirrored answer misses the readings by 0.017: told apart at an uncertainty of 0.006, not at 0.012.
    expect(bunched(0.006).verdict).toBe('clear');
    expect(bunched(0.012).verdict).toBe('ambiguous');
  });

  it('says where the trial was light, and where the readings are too unsure for an angle', () => {
    const runs = (share: number, sd?: number) =>
      must(
        fourRun(
          1,
          100,
          [0, 120, 240].map((at) => [at, size(add({ re: 1, im: 0 }, polar(share, 70 - at)))] as const),
          sd,
        ),
      ).notes.map(({ code }) => code);
    expect(runs(0.2)).toEqual(['light-trial', 'no-uncertainty']);
    expect(runs(0.4)).toEqual(['no-uncertainty']);
    expect(runs(0.4, 0.01)).toEqual([]);
    expect(runs(0.4, 0.3)).toContain('unsure-angle');
  });

  it('says where some amplitudes came without an uncertainty and counted as exact', () => {
    const readings = [0.57, 0.64, 0.13].map((amplitude, k) => ({ angleDeg: 120 * k, amplitude }));
    const some = must(
      balanceByAmplitudes({ baseline: { amplitude: 0.4, amplitudeSd: 0.02 }, trialWeight: 25, positions: readings }),
    );
    expect(some.notes).toMatchObject([
      { code: 'some-without-uncertainty', text: expect.stringMatching(/^3 amplitudes came without/) },
    ]);
    const all = readings.map((reading) => ({ ...reading, amplitudeSd: 0.02 }));
    const every = { baseline: { amplitude: 0.4, amplitudeSd: 0.02 }, trialWeight: 25, positions: all };
    expect(must(balanceByAmplitudes(every)).notes).toEqual([]);
  });

  it('refuses two positions, silence, and amplitudes no rotor has', () => {
    expect(
      fourRun(1, 100, [
        [0, 1.2],
        [360, 1.2],
        [120, 0.8],
      ]),
    ).toMatchObject({
      ok: false,
      problem: {
        code: 'too-few-positions',
        message: '2 trial positions cannot tell one answer from its mirror image.',
      },
    });
    expect(
      fourRun(1, 100, [
        [90, 1.2],
        [90, 1.2],
        [450, 1.2],
      ]),
    ).toMatchObject({
      ok: false,
      problem: { message: '1 trial position cannot tell one answer from its mirror image.' },
    });
    expect(
      fourRun(0, 100, [
        [0, 1],
        [120, 1],
        [240, 1],
      ]),
    ).toMatchObject({ ok: false, problem: { code: 'nothing-to-correct' } });
    expect(
      fourRun(1, 100, [
        [0, 0.5],
        [120, 0.6],
        [240, 0.4],
      ]),
    ).toMatchObject({ ok: false, problem: { code: 'amplitudes-contradict' } });
    const many = Array.from({ length: 73 }, (_, place) => [5 * place, 1] as const);
    expect(fourRun(1, 100, many)).toMatchObject({ ok: false, problem: { code: 'too-many-positions' } });
    for (const odd of [-0.5, Number.NaN]) {
      const runs = [0, 120, 240].map((at) => [at, at === 120 ? odd : 1.2] as const);
      expect(fourRun(1, 100, runs)).toMatchObject({ ok: false, problem: { code: 'reading-missing' } });
    }
    expect(fourRun(1, -5, [[0, 0.5]])).toMatchObject({ ok: false, problem: { code: 'reading-missing' } });
  });

  it('calls runs at different speeds inconsistent', () => {
    const result = must(
      fourRun(0.4, 500, [
        [0, 0.85],
        [120, 0.8],
        [240, 0.7],
      ]),
    );
    expect(result.consistency).toBeLessThan(0.8);
    expect(result.verdict).toBe('inconsistent');
  });
});

describe('putting a correction where weights can go', () => {
  it('spreads two clamps of 60 by ±48.189685° for 80 (derived)', () => {
    const { spreadDeg, clamps } = must(splitBetweenClamps({ weight: 80, angleDeg: 10 }, 60));
    expect(spreadDeg).toBeCloseTo(48.189685, 6);
    const sum = clamps.reduce((total, clamp) => add(total, polar(clamp.weight, clamp.angleDeg)), { re: 0, im: 0 });
    expect(size(sum)).toBeCloseTo(80, 9);
    expect(angleDegOf(sum)).toBeCloseTo(10, 9);
    expect(must(splitBetweenClamps({ weight: 120, angleDeg: 0 }, 60)).spreadDeg).toBeCloseTo(0, 9);
    expect(splitBetweenClamps({ weight: 0.5, angleDeg: 0 }, 0).ok).toBe(false);
    expect(splitBetweenClamps({ weight: 0.5, angleDeg: 0 }, 0.6).ok).toBe(true);
    expect(splitBetweenClamps({ weight: -1, angleDeg: 0 }, 60).ok).toBe(false);
    expect(splitBetweenClamps({ weight: 130.123456, angleDeg: 0 }, 60)).toMatchObject({
      ok: false,
      problem: { code: 'clamps-too-light', message: 'Two clamps of 60 make at most 120, and 130.1 is wanted.' },
    });
  });

  it.each([
    [0, 2],
    [15, 1.931852],
    [30, 1.732051],
    [45, 1.414214],
    [60, 1],
    [75, 0.517638],
    [90, 0],
  ])('makes of a pair at ±%s° %s times one clamp', (spread, ratio) => {
    const { spreadDeg } = must(splitBetweenClamps({ weight: ratio, angleDeg: 0 }, 1));
    expect(spreadDeg).toBeCloseTo(spread, 4);
  });

  it('splits 80 at 100° between holes at 72° and 144° into 58.432563 and 39.490529 (derived)', () => {
    const [one, two] = must(splitBetweenHoles({ weight: 80, angleDeg: 100 }, 72, 144));
    expect(one.weight).toBeCloseTo(58.432563, 6);
    expect(two.weight).toBeCloseTo(39.490529, 6);
    const [swappedTwo, swappedOne] = must(splitBetweenHoles({ weight: 80, angleDeg: 100 }, 144, 72));
    expect([swappedOne.weight, swappedTwo.weight]).toEqual([
      expect.closeTo(one.weight, 9),
      expect.closeTo(two.weight, 9),
    ]);
  });

  it('splits over the zero mark and at a hole, and refuses a target outside', () => {
    const [one, two] = must(splitBetweenHoles({ weight: 10, angleDeg: 355 }, 340, 20));
    const sum = add(polar(one.weight, 340), polar(two.weight, 20));
    expect(size(sum)).toBeCloseTo(10, 9);
    expect(angleBetweenDeg(angleDegOf(sum), 355)).toBeLessThan(1e-9);
    expect(must(splitBetweenHoles({ weight: 10, angleDeg: 20 }, 340, 20))[0].weight).toBeCloseTo(0, 9);
    for (const [one, two] of [
      [10, 80],
      [0, 180],
      [5, 5],
      [60, 240.5],
    ] as const) {
      expect(splitBetweenHoles({ weight: 10, angleDeg: 200 }, one, two)).toMatchObject({
        ok: false,
        problem: { code: 'target-not-between-holes' },
      });
    }
  });

  it('finds the best of the weights at hand, as trying all of them does', () => {
    const target = { weight: 47, angleDeg: 130 };
    const sites = [0, 60, 120, 180, 240, 300];
    const weights = [10, 20, 35];
    const best = must(placeAvailable(target, sites, weights, 0));
    let least = Infinity;
    for (let code = 0; code < 4 ** 6; code++) {
      let rest = polar(target.weight, target.angleDeg);
      for (const [site, at] of sites.entries()) {
        const kind = Math.floor(code / 4 ** site) % 4;
        if (kind > 0) rest = add(rest, polar(-weights[kind - 1]!, at));
      }
      least = Math.min(least, size(rest));
    }
    expect(best.left).toBeCloseTo(least, 9);
    const placed = best.placed.reduce((sum, one) => add(sum, polar(one.weight, one.angleDeg)), { re: 0, im: 0 });
    const rest = add(polar(target.weight, target.angleDeg), scale(placed, -1));
    expect(size(rest)).toBeCloseTo(best.left, 9);
    expect(angleBetweenDeg(angleDegOf(rest), best.leftAngleDeg)).toBeLessThan(1e-6);
    // Two weights come within a twentieth of the target of the best, so two are proposed.
    const few = must(placeAvailable(target, sites, weights));
    expect(few.placed.length).toBeLessThan(best.placed.length);
    expect(few.left - best.left).toBeLessThan(0.05 * 47 * (best.placed.length - few.placed.length) + 1e-9);
    expect(placeAvailable(target, sites.concat(sites, sites), weights)).toMatchObject({ ok: false });
    expect(must(placeAvailable({ weight: 1, angleDeg: 0 }, [0, 90], [30])).placed).toEqual([]);
  });
});
