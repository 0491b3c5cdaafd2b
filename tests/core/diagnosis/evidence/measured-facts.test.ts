import { describe, expect, test } from 'vitest';
import type { Measurement, ShaftPlace } from '../../../../src/core/driveline/measurement.ts';
import type { FindingBasis } from '../../../../src/core/diagnosis/evidence/case.ts';
import { checksDone } from '../../../../src/core/diagnosis/ranking/checks-done.ts';
import { chooseChecks } from '../../../../src/core/diagnosis/ranking/next-check.ts';
import { factsOf } from '../../../../src/core/diagnosis/evidence/measured-facts.ts';
import { chanceEnough, wrongnessOf } from '../../../../src/core/diagnosis/evidence/measured-fact.ts';
import { rankCauses } from '../../../../src/core/diagnosis/ranking/rank-causes.ts';
import type { Vehicle } from '../../../../src/core/vehicle/vehicle.ts';
import { caseOf, finding, found, probabilityOf, ranked } from '../causes/case-fixtures.ts';

// The shaft of the worked centring example: 9 kg, 3000 rpm (50 Hz once a turn).
const vehicle: Vehicle = { layout: 'rear-drive', driveshaftPieces: [{ lengthMm: 1500, massKg: 9 }] };
const once = (more: Partial<FindingBasis> = {}) =>
  finding('driveshaft', 1, { frequencyHz: 50, amplitudeMps2: 0.05, ...more });
const twice = finding('driveshaft', 2, { frequencyHz: 100 });
const wheel = finding('tire', 1, { frequencyHz: 14, amplitudeMps2: 0.1 });

const shift = (
  basis: FindingBasis,
  measurement: Measurement,
  id: string,
): { before: number; after: number; text: string } => {
  const causes = rankCauses(basis, caseOf({ vehicle, measurements: [measurement] }));
  const cause = causes.find((one) => one.id === id)!;
  return {
    before: cause.probabilityBefore!,
    after: cause.probability,
    text: [...cause.for, ...cause.against].join(' '),
  };
};

const rings = (ring1Mm: number, ring2Mm: number, grooveSpanMm = 81.85): Measurement => {
  const axis = { grooveSpanMm, crossAndCupsMm: 78.6, ring1Mm, ring2Mm };
  const middle = (ring1Mm + ring2Mm) / 2;
  return { kind: 'rings', joint: 'front', axes: [axis, { ...axis, ring1Mm: middle, ring2Mm: middle }] };
};
const tube = (tirMm: number): Measurement => ({ kind: 'runout', place: 'tube-middle', tirMm });
const slopes = (transmission: number, shaft: number, pinion: number, more: object = {}): Measurement => ({
  kind: 'working-angles',
  shafts: [
    { part: 'transmission', slopeDeg: transmission },
    { part: 'shaft', slopeDeg: shaft },
    { part: 'pinion', slopeDeg: pinion },
  ],
  ...more,
});

// Inside or outside by the bench's own limits (common practice); each row one kind of measurement.
/** Levels at three places of a trial weight, of a shaft that has 0.40 without. */
const clamps = (...amplitudes: readonly number[]): Measurement => ({
  kind: 'balance-amplitudes',
  part: 'driveshaft',
  baseline: { amplitude: 0.4 },
  trialWeight: 500,
  weightUnit: 'g·mm',
  positions: amplitudes.map((amplitude, i) => ({ angleDeg: 120 * i, amplitude })),
});

/** The shaft turned by half a turn on its flange, which leaves so much of 0.1 m/s². */
const turnedHalf = (amplitudeMps2: number): Measurement => ({
  kind: 'flange-reindex',
  boltCount: 4,
  levels: [
    { steps: 0, amplitudeMps2: 0.1 },
    { steps: 2, amplitudeMps2 },
  ],
});

const TABLE: readonly { name: string; basis: FindingBasis; outside: Measurement; inside: Measurement; id: string }[] = [
  { name: 'retaining rings', basis: once(), outside: rings(1.5, 1.7), inside: rings(1.6, 1.6), id: 'joint-off-center' },
  {
    name: 'rings that leave no end play',
    basis: twice,
    outside: rings(1.65, 1.65, 81.85),
    inside: rings(1.6, 1.6, 81.84),
    id: 'ring-too-tight',
  },
  {
    name: 'end play',
    basis: once(),
    outside: { kind: 'end-play', joint: 'front', axisPlayMm: [0.15, 0.02] },
    inside: { kind: 'end-play', joint: 'front', axisPlayMm: [0.01, 0.01] },
    id: 'joint-loose',
  },
  { name: 'tube runout', basis: once(), outside: tube(1.2), inside: tube(0.02), id: 'tube-runout' },
  {
    name: 'flange runout',
    basis: once(),
    outside: { kind: 'runout', place: 'companion-flange-radial', tirMm: 0.4 },
    inside: { kind: 'runout', place: 'companion-flange-radial', tirMm: 0.02 },
    id: 'companion-flange-runout',
  },
  {
    name: 'flange runout around the clock',
    basis: once(),
    outside: {
      kind: 'runout',
      place: 'companion-flange-radial',
      readingsMm: [0.2, 0.14, 0, -0.14, -0.2, -0.14, 0, 0.14],
    },
    inside: { kind: 'runout', place: 'companion-flange-radial', readingsMm: [0.01, 0, -0.01, 0, 0.01, 0, -0.01, 0] },
    id: 'companion-flange-runout',
  },
  {
    name: 'slip yoke play',
    basis: once(),
    outside: { kind: 'radial-play', place: 'slip-yoke', playMm: 0.5 },
    inside: { kind: 'radial-play', place: 'slip-yoke', playMm: 0.05 },
    id: 'slip-yoke-worn',
  },
  { name: 'working angles', basis: twice, outside: slopes(2, 8, 5), inside: slopes(3, 5, 3), id: 'angles-from-mount' },
  {
    name: 'fork phase',
    basis: twice,
    outside: slopes(3, 5, 3, { phasingDeg: [12] }),
    inside: slopes(3, 5, 3, { phasingDeg: [0] }),
    id: 'forks-out-of-phase',
  },
  {
    name: 'double-Cardan halves',
    basis: twice,
    outside: { kind: 'double-cardan', joint: 'front', halfAnglesDeg: [10.8, 9.2] },
    inside: { kind: 'double-cardan', joint: 'front', halfAnglesDeg: [10, 10.05] },
    id: 'double-cardan-centering',
  },
  {
    name: 'ride height',
    basis: twice,
    outside: { kind: 'ride-height', axle: 'rear', measuredMm: 470, specifiedMm: 420 },
    inside: { kind: 'ride-height', axle: 'rear', measuredMm: 421, specifiedMm: 420 },
    id: 'angles-from-ride-height',
  },
  {
    name: 'turning the shaft on its flange',
    basis: once(),
    outside: turnedHalf(0.03),
    inside: turnedHalf(0.098),
    id: 'shaft-not-indexed',
  },
  // Amplitudes of the four-run example (A0 0.40, T 0.30 at 73°), and readings no rotor gives.
  {
    name: 'trial clamps',
    basis: once(),
    outside: clamps(0.5658, 0.6432, 0.1271),
    inside: clamps(0.7, 0.69, 0.71),
    id: 'shaft-unbalance',
  },
  {
    name: 'wheel balance',
    basis: wheel,
    outside: { kind: 'wheel-unbalance', innerG: 60, outerG: 35, radiusMm: 190 },
    inside: { kind: 'wheel-unbalance', innerG: 0, outerG: 2, radiusMm: 190 },
    id: 'tire-unbalance',
  },
  {
    name: 'tire runout',
    basis: wheel,
    outside: { kind: 'runout', place: 'tire-radial', tirMm: 3 },
    inside: { kind: 'runout', place: 'tire-radial', tirMm: 0.1 },
    id: 'tire-runout',
  },
  {
    name: 'rim runout',
    basis: wheel,
    outside: { kind: 'runout', place: 'wheel-radial', tirMm: 2, wheelMaterial: 'alloy' },
    inside: { kind: 'runout', place: 'wheel-radial', tirMm: 0.05 },
    id: 'bent-wheel',
  },
];

test.each(TABLE)('Outside its limit, $name speaks for $id; inside, against it', ({ basis, outside, inside, id }) => {
  const bad = shift(basis, outside, id);
  expect(bad.after).toBeGreaterThan(bad.before * 1.3);
  const good = shift(basis, inside, id);
  expect(good.after).toBeLessThan(good.before * 0.95);
});

describe('How much a reading says depends on what it would do at the level seen', () => {
  // Worked by hand: 0.10 mm between the rings puts the cross 0.05 mm off; a third of 9 kg at 0.05 mm is 150 g·mm in
  // the joint's plane, 14.8 N at 3000 rpm. On a seeming mass of 300 kg that is 0.049 m/s².
  const unequal = rings(1.55, 1.65);

  test('A force that would do for the level speaks louder than one far too small', () => {
    const fits = shift(once({ amplitudeMps2: 0.049 }), unequal, 'joint-off-center');
    const tooSmall = shift(once({ amplitudeMps2: 2 }), unequal, 'joint-off-center');
    expect(fits.text).toContain('about 15 N, enough for the level seen');
    expect(tooSmall.text).not.toContain('enough for the level seen');
    expect(fits.after / fits.before).toBeGreaterThan(2);
    expect(tooSmall.after / tooSmall.before).toBeLessThan(1.2);
    expect(tooSmall.after / tooSmall.before).toBeGreaterThanOrEqual(1);
  });

  test('Chance that a force does: a half at force over mass, 84 in 100 at three times that, 16 at a third', () => {
    expect(chanceEnough(15, 15 / 300)).toBeCloseTo(0.5, 12);
    expect(chanceEnough(45, 15 / 300)).toBeCloseTo(0.8413, 3);
    expect(chanceEnough(5, 15 / 300)).toBeCloseTo(0.1587, 3);
  });

  test('At the limit a reading says nothing; belief grows with the distance from it', () => {
    const fact = (share: number) => ({
      checkId: 'tube-runout' as const,
      share,
      text: '',
      isFault: true,
      forceN: null,
      coverage: 1,
    });
    expect(wrongnessOf(fact(1), once())).toBeCloseTo(0.5, 12);
    const beliefs = [0, 0.3, 0.8, 1.2, 1.5, 3].map((share) => wrongnessOf(fact(share), once()));
    expect(beliefs).toEqual([...beliefs].sort((a, b) => a - b));
    expect(beliefs[0]).toBeCloseTo(0.05, 9);
    expect(beliefs[5]).toBeCloseTo(0.95, 9);
  });

  test('A mass nobody gave means no force is held against the reading', () => {
    const context = caseOf({ measurements: [unequal] });
    const cause = rankCauses(once({ amplitudeMps2: 2 }), context).find(({ id }) => id === 'joint-off-center')!;
    expect(cause.probability).toBeGreaterThan(1.5 * cause.probabilityBefore!);
  });
});

describe('What was only half done', () => {
  const station = (place: 'tube-front' | 'tube-middle' | 'tube-rear'): Measurement => ({
    kind: 'runout',
    place,
    tirMm: 0.02,
  });
  const after = (...measurements: Measurement[]) =>
    probabilityOf(rankCauses(once(), caseOf({ vehicle, measurements })), 'tube-runout');

  test('Three good stations clear a tube better than one, and one bad one convicts it', () => {
    const one = after(station('tube-middle'));
    const three = after(station('tube-front'), station('tube-middle'), station('tube-rear'));
    expect(three).toBeLessThan(one);
    expect(after(station('tube-front'), tube(1.2))).toBeGreaterThan(0.4);
  });

  test('A check of which most is still to do is proposed again', () => {
    const ids = (measurements: Measurement[]) => {
      const context = caseOf({ vehicle, measurements });
      return chooseChecks([ranked(once(), rankCauses(once(), context))], context).map(({ id }) => id);
    };
    expect(ids([station('tube-middle')])).toContain('tube-runout');
    expect(ids([station('tube-front'), station('tube-middle')])).not.toContain('tube-runout');
  });

  test('Angles read with the suspension hanging say nothing of the angles', () => {
    const hanging = shift(twice, slopes(2, 8, 5, { atRideHeight: false }), 'angles-from-mount');
    expect(hanging.after).toBeCloseTo(hanging.before, 12);
  });

  test('Angles of the front driveshaft say nothing of the rear one', () => {
    const front = shift(twice, slopes(2, 8, 5, { driveshaft: 'front-driveshaft' }), 'angles-from-mount');
    expect(front.after).toBeCloseTo(front.before, 12);
  });

  test('Each driveshaft is told of by its own readings alone', () => {
    const tubeOf = (driveshaft: ShaftPlace): Measurement => ({
      kind: 'runout',
      place: 'tube-middle',
      tirMm: 1.2,
      driveshaft,
    });
    const frontOnce = once({ name: 'front driveshaft' });
    const own = shift(frontOnce, tubeOf('front-driveshaft'), 'tube-runout');
    const others = shift(frontOnce, tubeOf('rear-driveshaft'), 'tube-runout');
    expect(own.after).toBeGreaterThan(own.before + 0.1);
    expect(others.after).toBeCloseTo(others.before, 12);
    expect(shift(once(), tubeOf('rear-driveshaft'), 'tube-runout').after).toBeGreaterThan(own.before + 0.1);
  });

  test('Readings that are no readings are left out rather than guessed', () => {
    const broken: Measurement[] = [
      { kind: 'runout', place: 'tube-middle' },
      { kind: 'flange-reindex', boltCount: 4, levels: [] },
      { kind: 'rings', joint: 'front', axes: [] },
      { kind: 'end-play', joint: 'rear', axisPlayMm: [Number.NaN, 0] },
      { kind: 'working-angles', shafts: [] },
      { kind: 'balance-phasors', part: 'driveshaft', weightUnit: 'g', baseline: [], trials: [] },
    ];
    for (const { probability, probabilityBefore } of rankCauses(once(), caseOf({ vehicle, measurements: broken }))) {
      expect(probability).toBeCloseTo(probabilityBefore!, 12);
    }
  });
});

test('A comeback told by its measurements ends at the angles', () => {
  // Lifted truck: true flange, unequal angles. 3.5° down, 9° down, 6.2° down: 5.5° in front, 2.8° behind.
  const lifted = caseOf({
    work: ['ride-height-changed', 'wheels-balanced'],
    measurements: [slopes(3.5, 9, 6.2), { kind: 'runout', place: 'companion-flange-radial', tirMm: 0.05 }],
  });
  const causes = rankCauses(finding('driveshaft', 2, { frequencyHz: 2 * 42 }), lifted);
  expect(causes[0]!.id).toBe('angles-from-ride-height');
  expect(causes[0]!.probability).toBeGreaterThan(causes[0]!.probabilityBefore!);
  expect(causes[0]!.for.join(' ')).toContain('two joint angles of a shaft: 2.7°, outside the limit of 1°');
});

describe('Equal angles with the forks a quarter turn out', () => {
  const twisted = slopes(3, 6, 3, { phasingDeg: [90] });

  test('Make the forks the first cause, and speak against unequal angles', () => {
    const causes = rankCauses(twice, caseOf({ vehicle, measurements: [twisted] }));
    expect(causes[0]!.id).toBe('forks-out-of-phase');
    expect(causes[0]!.probability).toBeGreaterThan(1.5 * causes[1]!.probability);
    const inLine = shift(twice, slopes(3, 6, 3), 'angles-from-mount');
    const mount = shift(twice, twisted, 'angles-from-mount');
    expect(mount.after).toBeLessThan(inLine.after);
    expect(mount.text).toContain('With the forks in line: ');
  });

  test('Are told once, by the limit in force', () => {
    const facts = (limits = {}) =>
      factsOf(twisted, vehicle, { driveshaftRpm: 3000, wheelRpm: null, once: false }, limits);
    const forks = facts().filter(({ checkId }) => checkId === 'phasing-marks');
    expect(forks.map(({ text }) => text)).toEqual([
      'Forks of shaft piece 1 out of line: 90°, outside the limit of 3° (common practice, no source)',
    ]);
    expect(facts({ 'fork-twist': { value: 100 } }).find(({ checkId }) => checkId === 'phasing-marks')!.share).toBe(0.9);
    expect(new Set(facts().map(({ checkId }) => checkId)).size).toBe(facts().length);
  });

  test('Are not held against forks that would leave more in line', () => {
    // Joint planes a quarter turn apart: the maker turns the forks with them (Fischer & Paul).
    const setSo: Measurement = {
      kind: 'working-angles',
      shafts: [
        { part: 'transmission', slopeDeg: 3 },
        { part: 'shaft', slopeDeg: 7 },
        { part: 'pinion', slopeDeg: 7, planDeg: 4 },
      ],
      phasingDeg: [90],
    };
    const { before, after } = shift(twice, setSo, 'forks-out-of-phase');
    const others = shift(twice, setSo, 'trunnions-worn');
    expect(after / before).toBeCloseTo(others.after / others.before, 9);
    expect(shift(twice, setSo, 'angles-from-mount').after).toBeLessThan(before + 0.2);
  });
});

describe('Angles that are equal and angles that are small are two things', () => {
  test('Equal 9° and 9° clear the causes of unequal angles and accuse the couple of large ones', () => {
    const large = slopes(1, 10, 1);
    const causes = rankCauses(twice, caseOf({ vehicle, measurements: [large] }));
    expect(causes[0]!.id).toBe('secondary-couple');
    const mount = shift(twice, large, 'angles-from-mount');
    expect(mount.after).toBeLessThan(mount.before / 3);
    expect(mount.text).toContain('inside the limit of');
    expect(shift(twice, large, 'secondary-couple').text).toContain(', at road speed: 9°, outside the limit of 3°');
  });

  test('Small and unequal angles, 2.5° and 0.5°, speak for unequal ones and against large ones', () => {
    const unequal = slopes(3, 5.5, 5);
    const mount = shift(twice, unequal, 'angles-from-mount');
    expect(mount.after).toBeGreaterThan(1.3 * mount.before);
    const couple = shift(twice, unequal, 'secondary-couple');
    expect(couple.after).toBeLessThan(couple.before);
    // What supports the couple is the size of an angle, never the difference of two.
    expect(shift(twice, slopes(3.5, 9, 6.2), 'secondary-couple').text).not.toContain('Difference');
  });

  test('Shudder on moving off is told more by large angles than by unequal ones', () => {
    // Whether the shaft is in two pieces is not known: only of such a one does it shudder.
    const raised = (measurement: Measurement): number => {
      const causes = rankCauses(finding('driveshaft', 2, { frequencyHz: 12 }), caseOf({ measurements: [measurement] }));
      const { probability, probabilityBefore } = causes.find(({ id }) => id === 'launch-shudder')!;
      return probability / probabilityBefore!;
    };
    expect(raised(slopes(1, 10, 1))).toBeGreaterThan(1.5 * raised(slopes(3, 5.5, 5)));
  });

  test('One measurement answers both checks', () => {
    const ids = (measurements: Measurement[]) => [...checksDone(caseOf({ vehicle, measurements }))];
    expect(ids([slopes(3, 5, 3)])).toEqual(expect.arrayContaining(['working-angles', 'joint-angle-size']));
    expect(ids([])).not.toContain('joint-angle-size');
  });
});

test('An observation and a reading of the same check: the worse decides', () => {
  const both = rankCauses(once(), caseOf({ vehicle, measurements: [found('tube-runout', 'fine'), tube(1.2)] }));
  expect(probabilityOf(both, 'tube-runout')).toBeGreaterThan(0.4);
});

describe('what a reading is told as', () => {
  const textOf = (measurement: Measurement): string =>
    factsOf(measurement, vehicle, { driveshaftRpm: 3000, wheelRpm: 800, once: true })[0]!.text;

  test('In millimetres and inches, with the limit in both and where it comes from', () => {
    expect(textOf({ kind: 'end-play', joint: 'center', axisPlayMm: [0.078, 0.02] })).toBe(
      'Center joint, end play, first axis: 0.078 mm (0.0031 in), outside the limit of 0.05 mm (0.002 in; common practice, no source)',
    );
    expect(textOf(tube(1.8))).toContain('1.8 mm (0.071 in), outside the limit of 0.5 mm (0.020 in');
  });

  test('In as many figures as keep it on its own side of the limit', () => {
    const unbalance = (innerG: number): Measurement => ({ kind: 'wheel-unbalance', innerG, outerG: 0, radiusMm: 200 });
    expect(textOf(unbalance(10.283))).toContain('10.3 g, outside the limit of 10 g');
    expect(textOf(unbalance(9.98))).toContain('9.98 g, inside the limit of 10 g');
    expect(textOf(unbalance(10))).toContain(': 10 g, inside the limit of 10 g');
    expect(textOf(unbalance(23.4))).toContain('23 g, outside');
  });

  test('Rings that leave too little room are said to, without a negative play', () => {
    const texts = (grooveSpanMm: number): string[] =>
      factsOf(rings(1.6, 1.6, grooveSpanMm), vehicle, { driveshaftRpm: 3000, wheelRpm: null, once: true }).map(
        ({ text }) => text,
      );
    expect(texts(81.78)).toContain(
      'The front joint’s rings leave 0.020 mm (0.0008 in) too little room: it is pressed together',
    );
    expect(texts(81.84)).toContain('The front joint’s rings leave 0.040 mm (0.0016 in) of end play');
    expect(texts(81.8)).toContain(
      'The front joint’s rings leave 0.000 mm (0.0000 in) of end play, so little that it may bind',
    );
  });

  test('Rings without any end play speak for a tight joint', () => {
    const none = shift(twice, rings(1.6, 1.6, 81.8), 'ring-too-tight');
    expect(none.after).toBeGreaterThan(1.3 * none.before);
  });
});
