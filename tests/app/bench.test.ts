import { describe, expect, it } from 'vitest';
import { formOfCheck, MEASURE_FORMS, subjectOf, withMeasurement } from '../../src/app/bench/all-forms.ts';
import { clearForm, fillForm, textOf, typeField, typedKey } from '../../src/app/bench/entry.ts';
import { limitText, measurementTitle, numberLine, predictionText } from '../../src/app/bench/judged-words.ts';
import { ownLimitText, parseOwnLimit, setLimit } from '../../src/app/bench/own-limits.ts';
import { parseField, unitOf } from '../../src/app/bench/parse-field.ts';
import { changeGeometry } from '../../src/app/compare/change-geometry.ts';
import { levelText, shownChanges } from '../../src/app/compare/change-words.ts';
import { stageOf } from '../../src/app/compare/stage-of.ts';
import { emptyJob } from '../../src/app/form/document.ts';
import { ALL_CHECKS } from '../../src/core/diagnosis/checks/all-checks.ts';
import type { OrderChange } from '../../src/core/diagnosis/compare/comparison.ts';
import { judgeAt } from '../../src/core/driveline/judging/judge-measurement.ts';
import { judge, limitOf } from '../../src/core/driveline/limits/limit.ts';
import type { Measurement } from '../../src/core/driveline/measurement.ts';
import { PROCEDURES } from '../../src/core/driveline/procedures.ts';
import { must } from '../support/must.ts';
import { FOUR_RUN_TYPED } from '../support/four-run.ts';

type Texts = Readonly<Record<string, string>>;

/** The measurement a form makes of what was typed. */
function build(formId: string, texts: Texts, units: 'us' | 'metric' = 'metric'): Measurement | null {
  const form = MEASURE_FORMS.find(({ id }) => id === formId);
  if (!form) throw new Error(formId);
  const typed = Object.fromEntries(Object.entries(texts).map(([id, text]) => [typedKey(form, id), text]));
  return fillForm(form, typed, units).measurement;
}

describe('measurement forms', () => {
  it('make every kind of measurement that can be judged but the plain observation', () => {
    const kinds = MEASURE_FORMS.map(({ id }) => id).sort();
    expect(kinds).toEqual(
      [
        'balance-amplitudes',
        'balance-phasors',
        'double-cardan',
        'end-play',
        'flange-reindex',
        'radial-play',
        'ride-height',
        'rings',
        'runout',
        'wheel-unbalance',
        'working-angles',
      ].sort(),
    );
    for (const form of MEASURE_FORMS) expect(Object.hasOwn(PROCEDURES, form.procedure)).toBe(true);
  });

  it.each([
    ['radial-play', 'play', '0,5', 'metric', 'us', '0,5 mm'],
    ['radial-play', 'play', '1/64', 'us', 'metric', '1/64 in'],
    ['radial-play', 'play', '0.02 in', 'metric', 'us', '0.02 in'],
    ['radial-play', 'play', '0.5', 'metric', 'metric', '0.5'],
    ['radial-play', 'play', 'lots', 'metric', 'us', 'lots'],
    ['end-play', 'axis1', '.1', 'metric', 'us', '.1 mm'],
    ['wheel-unbalance', 'inner', '20', 'metric', 'us', '20 g'],
    ['balance-amplitudes', 'weight', '0.5', 'us', 'metric', '0.5 oz'],
  ] as const)('%s, %s: %s typed in %s units is still that much in %s', (formId, id, text, then, now, shown) => {
    const form = MEASURE_FORMS.find((one) => one.id === formId)!;
    const typed = typeField(form, {}, id, text, then);
    const field = fillForm(form, typed, now)
      .rows.flatMap(({ fields }) => fields)
      .find((one) => one.id === id)!;
    expect(textOf(form, typed, field, now)).toBe(shown);
    const read = (units: 'us' | 'metric'): number | undefined => fillForm(form, typed, units).entry.number(id);
    expect(read(now)).toBe(read(then));
    expect(Object.keys(clearForm(form, typed))).toEqual([]);
  });

  it.each([
    ['balance-amplitudes', 'base', '1.52 mm/s', '"mm/s" does not belong here: this number has no unit.'],
    ['balance-amplitudes', 'base', 'much', '"much" is not a level.'],
    ['radial-play', 'play', 'lots', '"lots" is not a play reading.'],
    ['working-angles', 'pinion.slope', 'steep', '"steep" is not an angle.'],
  ])('%s, %s: %s is refused in plain words', (formId, id, text, message) => {
    const form = MEASURE_FORMS.find((one) => one.id === formId)!;
    const { problems } = fillForm(form, typeField(form, {}, id, text, 'metric'), 'metric');
    expect(problems.get(id)?.message).toBe(message);
  });

  it('take bare weights in ounces from a reader of US units, and say so', () => {
    // 1 oz = 28.349523125 g, 1 in = 25.4 mm (NIST SP 811).
    const wheel = build('wheel-unbalance', { inner: '1', outer: '0', radius: '8' }, 'us');
    expect(wheel).toMatchObject({ innerG: 28.349523125, outerG: 0, radiusMm: 203.2 });
    const setting = { units: 'us', weightUnit: 'g·mm' } as const;
    expect(unitOf('weight', setting)).toBe('oz·in');
    expect(unitOf('weights', { units: 'us', weightUnit: 'g' })).toBe('oz');
    const list = parseField({ id: 'weights', label: '', kind: 'weights' }, '1 / 2', setting);
    expect(list.ok && list.value.list?.[1]?.value).toBeCloseTo(2 * 28.349523125 * 25.4, 9);
    expect(unitOf('weight', { units: 'metric', weightUnit: 'g·mm' })).toBe('g·mm');
  });

  it('keep a list of bare numbers in the unit it was typed in', () => {
    const form = MEASURE_FORMS.find(({ id }) => id === 'rings')!;
    const typed = typeField(form, {}, 'stock', '1.55/1.60x2', 'metric');
    const { entry, problems } = fillForm(form, typed, 'us');
    expect(problems.size).toBe(0);
    expect(entry.list('stock')).toEqual([{ value: 1.55 }, { value: 1.6, count: 2 }]);
  });

  it('ask what a wheel is made of only where a wheel is measured', () => {
    const form = MEASURE_FORMS.find(({ id }) => id === 'runout')!;
    const asked = (place: string): string[] =>
      fillForm(form, { [typedKey(form, 'place')]: place }, 'metric').rows.flatMap((row) =>
        (row.choices ?? []).map(({ id }) => id),
      );
    expect(asked('tube-front')).toEqual([]);
    expect(asked('tire-radial')).toEqual([]);
    expect(asked('wheel-lateral')).toEqual(['material']);
    const alloy = build('runout', { place: 'wheel-radial', material: 'alloy', tir: '0.4' });
    expect(alloy).toMatchObject({ place: 'wheel-radial', wheelMaterial: 'alloy' });
    expect(build('runout', { place: 'tire-radial', material: 'alloy', tir: '0.4' })).not.toHaveProperty(
      'wheelMaterial',
    );
  });

  it('take angles with the lower end, and leave out what was not read', () => {
    const angles = {
      'transmission.slope': '3',
      'shaft1.slope': '6,2°',
      'shaft1.plan': '1.5',
      'pinion.slope': '2.4',
      'pinion.low': 'front',
    };
    expect(build('working-angles', angles)).toEqual({
      kind: 'working-angles',
      shafts: [
        { part: 'transmission', slopeDeg: 3 },
        { part: 'shaft', slopeDeg: 6.2, planDeg: 1.5 },
        { part: 'pinion', slopeDeg: -2.4 },
      ],
    });
  });

  it('make of angles what the bench works out: joint angles of 3.532° and 4.084°', () => {
    // Elevation and azimuth of the worked vehicle example, checked there by vectors.
    const angles = { 'transmission.slope': '3', 'shaft1.slope': '6.2', 'shaft1.plan': '1.5', 'pinion.slope': '2.4' };
    const judged = must(
      judgeAt(
        build('working-angles', angles)!,
        { layout: 'rear-drive' },
        { driveshaftRpm: 3000, wheelRpm: null, limits: {} },
      ),
    );
    const measured = [...judged.judged, ...judged.advisory].map((number) => number.measured);
    expect(measured).toContainEqual(expect.closeTo(3.531987, 5));
    expect(measured).toContainEqual(expect.closeTo(4.083689, 5));
    expect(measured).toContainEqual(expect.closeTo(137.515, 1));
  });

  it('a bare length is in the reader’s unit, and any unit may be typed', () => {
    expect(build('end-play', { joint: 'rear', axis1: '0.002', axis2: '0.05 mm' }, 'us')).toEqual({
      kind: 'end-play',
      joint: 'rear',
      axisPlayMm: [expect.closeTo(0.0508, 10), 0.05],
    });
  });

  it('retaining rings are worth having for one axis alone', () => {
    const rings = {
      'axis1.span': '81.85',
      'axis1.cross': '78.60',
      'axis1.ring1': '1.55',
      'axis1.ring2': '1.65',
      'axis2.span': '81.9',
    };
    expect(build('rings', rings)).toMatchObject({ axes: [{ grooveSpanMm: 81.85, ring2Mm: 1.65 }] });
  });

  it('runout is the whole movement or eight readings, and nothing while neither is there', () => {
    expect(build('runout', { place: 'tube-middle', tir: '0.4' })).toEqual({
      kind: 'runout',
      place: 'tube-middle',
      tirMm: 0.4,
    });
    expect(build('runout', { at0: '0', at45: '0.1' })).toBeNull();
    expect(build('runout', { place: 'wheel-radial', material: 'alloy', tir: '0.4' })).toMatchObject({
      wheelMaterial: 'alloy',
    });
  });

  it('four runs without phase lead to the worked correction, 666.67 at 253°', () => {
    const judged = judgeAt(
      build('balance-amplitudes', FOUR_RUN_TYPED)!,
      { layout: 'rear-drive' },
      { driveshaftRpm: null, wheelRpm: null, limits: {} },
    );
    expect(judged.ok && judged.value.notes[0]?.text).toContain('667 g·mm (0.93 oz·in) at 253°');
  });

  it('two planes with phase lead to the published correction, 1.98 g at 236° and 1.07 g at 122°', () => {
    // MacCamhaoil, Static and Dynamic Balancing of Rigid Rotors, example 6.
    const runs = {
      planes: 'two',
      'base1.amplitude': '170',
      'base1.phase': '112',
      'base2.amplitude': '53',
      'base2.phase': '78',
      weight1: '1.15',
      angle1: '0',
      weight2: '1.15',
      angle2: '0',
      'trial1.1.amplitude': '235',
      'trial1.1.phase': '94',
      'trial1.2.amplitude': '58',
      'trial1.2.phase': '68',
      'trial2.1.amplitude': '185',
      'trial2.1.phase': '115',
      'trial2.2.amplitude': '77',
      'trial2.2.phase': '104',
    };
    const judged = judgeAt(
      build('balance-phasors', runs)!,
      { layout: 'rear-drive' },
      { driveshaftRpm: null, wheelRpm: null, limits: {} },
    );
    const text = judged.ok ? (judged.value.notes[0]?.text ?? '') : '';
    expect(text).toContain('1.98 g (0.07 oz) at 236°');
    expect(text).toContain('1.07 g (0.038 oz) at 122°');
  });

  it('wrong text is a problem of its field, and no measurement is made', () => {
    const form = MEASURE_FORMS.find(({ id }) => id === 'radial-play')!;
    const filled = fillForm(form, { [typedKey(form, 'play')]: 'lots' }, 'metric');
    expect(filled.measurement).toBeNull();
    expect(filled.problems.get('play')?.message).toContain('lots');
  });

  it('clearing a form leaves what was typed elsewhere', () => {
    const form = MEASURE_FORMS[0]!;
    expect(clearForm(form, { [typedKey(form, 'a')]: '1', 'vehicle.axleRatio': '3' })).toEqual({
      'vehicle.axleRatio': '3',
    });
  });
});

describe('checks and their forms', () => {
  it('name checks that exist, with choices the form has', () => {
    const named = ALL_CHECKS.map(({ id }) => id);
    const withForm = named.filter((id) => formOfCheck(id) !== null);
    expect(withForm.length).toBe(15);
    for (const id of withForm) {
      const { form, preset } = formOfCheck(id)!;
      for (const [choice, value] of Object.entries(preset)) {
        const options = form.choices.find((item) => item.id === choice)?.options.map(([option]) => option);
        expect(options).toContain(value);
      }
    }
    expect(formOfCheck('tap-test')).toBeNull();
  });

  it('a second measurement of one subject replaces the first, one elsewhere does not', () => {
    const play = (joint: 'front' | 'rear', mm: number): Measurement => ({
      kind: 'end-play',
      joint,
      axisPlayMm: [mm, mm],
    });
    const taken = [play('front', 0.1), play('rear', 0.2), play('front', 0.3)].reduce<Measurement[]>(
      withMeasurement,
      [],
    );
    expect(taken).toEqual([play('rear', 0.2), play('front', 0.3)]);
    expect(subjectOf(play('front', 1))).not.toBe(subjectOf(play('rear', 1)));
    expect(measurementTitle(play('rear', 1))).toBe('End play of a joint: rear');
  });
});

describe('limits', () => {
  it('tell where they come from, in the reader’s units', () => {
    const text = limitText(limitOf('end-play'), 'metric').replaceAll('\u00a0', ' ');
    expect(text).toBe('at most 0.05 mm · common practice, no source');
    expect(limitText(limitOf('joint-angle-most'), 'us')).toContain('at most 3° · ');
    const us = (id: Parameters<typeof limitOf>[0]): string => limitText(limitOf(id), 'us').replaceAll('\u00a0', ' ');
    expect(us('end-play')).toContain('at most 0.002 in (0.05 mm)');
    // 10 g = 10 / 28.349523125 oz (avoirdupois ounce, NIST SP 811); 0.5 mm = 0.5 / 25.4 in.
    expect(us('wheel-unbalance')).toContain('at most 0.35 oz (10.0 g)');
    expect(us('tube-runout-middle')).toContain('at most 0.0197 in (0.5 mm)');
    expect(us('driveshaft-grade')).toContain('at most G 16');
  });

  it('have forces, couples and weights beside them in the reader’s units', () => {
    const said = (value: number, unit: 'N' | 'N·m', quantity: 'force' | 'couple'): string =>
      predictionText({ part: 'driveshaft', order: 1, quantity, value, unit, where: 'there' }, 'us').replaceAll(
        '\u00a0',
        ' ',
      );
    // 1 lbf = 4.4482216152605 N, 1 lbf·ft = 1.3558179483314 N·m (NIST SP 811).
    expect(said(100, 'N', 'force')).toContain('22 lbf (100 N)');
    expect(said(27, 'N·m', 'couple')).toContain('20 lb·ft (27 N·m)');
  });

  it('have a bar that reaches their mark at the limit, and grows with the number whatever the sense', () => {
    const limit = limitOf('end-play');
    const at = numberLine({ title: '', measured: 0.05, limit, inside: true, share: 1 }, 'metric');
    expect(at.bar).toBe(at.limitAt);
    const least = limitOf('joint-angle-least');
    const bars = [0.25, 0.5, 1].map((share) => numberLine(judge(share * least.value, least), 'metric'));
    expect(bars.map(({ bar, limitAt }) => bar / limitAt)).toEqual([0.25, 0.5, 1].map((x) => expect.closeTo(x, 10)));
    expect(bars.map(({ inside }) => inside)).toEqual([false, false, true]);
    expect(numberLine({ title: '', measured: 5, limit, inside: false, share: 100 }, 'metric').bar).toBe(1);
  });

  it('show a reading as it was typed', () => {
    const limit = limitOf('end-play');
    // 0.006 in, as typed, is 0.006 · 25.4 mm, which comes back as 60.00000000000001 tenths.
    const typed = numberLine({ title: '', measured: 0.006 * 25.4, limit, inside: false, share: 3 }, 'us');
    expect(typed.measured.replaceAll('\u00a0', ' ')).toBe('0.0060 in (0.152 mm)');
  });

  it('give way to the maker’s figure, and come back when it is taken out', () => {
    const own = setLimit(emptyJob(), 'end-play', 0.08);
    expect(own.limits).toEqual({ 'end-play': { value: 0.08 } });
    expect(limitText(limitOf('end-play', own.limits), 'metric')).toContain('maker’s figure');
    expect(setLimit(own, 'end-play', null).limits).toEqual({});
  });

  it.each([
    ['slip-yoke-play', '0.010', 'us', 0.254, '0.01 in'],
    ['slip-yoke-play', '0,25', 'metric', 0.25, '0.25 mm'],
    ['slip-yoke-play', '0.3 mm', 'us', 0.3, '0.0118 in'],
    ['slip-yoke-play', '.015"', 'metric', 0.381, '0.381 mm'],
    ['inertia-drive', '500 rad/s²', 'us', 500, '500 rad/s²'],
    ['inertia-drive', '500', 'metric', 500, '500 rad/s²'],
    ['joint-angle-most', '2 °', 'us', 2, '2°'],
    ['joint-angle-most', '2 deg', 'us', 2, '2°'],
    ['driveshaft-grade', 'G 40', 'us', 40, 'G 40'],
    ['driveshaft-grade', '40 mm/s', 'metric', 40, 'G 40'],
    ['wheel-unbalance', '8 g', 'metric', 8, '8 g'],
    ['wheel-unbalance', '0.25 oz', 'us', 7.087, '0.25 oz'],
    ['wheel-unbalance', '0.25', 'us', 7.087, '0.25 oz'],
    ['whirl-share', '50 %', 'us', 0.5, '50 %'],
    ['whirl-share', '50', 'us', 0.5, '50 %'],
    ['whirl-share', '0,65', 'metric', 0.65, '65 %'],
    ['unbalance-share', '1', 'metric', 1, '100 %'],
  ] as const)('%s: %s in %s units is the figure meant, and shown rounded', (id, text, units, value, shown) => {
    const parsed = parseOwnLimit(id, text, units);
    expect(parsed).toEqual({ ok: true, value: expect.closeTo(value, 3) });
    expect(ownLimitText(parsed.ok ? parsed.value : 0, limitOf(id).unit, units)).toBe(shown);
    // What is shown can be typed.
    expect(parseOwnLimit(id, shown, units)).toEqual({ ok: true, value: expect.closeTo(value, 2) });
  });

  it.each([
    ['slip-yoke-play', 'abc', /"abc" is not a limit\. Write it like 0\.0079 in\./u],
    ['slip-yoke-play', '-1', /"-1 in" is outside what is possible for a limit/u],
    ['slip-yoke-play', '0', /possible/u],
    ['slip-yoke-play', '2 kg', /"kg" is not a unit of length/u],
    ['whirl-share', '0', /possible/u],
    ['driveshaft-grade', 'G', /"G" is not a limit\. Write it like G 16\./u],
  ] as const)('%s: %s is refused, and told how to be written', (id, text, message) => {
    const parsed = parseOwnLimit(id, text, 'us');
    expect(parsed.ok ? '' : `${parsed.problem.message} ${parsed.problem.remedy}`).toMatch(message);
  });
});

describe('before and after', () => {
  const level = (feltLevel: number, seen = true) => ({
    frequencyHz: 60,
    amplitudeMps2: feltLevel / 10,
    feltLevel,
    seen,
  });
  const change = (change_: Partial<OrderChange>): OrderChange => ({
    part: 'driveshaft',
    order: 2,
    label: 'driveshaft 2×',
    before: level(5),
    after: level(0.5, false),
    changeDb: -20,
    lowDb: null,
    highDb: -14.2,
    real: true,
    verdict: 'gone',
    ...change_,
  });

  it('say under where the noise hides the level', () => {
    expect(levelText(level(5))).toBe('5.0');
    expect(levelText(level(0.5, false))).toBe('under 0.5');
  });

  it('show the most felt first and leave out what was never seen', () => {
    const hidden = change({ label: 'tire 4×', before: level(0.1, false), after: level(0.1, false) });
    const weak = change({ label: 'tire 1×', before: level(1), after: level(1) });
    expect(shownChanges([hidden, weak, change({})]).map(({ label }) => label)).toEqual(['driveshaft 2×', 'tire 1×']);
  });

  it('stand on a scale of whole decades around what is just felt', () => {
    const geometry = changeGeometry([change({})], 600);
    expect(geometry.ticks).toEqual([0.1, 1, 10]);
    expect(geometry.x(0.5)).toBeLessThan(geometry.x(5));
  });

  it('leave room for the longest name beside the rows, and on a phone put the names above them', () => {
    const long = change({ label: 'power steering pump 1×' });
    const desk = changeGeometry([change({}), long], 900);
    expect(desk.namesAbove).toBe(false);
    expect(desk.left).toBeGreaterThan(7 * long.label.length);
    // On a projector the letters are a third larger, and so is the room for them.
    const large = changeGeometry([change({}), long], 900, 4 / 3);
    expect(large.left - 20).toBeCloseTo((4 / 3) * (desk.left - 20), 9);
    const phone = changeGeometry([change({}), long], 320);
    expect(phone.namesAbove).toBe(true);
    expect(phone.right - phone.left).toBeGreaterThan(280);
    expect(phone.rowY[1]! - phone.rowY[0]!).toBeGreaterThan(desk.rowY[1]! - desk.rowY[0]!);
    expect(phone.rowY[1]!).toBeLessThan(phone.height - 24);
  });

  it('take the runs of one stage, complaint where nothing else is said', () => {
    const job = { ...emptyJob(), runs: [{ file: 'a' }, { file: 'b', stage: 'proof' as const }] };
    expect(stageOf(job, 'complaint').runs.map(({ file }) => file)).toEqual(['a']);
    expect(stageOf(job, 'proof').runs.map(({ file }) => file)).toEqual(['b']);
  });
});
