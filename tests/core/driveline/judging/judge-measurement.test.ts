import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../../../src/core/cautions.ts';
import { benchSpeeds, judgeAt } from '../../../../src/core/driveline/judging/judge-measurement.ts';
import type { BenchVerdict } from '../../../../src/core/driveline/judging/judged-measurement.ts';
import { worstOf } from '../../../../src/core/driveline/judging/judged-measurement.ts';
import { allLimits, judge, limitOf } from '../../../../src/core/driveline/limits/limit.ts';
import type { Measurement } from '../../../../src/core/driveline/measurement.ts';
import { procedureOf, PROCEDURES } from '../../../../src/core/driveline/procedures.ts';
import type { ProcedureId } from '../../../../src/core/driveline/procedures.ts';
import type { Vehicle } from '../../../../src/core/vehicle/vehicle.ts';
import { must } from '../../../support/must.ts';

const vehicle: Vehicle = {
  layout: 'rear-drive',
  tire: { kind: 'rolling-circumference', circumferenceM: 2 },
  axleRatio: 4,
  driveshaftPieces: [{ massKg: 9 }],
};
const at3000 = { driveshaftRpm: 3000, wheelRpm: 750, limits: {} };
const angles = (frontDeg: number, rearDeg: number, more: object = {}): Measurement => ({
  kind: 'working-angles',
  shafts: [
    { part: 'transmission', slopeDeg: 3 },
    { part: 'shaft', slopeDeg: 3 + frontDeg },
    { part: 'pinion', slopeDeg: 3 + frontDeg - rearDeg },
  ],
  ...more,
});
const rings = (ring1Mm: number, ring2Mm: number): Measurement => ({
  kind: 'rings',
  joint: 'rear',
  axes: [{ grooveSpanMm: 81.85, crossAndCupsMm: 78.6, ring1Mm, ring2Mm }],
});
const trials = (first: number, second: number, third: number): Measurement => ({
  kind: 'balance-amplitudes',
  part: 'driveshaft',
  weightUnit: 'g·mm',
  baseline: { amplitude: 0.4 },
  trialWeight: 500,
  positions: [first, second, third].map((amplitude, place) => ({ amplitude, angleDeg: 120 * place })),
});
const phasors = (phaseDeg: number): Measurement => ({
  kind: 'balance-phasors',
  part: 'driveshaft',
  weightUnit: 'g·mm',
  baseline: [{ amplitude: 0.42, phaseDeg: 65 }],
  trials: [{ plane: 0, weight: 600, angleDeg: 30, readings: [{ amplitude: 0.44, phaseDeg }] }],
});

describe('any measurement', () => {
  const table: readonly (readonly [string, Measurement, BenchVerdict])[] = [
    ['equal angles', angles(4, 4), 'inside'],
    ['unequal angles', angles(6, 2), 'outside'],
    ['angles with hanging suspension', angles(6, 2, { atRideHeight: false }), 'cannot-tell'],
    ['equal half-angles', { kind: 'double-cardan', joint: 'front', halfAnglesDeg: [10, 9.8] }, 'inside'],
    ['unequal half-angles', { kind: 'double-cardan', joint: 'front', halfAnglesDeg: [9, 11] }, 'outside'],
    ['ride height as specified', { kind: 'ride-height', axle: 'rear', measuredMm: 495, specifiedMm: 500 }, 'inside'],
    ['ride height too low', { kind: 'ride-height', axle: 'rear', measuredMm: 470, specifiedMm: 500 }, 'outside'],
    ['little end play', { kind: 'end-play', joint: 'rear', axisPlayMm: [0.02, 0.05] }, 'inside'],
    ['much end play', { kind: 'end-play', joint: 'rear', axisPlayMm: [0.02, 0.06] }, 'outside'],
    ['equal rings', rings(1.6, 1.6), 'inside'],
    ['unequal rings', rings(1.55, 1.65), 'outside'],
    ['tight rings', rings(1.65, 1.65), 'outside'],
    ['rings that leave nothing', rings(1.625, 1.625), 'outside'],
    ['a snug slip yoke', { kind: 'radial-play', place: 'slip-yoke', playMm: 0.1 }, 'inside'],
    ['a loose slip yoke', { kind: 'radial-play', place: 'slip-yoke', playMm: 0.3 }, 'outside'],
    ['a loose center bearing', { kind: 'radial-play', place: 'center-bearing', playMm: 0.15 }, 'outside'],
    ['a straight tube', { kind: 'runout', place: 'tube-middle', tirMm: 0.5 }, 'inside'],
    ['a bowed tube', { kind: 'runout', place: 'tube-middle', tirMm: 0.6 }, 'outside'],
    ['a tube end, by its own limit', { kind: 'runout', place: 'tube-rear', tirMm: 0.5 }, 'outside'],
    ['a flange', { kind: 'runout', place: 'companion-flange-face', tirMm: 0.2 }, 'outside'],
    ['a steel wheel', { kind: 'runout', place: 'wheel-radial', tirMm: 0.7 }, 'inside'],
    ['an alloy wheel', { kind: 'runout', place: 'wheel-radial', tirMm: 0.7, wheelMaterial: 'alloy' }, 'outside'],
    ['a tire', { kind: 'runout', place: 'tire-lateral', tirMm: 1.2 }, 'inside'],
    ['trials that fit', trials(0.5658349663, 0.6431792957, 0.1270873103), 'outside'],
    ['trials that do not fit', trials(0.85, 0.8, 0.7), 'cannot-tell'],
    ['a strong trial with phase', phasors(122), 'outside'],
    ['a weak trial with phase', phasors(70), 'cannot-tell'],
    ['a balanced wheel', { kind: 'wheel-unbalance', innerG: 5, outerG: 10, radiusMm: 190 }, 'inside'],
    ['an unbalanced wheel', { kind: 'wheel-unbalance', innerG: 5, outerG: 25, radiusMm: 190 }, 'outside'],
    ['a good observation', { kind: 'observation', checkId: 'ear-alignment', outcome: 'fine' }, 'inside'],
    ['a bad observation', { kind: 'observation', checkId: 'ear-alignment', outcome: 'wrong' }, 'outside'],
  ];

  it.each(table)('is judged: %s', (_, measurement, verdict) => {
    const judged = must(judgeAt(measurement, vehicle, at3000));
    expect(judged.verdict).toBe(verdict);
    expect(judged.kind).toBe(measurement.kind);
    for (const { limit } of [...judged.judged, ...judged.advisory]) expect(limit.source).not.toBe('');
    if (verdict === 'outside' && judged.judged.length > 0 && judged.notes.length === 0) {
      expect(worstOf(judged.judged)!.share).toBeGreaterThan(1);
    }
  });

  it('says of rings whether they press the joint together or only leave it no play', () => {
    const codes = (ringMm: number) =>
      must(judgeAt(rings(ringMm, ringMm), vehicle, at3000)).notes.map(({ code }) => code);
    expect([1.65, 1.625, 1.61].map(codes)).toEqual([
      ['joint-tight', 'ring-remedy'],
      ['no-end-play', 'ring-remedy'],
      [],
    ]);
  });

  it.each([
    ['twisted forks', angles(4, 4, { phasingDeg: [90] })],
    ['rings that leave nothing', rings(1.625, 1.625)],
    ['loose rings', rings(1.5, 1.6)],
  ])('is held only to limits its form shows, so that each can be replaced: %s', (_, measurement) => {
    const { judged, procedure } = must(judgeAt(measurement, vehicle, at3000));
    expect(procedureOf(procedure!).limits).toEqual(expect.arrayContaining(judged.map(({ limit }) => limit.id)));
  });

  it('is judged by how much re-indexing changes the level', () => {
    const reindex = (amplitudes: readonly number[]): Measurement => ({
      kind: 'flange-reindex',
      boltCount: 4,
      levels: amplitudes.map((amplitudeMps2, steps) => ({ steps, amplitudeMps2 })),
    });
    const changed = must(judgeAt(reindex([0.3, 0.2, 0.05]), vehicle, at3000));
    expect(changed.verdict).toBe('outside');
    expect(changed.notes[0]!.text).toContain('shaft and flange add up');
    expect(must(judgeAt(reindex([0.3, 0.28]), vehicle, at3000)).verdict).toBe('inside');
  });

  it('predicts the once-a-turn force of a ring mismatch, 14.8044 and 7.4022 N for 0.05 mm on 9 kg (derived)', () => {
    const { predicted, advisory } = must(judgeAt(rings(1.55, 1.65), vehicle, at3000));
    // 150 of 229.183 g·mm in the near plane.
    expect(advisory[0]).toMatchObject({ limit: { id: 'unbalance-share', value: 1 }, inside: true });
    expect(advisory[0]!.measured).toBeCloseTo(0.6545, 4);
    expect(predicted.map(({ part, order, unit, value }) => [part, order, unit, Number(value.toFixed(4))])).toEqual([
      ['driveshaft', 1, 'N', 14.8044],
      ['driveshaft', 1, 'N', 7.4022],
    ]);
    expect(must(judgeAt(rings(1.55, 1.65), { layout: 'rear-drive' }, at3000)).predicted).toEqual([]);
    expect(must(judgeAt(rings(1.55, 1.65), vehicle, { ...at3000, driveshaftRpm: null })).predicted).toEqual([]);
  });

  it('predicts 141.372 N of 0.5 mm of bow on 9 kg, and a stiffness force of a tire out of round (derived)', () => {
    const bow = must(judgeAt({ kind: 'runout', place: 'tube-middle', tirMm: 0.5 }, vehicle, at3000)).predicted[0]!;
    expect(bow.value).toBeCloseTo(141.372, 3);
    const tire = must(judgeAt({ kind: 'runout', place: 'tire-radial', tirMm: 1 }, vehicle, at3000)).predicted[0]!;
    expect(tire).toMatchObject({ part: 'tire', order: 1, unit: 'N', value: 100 });
  });

  it('predicts the residual acceleration of unequal angles at 2× of the shaft', () => {
    const { predicted } = must(judgeAt(angles(4, 3.5), vehicle, at3000));
    expect(predicted[0]).toMatchObject({ order: 2, unit: 'rad/s²', value: expect.closeTo(112.904, 3) });
  });

  it('holds clock readings to the limit by what goes once round, and tells ovality from it', () => {
    const readingsMm = Array.from({ length: 8 }, (_, step) => 0.3 * Math.cos((Math.PI * step) / 2));
    const judged = must(judgeAt({ kind: 'runout', place: 'tube-middle', readingsMm }, vehicle, at3000));
    expect(judged.judged[0]!.measured).toBeCloseTo(0, 9);
    expect(judged.verdict).toBe('inside');
    expect(judged.notes.map(({ code }) => code)).toEqual(['oval']);
    expect(judged.predicted[0]!.value).toBeCloseTo(0, 9);
    expect(judgeAt({ kind: 'runout', place: 'tube-middle' }, vehicle, at3000)).toMatchObject({
      ok: false,
      problem: { code: 'runout-missing' },
    });
  });

  it('takes its speed from the vehicle and the run: 30 m/s on 2 m and 4:1 is 3600 rev/min', () => {
    const run = { speedMps: 30, speedSource: 'gps' } as const;
    expect(must(benchSpeeds(vehicle, run))).toEqual({ wheelRpm: 900, driveshaftRpm: 3600 });
    const four: Vehicle = { ...vehicle, layout: 'four-wheel-drive', frontAxleRatio: 3.5 };
    expect(must(benchSpeeds(four, run, 'front-driveshaft')).driveshaftRpm).toBe(3150);
    expect(must(benchSpeeds({ layout: 'rear-drive' }, run))).toEqual({ wheelRpm: null, driveshaftRpm: null });
    const judged = must(judgeAt(rings(1.55, 1.65), vehicle, { ...must(benchSpeeds(vehicle, run)), limits: {} }));
    expect(judged.predicted[0]!.value).toBeCloseTo(14.8044 * 1.44, 3);
    const noTire: Vehicle = { ...vehicle, tire: { kind: 'size', size: 'round' } };
    expect(benchSpeeds(noTire, run).ok).toBe(false);
  });

  it('obeys the maker’s figure in place of any default', () => {
    const limits = { 'end-play': { value: 0.15 }, 'ring-difference': { value: 0.12 } };
    expect(must(judgeAt(rings(1.55, 1.65), vehicle, { ...at3000, limits })).verdict).toBe('inside');
  });
});

describe('limits', () => {
  it('each have a title, a figure, a unit and a source; those without one say so', () => {
    for (const limit of allLimits()) {
      expect(limit.title).not.toBe('');
      expect(limit.value).toBeGreaterThan(0);
      if (limit.status === 'common-practice') expect(limit.source).toMatch(/^common practice, no source/);
      if (limit.status === 'judgment') expect(limit.source).toContain('no source');
      if (limit.status === 'standard') expect(limit.source).toContain('ISO 21940-11:2016');
    }
  });

  // Common practice, no citable source known; the figures shipped as defaults.
  it.each([
    ['residual-acceleration', 400],
    ['inertia-drive', 1000],
    ['inertia-coast', 1000],
    ['joint-angle-least', 0.5],
    ['joint-angle-most', 3],
    ['joint-angle-difference', 1],
    ['end-play', 0.05],
    ['ring-difference', 0.05],
    ['tube-runout-middle', 0.5],
    ['tube-runout-ends', 0.4],
    ['flange-runout', 0.13],
    ['wheel-runout-steel', 0.8],
    ['wheel-runout-alloy', 0.5],
    ['tire-runout', 1.3],
    ['driveshaft-grade', 16],
    ['wheel-grade', 40],
    ['unbalance-share', 1],
    ['wheel-unbalance', 10],
    ['whirl-share', 0.75],
  ] as const)('hold %s to %s', (id, value) => {
    expect(limitOf(id).value).toBe(value);
  });

  it('hold an at-least from below and an at-most from above, the limit itself inside', () => {
    expect(judge(0.5, limitOf('joint-angle-least')).inside).toBe(true);
    expect(judge(0.4, limitOf('joint-angle-least'))).toMatchObject({ inside: false, share: 1.25 });
    expect(judge(0.1 + 0.4, limitOf('tube-runout-middle')).inside).toBe(true);
    expect(judge(0.6, limitOf('tube-runout-middle'))).toMatchObject({ inside: false, share: 1.2 });
  });
});

describe('procedures', () => {
  it('each tell how to measure and what can hurt, and name limits that exist', () => {
    for (const id of Object.keys(PROCEDURES) as ProcedureId[]) {
      const { title, how, limits, cautions } = procedureOf(id);
      expect(title).not.toBe('');
      expect(how.length).toBeGreaterThan(0);
      expect(cautions.length).toBeGreaterThan(0);
      for (const limit of limits) expect(limitOf(limit).id).toBe(limit);
      for (const caution of cautions) expect(CAUTIONS[caution]).toBeDefined();
    }
  });

  it('say that angles count only at ride height, and warn of trial weights', () => {
    expect(procedureOf('working-angles').cautions).toContain('ride-height');
    expect(procedureOf('balance-with-phase').cautions).toContain('trial-weight');
    expect(procedureOf('balance-without-phase').cautions).toContain('trial-weight');
  });
});
