import { describe, expect, test } from 'vitest';
import type { CaseContext, FindingBasis } from '../../../../src/core/diagnosis/evidence/case.ts';
import { missingText } from '../../../../src/core/diagnosis/evidence/clue.ts';
import { CLUES, readSigns } from '../../../../src/core/diagnosis/evidence/read-signs.ts';
import { readOutcomes } from '../../../../src/core/diagnosis/evidence/read-outcomes.ts';
import type { Sign } from '../../../../src/core/diagnosis/signs.ts';
import type { Load, Vehicle } from '../../../../src/core/vehicle/vehicle.ts';
import { caseOf, companion, finding } from '../causes/case-fixtures.ts';

const steel = { tubeOuterMm: 88.9, wallMm: 2.1082, material: 'steel' } as const;
const shaft = (pieces: Vehicle['driveshaftPieces']): CaseContext =>
  caseOf({ vehicle: { layout: 'rear-drive', ...(pieces ? { driveshaftPieces: pieces } : {}) } });
const driven = (load: Load | undefined, usedSpeedMps: number | null = 28): CaseContext =>
  caseOf({ runs: [{ name: 'cruise', usedSpeedMps, ...(load ? { load } : {}) }] });
const grows = (value: number, sd = 0.2) => finding('tire', 1, { speedExponent: { value, sd } });
const withOther = (basis: FindingBasis, order: number, amplitude: number, seen = true): FindingBasis => ({
  ...basis,
  companions: [companion(basis.part, order, amplitude, seen)],
});
const withFiring = (amplitude: number): FindingBasis => ({
  ...finding('engine', 1),
  companions: [{ ...companion('engine', 4, amplitude), role: 'firing' }],
});
const once = finding('driveshaft', 1);
const twice = finding('driveshaft', 2);

// Amplitude of every finding is 0.1 m/s². 6396 rpm is the first bending speed of 1524 mm of the tube above (handbook
// formula; see the test of whirl), so 85 Hz is 80 % of it, 53.3 Hz a half, 40 Hz 38 %.
const TABLE: readonly (readonly [what: string, basis: FindingBasis, context: CaseContext, sign: Sign])[] = [
  ['90 % vertical', finding('tire', 1, { verticalShare: 0.9 }), caseOf(), 'mostly-vertical'],
  ['10 % vertical', finding('tire', 1, { verticalShare: 0.1 }), caseOf(), 'mostly-sideways'],
  ['power −2', grows(-2), caseOf(), 'falls-with-speed'],
  ['power 0.3', grows(0.3), caseOf(), 'flat-with-speed'],
  ['power 2', grows(2), caseOf(), 'square-with-speed'],
  ['power 5', grows(5), caseOf(), 'steep-with-speed'],
  ['power 2 without any scatter', grows(2, 0), caseOf(), 'square-with-speed'],
  ['driveshaft 2× at half the level', withOther(once, 2, 0.05), caseOf(), 'twice-too'],
  ['no driveshaft 2×', withOther(once, 2, 0.004, false), caseOf(), 'once-alone'],
  ['driveshaft 1× as strong', withOther(twice, 1, 0.1), caseOf(), 'once-too'],
  ['no driveshaft 1×', withOther(twice, 1, 0.004, false), caseOf(), 'twice-alone'],
  ['driveshaft 4× beside 2×', withOther(twice, 4, 0.05), caseOf(), 'four-times-too'],
  ['tire 2× beside 1×', withOther(finding('tire', 1), 2, 0.05), caseOf(), 'tire-higher-too'],
  ['tire 1× alone', withOther(finding('tire', 1), 3, 0.004, false), caseOf(), 'tire-once-alone'],
  ['tire 1× beside 2×', withOther(finding('tire', 2), 1, 0.2), caseOf(), 'tire-once-too'],
  ['tire 2× alone', withOther(finding('tire', 2), 1, 0.004, false), caseOf(), 'tire-higher-alone'],
  ['1½× beside ½×', withOther(finding('engine', 0.5), 1.5, 0.06), caseOf(), 'half-orders-too'],
  ['no half orders beside 1×', withOther(finding('engine', 1), 0.5, 0.004, false), caseOf(), 'half-orders-absent'],
  ['firing as strong as 1×', withFiring(0.12), caseOf(), 'firing-too'],
  ['little firing beside 1×', withFiring(0.02), caseOf(), 'firing-low'],
  ['beating', finding('tire', 1, { beats: true }), caseOf(), 'beats'],
  ['heard', finding('engine', 1, { perceived: 'heard' }), caseOf(), 'heard'],
  ['moving off', once, driven('pull', 5), 'low-speed'],
  ['road speed', once, driven('cruise', 28), 'road-speed'],
  ['pull', once, driven('pull'), 'found-pulling'],
  ['cruise', once, driven('cruise'), 'found-cruising'],
  ['brake', once, driven('brake'), 'found-braking'],
  ['standing', once, driven('standing'), 'found-standing'],
  ['engine 1× at 20 Hz, 1200 rpm', finding('engine', 1, { frequencyHz: 20 }), caseOf(), 'low-engine-speed'],
  ['engine 2× at 80 Hz, 2400 rpm', finding('engine', 2, { frequencyHz: 80 }), caseOf(), 'engine-speed-not-low'],
  ['two pieces', once, shaft([{}, {}]), 'two-piece'],
  ['double-Cardan at the front', once, shaft([{ frontJoint: 'double-cardan' }]), 'double-cardan'],
  [
    '80 % of critical',
    finding('driveshaft', 1, { frequencyHz: 85.28 }),
    shaft([{ lengthMm: 1524, ...steel }]),
    'near-critical',
  ],
  [
    'half of critical',
    finding('driveshaft', 2, { frequencyHz: 106.6 }),
    shaft([{ lengthMm: 1524, ...steel }]),
    'near-half-critical',
  ],
  ['38 % of critical', once, shaft([{ lengthMm: 1524, ...steel }]), 'far-from-critical'],
  [
    'axles of 3.73 and 3.55',
    twice,
    caseOf({ vehicle: { layout: 'four-wheel-drive', axleRatio: 3.73, frontAxleRatio: 3.55 } }),
    'axle-ratios-apart',
  ],
  ['converter', finding('engine', 2), caseOf({ vehicle: { layout: 'rear-drive', converter: true } }), 'converter'],
  ['a line', finding('fixed', null, { heldWithin: 4e-4 }), caseOf(), 'narrow-line'],
  ['20 Hz', finding('fixed', null, { frequencyHz: 20 }), caseOf(), 'low-tone'],
  ['80 Hz', finding('fixed', null, { frequencyHz: 80 }), caseOf(), 'middle-tone'],
  ['200 Hz', finding('fixed', null, { frequencyHz: 200 }), caseOf(), 'high-tone'],
  ['60.1 Hz', finding('fixed', null, { frequencyHz: 60.1 }), caseOf(), 'mains-tone'],
];

test.each(TABLE)('%s', (_, basis, context, sign) => {
  const { seen } = readSigns(basis, context);
  const told = seen.find((one) => one.sign === sign);
  expect(seen.map((one) => one.sign)).toContain(sign);
  expect(told!.text.length).toBeGreaterThan(8);
  // A clue gives one answer: none of its other signs stands beside it.
  const rivals = CLUES.find((clue) => clue.signs.includes(sign) && clue.asks(basis, context))!.signs.filter(
    (one) => one !== sign,
  );
  expect(seen.filter((one) => rivals.includes(one.sign))).toEqual([]);
});

test('Every sign has a row in this table', () => {
  const tried = new Set(TABLE.map(([, , , sign]) => sign));
  expect(CLUES.flatMap(({ signs }) => signs).filter((sign) => !tried.has(sign))).toEqual([]);
});

describe('Where it cannot be told', () => {
  const missing = (basis: FindingBasis, context = caseOf()) =>
    readSigns(basis, context)
      .unread.map((clue) => clue.missing)
      .join(' ');

  test('What was not given is named as missing', () => {
    expect(missing(once)).toMatch(/direction of the shake/);
    expect(missing(once)).toMatch(/changes with speed is not known/);
    expect(missing(once)).toMatch(/one piece or two/);
    expect(missing(once)).toMatch(/kinds of joints/);
    expect(missing(once)).toMatch(/critical speed is not known/);
    expect(missing(once)).toMatch(/load of the run/);
    expect(missing(once)).toMatch(/road speed of the run/);
    expect(missing(once)).toMatch(/driveshaft 2×/);
    expect(missing(finding('engine', 1))).toMatch(/torque converter/);
  });

  test('What lies between says nothing and is not missing', () => {
    const between = { ...withOther(once, 2, 0.02), verticalShare: 0.5, speedExponent: { value: 1.2, sd: 0.3 } };
    const { seen } = readSigns(between, driven('coast', 28));
    expect(seen.map(({ sign }) => sign)).toEqual(['road-speed']);
    expect(missing(between, driven('coast', 28))).not.toMatch(/direction|changes with speed|load of the run/);
  });

  test('A floor too high to clear a companion clears nothing', () => {
    const hidden = withOther(once, 2, 0.05, false);
    expect(readSigns(hidden, caseOf()).seen).toEqual([]);
  });

  test('A poorly known growth says little, a well known one all', () => {
    const strength = (sd: number) => readSigns(grows(2.2, sd), caseOf()).seen[0]?.strength ?? 0;
    expect(strength(0.1)).toBeCloseTo(1, 6);
    // P(1.2 < x < 3.2) for 2.2 ± 1 is 0.6827, which beats its rivals by 0.365.
    expect(strength(1)).toBeCloseTo(2 * 0.6827 - 1, 3);
    expect(strength(5)).toBe(0);
  });
});

describe('Runs in two loads answer the check they are', () => {
  const wrongness = (levels: FindingBasis['levelByLoadMps2'], id: string, part: FindingBasis['part'] = 'half-shaft') =>
    readOutcomes(finding(part, 1, { levelByLoadMps2: levels }), caseOf()).find(({ checkId }) => checkId === id)
      ?.wrongness;

  test('Twice as strong on pull is clear, equal is clear the other way, half as much again says nothing', () => {
    expect(wrongness({ pull: 0.2, coast: 0.1 }, 'run-pull-coast')).toBeGreaterThan(0.8);
    expect(wrongness({ pull: 0.1, coast: 0.1 }, 'run-pull-coast')).toBeLessThan(0.15);
    expect(wrongness({ pull: 0.15, coast: 0.1 }, 'run-pull-coast')).toBeCloseTo(0.5, 9);
  });

  test('Gone in neutral, stronger under braking, there while standing', () => {
    expect(wrongness({ cruise: 0.2, neutral: 0.01 }, 'run-neutral')).toBeCloseTo(0.95, 9);
    expect(wrongness({ cruise: 0.2, neutral: 0.2 }, 'run-neutral')).toBeLessThan(0.15);
    expect(wrongness({ brake: 0.3, cruise: 0.05 }, 'run-braking')).toBeCloseTo(0.95, 9);
    expect(wrongness({ standing: 0.2, cruise: 0.2 }, 'run-standing', 'engine')).toBeGreaterThan(0.9);
    expect(wrongness({ standing: 0, cruise: 0.2 }, 'run-standing', 'engine')).toBeCloseTo(0.05, 9);
  });

  test('One load alone answers nothing', () => {
    expect(readOutcomes(finding('half-shaft', 3, { levelByLoadMps2: { pull: 0.2 } }), caseOf())).toEqual([]);
    expect(wrongness({ standing: 0.2, cruise: 0.2 }, 'run-standing', 'tire')).toBeUndefined();
  });
});

test('Firing and half orders are not asked of a motor', () => {
  const electric = caseOf({ vehicle: { layout: 'electric' } });
  const missing = (context: CaseContext) => readSigns(finding('engine', 1), context).unread.map((clue) => clue.missing);
  expect(missing(caseOf()).join(' ')).toMatch(/half orders.*firing/);
  expect(missing(electric).join(' ')).not.toMatch(/half orders|firing/);
});

describe('growth with speed', () => {
  const told = (basis: FindingBasis): string =>
    readSigns(basis, caseOf())
      .unread.map((clue) => missingText(clue, basis))
      .join(' ');

  test('is asked for at a second speed where every run kept to one', () =>
    expect(told(finding('tire', 1))).toContain('record at a second speed'));

  test.each(['resonance', 'noise', 'short-run'] as const)('is not asked for where a run swept (%s)', (growthHiddenBy) =>
    expect(told(finding('tire', 1, { growthHiddenBy }))).not.toContain('second speed'),
  );
});
