import { describe, expect, it } from 'vitest';
import { BENCH_FORMS } from '../../src/app/bench/all-forms.ts';
import { shiftsOf } from '../../src/app/bench/cause-shift.ts';
import type { FilledForm } from '../../src/app/bench/entry.ts';
import { fillForm, typedKey } from '../../src/app/bench/entry.ts';
import { speedsInJob } from '../../src/app/bench/judge-in-job.ts';
import { isSame, withoutAndWith } from '../../src/app/bench/kept.ts';
import { differenceText, whatIfText } from '../../src/app/bench/results/angle-words.ts';
import {
  afterChanges,
  angleQuestion,
  drivelinePoints,
  rippleSeries,
  stretchOf,
  topAcceleration,
  topRpmOf,
} from '../../src/app/bench/results/angles.ts';
import {
  allowanceFigures,
  circlePicture,
  correctionText,
  placingsOf,
  placingText,
} from '../../src/app/bench/results/balance.ts';
import { reopened } from '../../src/app/bench/reopen.ts';
import { jointFacts } from '../../src/app/bench/results/joint.ts';
import { centringFigures, seatFigures } from '../../src/app/bench/results/joint-words.ts';
import { clockPicture, runoutFacts } from '../../src/app/bench/results/runout.ts';
import type { TrialFile } from '../../src/app/bench/results/trial-runs.ts';
import {
  isComplete,
  levelsTask,
  levelText,
  ownSources,
  typedLevels,
  withFiles,
  withUse,
} from '../../src/app/bench/results/trial-runs.ts';
import { whirlFacts, whirlScaleRpm } from '../../src/app/bench/results/whirl.ts';
import { emptyJob } from '../../src/app/form/document.ts';
import { MIDDLE } from '../../src/app/plot/round-picture.ts';
import { benchResults } from '../../src/app/texts/bench-results.ts';
import { balanceByAmplitudes } from '../../src/core/driveline/balance/balance-amplitude.ts';
import { turningAccelerationText } from '../../src/core/report/angle-change-text.ts';
import { workingAngles } from '../../src/core/driveline/angles/working-angles.ts';
import type { Measurement } from '../../src/core/driveline/measurement.ts';
import type { Job } from '../../src/core/job/job.ts';
import type { Report } from '../../src/core/report/report.ts';
import { evenReadings, fitRunout } from '../../src/core/driveline/runout/runout.ts';
import { must } from '../support/must.ts';
import { FOUR_RUN_TYPED } from '../support/four-run.ts';

type Texts = Readonly<Record<string, string>>;

const formOf = (id: string) => {
  const form = BENCH_FORMS.find((one) => one.id === id);
  if (!form) throw new Error(id);
  return form;
};

function filledWith(id: string, texts: Texts, job: Job = emptyJob(), units: 'us' | 'metric' = 'metric'): FilledForm {
  const form = formOf(id);
  const typed = Object.fromEntries(Object.entries(texts).map(([field, text]) => [typedKey(form, field), text]));
  return fillForm(form, typed, units, {}, job);
}

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const truck: Job = {
  ...emptyJob(),
  vehicle: {
    layout: 'rear-drive',
    axleRatio: 4,
    tire: { kind: 'rolling-circumference', circumferenceM: 2 },
    driveshaftPieces: [{ lengthMm: 1524, tubeOuterMm: 88.9, wallMm: 2.1082, massKg: 9 }],
  },
  runs: [{ file: 'a.csv', speedMps: 25, speedSource: 'gps' }],
};

const ANGLES = { 'transmission.slope': '3', 'shaft1.slope': '6.2', 'shaft1.plan': '1.5', 'pinion.slope': '2.4' };

describe('facts around a measurement', () => {
  it('are no part of it, and a wrong one does not undo it', () => {
    const { measurement, problems, entry } = filledWith('working-angles', { ...ANGLES, rpm: '3000', torque: 'lots' });
    expect(measurement).toEqual(filledWith('working-angles', ANGLES).measurement);
    expect(entry.number('rpm')).toBe(3000);
    expect([...problems.keys()]).toEqual(['torque']);
  });

  it('take any unit, and a bare number in the reader’s', () => {
    const us = filledWith(
      'working-angles',
      { ...ANGLES, torque: '100', mountSpan: '36', 'shaft1.length': '1300 mm' },
      emptyJob(),
      'us',
    );
    expect(us.entry.number('torque')).toBeCloseTo(135.58, 2);
    expect(us.entry.number('mountSpan')).toBeCloseTo(914.4, 6);
    expect(us.entry.number('shaft1.length')).toBe(1300);
  });

  it('tell what is in force while they are empty', () => {
    const hints = filledWith('rings', {}, truck).extras.flatMap((row) =>
      row.fields.map((field) => plain(field.hint ?? '')),
    );
    expect(hints).toContain('3000 rpm at the complaint');
    expect(hints).toContain('9.0 kg, from the vehicle');
  });

  it('a typed speed wins over that of the complaint', () => {
    expect(speedsInJob(truck)).toEqual({
      ok: true,
      value: { driveshaftRpm: expect.closeTo(3000, 6), wheelRpm: expect.closeTo(750, 6) },
    });
    expect(speedsInJob(truck, undefined, 2000)).toMatchObject({ value: { driveshaftRpm: 2000 } });
    expect(speedsInJob(emptyJob())).toMatchObject({ value: { driveshaftRpm: null } });
  });

  it('readings carry their uncertainty, and lists their counts', () => {
    const { entry } = filledWith('balance-amplitudes', { base: '0.40 ± 0,01', sites: '0 / 60 / 120', weight: '1 oz' });
    expect([entry.number('base'), entry.uncertainty('base')]).toEqual([0.4, 0.01]);
    expect(entry.list('sites')?.map(({ value }) => value)).toEqual([0, 60, 120]);
    expect(entry.number('weight')).toBeCloseTo(28.35, 2);
    const wrong = filledWith('balance-amplitudes', { unit: 'g·mm', weight: '25 g' });
    expect(wrong.problems.get('weight')?.remedy).toMatch(/g·mm/u);
    expect(filledWith('rings', { stock: '1.50x2/1.55 mm' }).entry.list('stock')).toEqual([
      { value: 1.5, count: 2 },
      { value: 1.55 },
    ]);
  });
});

describe('working angles', () => {
  it('of a front shaft begin at the pinion, and are taken from the surface they were measured on', () => {
    const front = filledWith('working-angles', {
      ...ANGLES,
      driveshaft: 'front-driveshaft',
      'reference.slope': '1',
    }).measurement;
    expect(front).toMatchObject({
      driveshaft: 'front-driveshaft',
      shafts: [
        { part: 'pinion', slopeDeg: expect.closeTo(1.4, 9) },
        { part: 'shaft', slopeDeg: expect.closeTo(5.2, 9) },
        { part: 'transfer-case', slopeDeg: 2 },
      ],
    });
  });

  it('of three pieces with a double-Cardan joint are entered piece by piece', () => {
    const texts = {
      pieces: 'three',
      'transmission.slope': '0',
      'shaft1.slope': '1',
      'shaft2.slope': '2',
      'shaft3.slope': '5',
    };
    const joint = { 'transmission.joint': 'double-cardan', 'transmission.split': '0.2', 'shaft2.twist': '5' };
    expect(filledWith('working-angles', { ...texts, ...joint, 'pinion.slope': '1' }).measurement).toMatchObject({
      phasingDeg: [0, 5, 0],
      joints: ['double-cardan', 'cross', 'cross', 'cross'],
      splitErrorDeg: [0.2, 0, 0, 0],
    });
    expect(filledWith('working-angles', texts).measurement).toBeNull();
  });

  it('take a reading on an upright face for what is missing to 90°, and the sideways angle from two offsets', () => {
    const { measurement } = filledWith('working-angles', {
      'transmission.slope': '87',
      'shaft1.slope': '6',
      'pinion.slope': '-87.6',
      'pinion.low': 'front',
      sideways: 'offsets',
      'shaft1.offsetFront': '-10',
      'shaft1.offsetRear': '25 mm',
      'shaft1.apart': '1500',
    });
    // By hand: asin(35/(1500·cos 6°)) = 1.344°.
    expect(measurement).toEqual({
      kind: 'working-angles',
      shafts: [
        { part: 'transmission', slopeDeg: 3 },
        { part: 'shaft', slopeDeg: 6, planDeg: expect.closeTo(1.344, 3) },
        { part: 'pinion', slopeDeg: expect.closeTo(-2.4, 9) },
      ],
    });
    const incomplete = { ...ANGLES, sideways: 'offsets', 'shaft1.offsetFront': '12' };
    expect(filledWith('working-angles', incomplete).measurement).toBeNull();
  });

  it('are not worked out where the suspension hung', () => {
    expect(angleQuestion(filledWith('working-angles', { ...ANGLES, height: 'hung' }), truck)).toBeNull();
  });

  const question = angleQuestion(filledWith('working-angles', ANGLES, truck), truck)!;
  const angles = must(workingAngles(question.input));

  it('follow a shim as the readings would: half a degree at the pinion is half a degree of slope', () => {
    const changed = afterChanges(question, [{ kind: 'axle-shim', amount: 0.5 }]);
    expect(changed.shafts.at(-1)?.slopeDeg).toBeCloseTo(2.9, 9);
    expect(afterChanges(question, [{ kind: 'axle-shim', amount: 0 }]).shafts).toBe(question.input.shafts);
  });

  it('are drawn over speed: 137.5 rad/s² at 3000 rev/min, a quarter of that at half of it', () => {
    const [residual, inertia] = rippleSeries(angles, null, topRpmOf(3000), benchResults.angles);
    const at = (points: readonly (readonly [number, number])[], rpm: number) =>
      points.find(([x]) => Math.abs(x - rpm) < 1)?.[1];
    expect(topRpmOf(3000)).toBe(5000);
    expect(at(residual!.points, 3000)).toBeCloseTo(137.515, 1);
    expect(at(residual!.points, 1500)).toBeCloseTo(137.515 / 4, 1);
    expect(inertia?.name).toBe('Inertia on coast');
    expect(topAcceleration(undefined)).toBe(1250);
  });

  it('stand in the picture where geometry puts them', () => {
    const points = drivelinePoints(question.input, [1000]);
    expect(points).toHaveLength(4);
    expect(points[2]!.downMm - points[1]!.downMm).toBeCloseTo(1000 * Math.sin((6.2 * Math.PI) / 180), 6);
    expect(points[2]!.rightMm).toBeGreaterThan(0);
    expect([stretchOf(0, 100), stretchOf(10, 100), stretchOf(40, 100), stretchOf(500, 100)]).toEqual([1, 6, 2, 1]);
  });

  it('say what a change leaves, or why it is not enough', () => {
    const one = {
      changes: [{ kind: 'axle-shim', amount: 0.7 }],
      units: ['°'],
      steps: 1.4,
      residualDeg: 1,
      residualRadPerS2: 182.4,
    } as const;
    const good = { ...one, practicalAmount: 1, spoils: [], stillOutside: [], reachesLimit: true } as const;
    expect(plain(whatIfText(good, question.input.shafts, 'metric'))).toBe(
      'Turn the axle by 0.7°, pinion nose up: leaves 182 rad/s². In whole steps: turn the axle by 1.0°, pinion nose up.',
    );
    const bad = { ...good, practicalAmount: null, spoils: ['inertia'], reachesLimit: false } as const;
    expect(whatIfText(bad, question.input.shafts, 'metric')).toMatch(
      /^Not enough alone: .*the inertia figure gets worse\.$/u,
    );
    expect(
      [plain(differenceText(-12.34, 0)), differenceText(null, 0.0123), turningAccelerationText(0.01)].map(plain),
    ).toEqual(['−12.3 rad/s²', '+0.012°', '0 rad/s²']);
  });
});

describe('a joint', () => {
  const RINGS = {
    'axis1.span': '81.85',
    'axis1.cross': '78.60',
    'axis1.ring1': '1.55',
    'axis1.ring2': '1.65',
    joint: 'rear',
  };

  it('off center by 0.05 mm spends 65 % of the allowance, 150 and 75 g·mm', () => {
    const facts = jointFacts(filledWith('rings', RINGS, truck), truck)!;
    const figures = new Map(centringFigures(facts, 'metric').map(([name, text]) => [plain(name), plain(text)]));
    expect(figures.get('Unbalance at this joint')).toBe('150 g·mm');
    expect(figures.get('Unbalance at the other end')).toBe('75.0 g·mm');
    expect(figures.get('Share of the allowance, here')).toBe('65 %');
    expect(figures.get('Force at this joint, 3000 rpm')).toBe('14.8 N');
    expect(seatFigures(facts.seats, 'metric').map(([, text]) => plain(text))).toEqual(['0.050 mm', '0.050 mm']);
  });

  it('is offered rings before any are fitted, and says what is missing where none fits', () => {
    const bare = { 'axis1.span': '81.85', 'axis1.cross': '78.60', joint: 'rear' };
    const good = jointFacts(filledWith('rings', { ...bare, stock: '1.60x2 / 1.65' }), emptyJob());
    expect(good?.selection).toMatchObject({ value: { best: { axes: [{ ring1Mm: 1.6, ring2Mm: 1.6 }] } } });
    const none = jointFacts(filledWith('rings', { ...bare, stock: '1.40' }), emptyJob());
    expect(none?.selection).toMatchObject({
      value: { best: null, pairSumMm: [[expect.closeTo(3.2, 9), expect.closeTo(3.24, 9)]] },
    });
    expect(jointFacts(filledWith('rings', bare), emptyJob())).toBeNull();
  });

  it('with play alone sits half the play off, both axes as a vector', () => {
    const facts = jointFacts(filledWith('end-play', { axis1: '0.06', axis2: '0.08', joint: 'rear' }, truck), truck);
    expect(facts?.offsetMm).toBeCloseTo(0.05, 9);
    expect(facts?.centring?.near.unbalanceGmm).toBeCloseTo(150, 6);
  });
});

describe('runout around the clock', () => {
  const wave = (size: number, high: number, count = 8): number[] =>
    Array.from({ length: count }, (_, place) => size * Math.cos(((360 * place) / count - high) * (Math.PI / 180)));
  const typed = (readings: readonly number[]): Texts =>
    Object.fromEntries(readings.map((mm, place) => [`at${(360 * place) / readings.length}`, String(mm + 1)]));

  it('is drawn with its high spot where it was put', () => {
    const readings = wave(0.1, 90);
    const fit = must(fitRunout(evenReadings(readings)));
    const picture = clockPicture(readings, fit);
    // 90° is to the right: clockwise from the top.
    expect(picture.highSpot[0] - MIDDLE).toBeCloseTo(96 * 0.96, 6);
    expect(picture.highSpot[1]).toBeCloseTo(MIDDLE, 6);
    expect(picture.readings[2]![0]).toBeCloseTo(picture.highSpot[0], 6);
  });

  it('foretells bolt positions with the flange that was kept before', () => {
    const flange = filledWith('runout', { place: 'companion-flange-radial', ...typed(wave(0.05, 0)) }).measurement!;
    const job = { ...truck, measurements: [flange] };
    const both = wave(0.05, 0).map((mm, place) => mm + wave(0.05, 90)[place]!);
    const facts = runoutFacts(filledWith('runout', { place: 'tube-rear', bolts: '4', ...typed(both) }, job), job);
    expect(facts?.others).toEqual(['companion-flange-radial']);
    expect(facts?.positions?.[0]).toMatchObject({ steps: 1, tirMm: expect.closeTo(0, 9) });
    expect(facts?.tube).toBeNull();
  });

  it('foretells the tire turned on its rim from both read around the clock', () => {
    const rim = filledWith('runout', { place: 'wheel-radial', ...typed(wave(0.3, 90)) }).measurement!;
    const job = { ...emptyJob(), measurements: [rim] };
    const tire = filledWith('runout', { place: 'tire-radial', ...typed(wave(0.8, 90)) }, job);
    expect(runoutFacts(tire, emptyJob())).toMatchObject({ isRadialWheel: true, match: null });
    expect(runoutFacts(tire, job)?.match).toMatchObject({
      apartDeg: expect.closeTo(180, 6),
      left: { measured: expect.closeTo(0.4, 6) },
    });
  });

  it('or with the shaft read again, turned on; and says where that was typed wrong', () => {
    const texts = {
      place: 'tube-rear',
      bolts: '4',
      ...typed(wave(0.05, 0).map((mm, place) => mm + wave(0.05, 90)[place]!)),
    };
    const turned = wave(0.05, 0)
      .map((mm, place) => (mm + wave(0.05, 180)[place]! + 1).toFixed(6))
      .join(' / ');
    const facts = runoutFacts(filledWith('runout', { ...texts, turned, turnedBy: '1' }), emptyJob());
    expect(facts?.positions?.[0]).toMatchObject({ steps: 1, tirMm: expect.closeTo(0, 5) });
    expect(runoutFacts(filledWith('runout', { ...texts, turned, turnedBy: '4' }), emptyJob())?.turnedWrong).toBe(true);
  });

  it('at four, six or twelve places is taken too', () => {
    const six = filledWith('runout', { stations: '6', place: 'tube-middle', ...typed(wave(0.1, 0, 6)) });
    expect(six.measurement).toMatchObject({ readingsMm: expect.objectContaining({ length: 6 }) });
    expect(runoutFacts(six, emptyJob())?.fit.runoutTirMm).toBeCloseTo(0.2, 9);
  });
});

describe('balancing', () => {
  const { measurement } = filledWith('balance-amplitudes', FOUR_RUN_TYPED);
  if (measurement?.kind !== 'balance-amplitudes') throw new Error('no measurement');
  const solved = must(balanceByAmplitudes(measurement));

  it('draws circles that meet where the correction goes, 253°', () => {
    const { circles, meeting } = circlePicture(measurement, solved);
    for (const { at, radius } of circles)
      expect(Math.hypot(meeting[0] - at[0], meeting[1] - at[1])).toBeCloseTo(radius, 4);
    const degrees = (Math.atan2(meeting[0] - MIDDLE, MIDDLE - meeting[1]) * 180) / Math.PI;
    expect((degrees + 360) % 360).toBeCloseTo(253, 4);
  });

  it('tells the correction with its uncertainty, where there is one', () => {
    expect(plain(correctionText(solved.correction, 'g·mm', 'metric'))).toBe('Add 667 g·mm at 253°');
    const unsure = { size: 667, angleDeg: 359.9, sizeSd: 12, angleSdDeg: 2.3 };
    expect(plain(correctionText(unsure, 'g·mm', 'metric'))).toBe('Add 667 g·mm at 0° (give or take 12 g·mm and 2.3°)');
  });

  it('splits over clamps, holes and weights at hand; says why where it cannot', () => {
    // R 80, w 60 → ±48.19°; holes at 72° and 144° for 100°: 58.43 and 39.49.
    const target = { weight: 80, angleDeg: 100 };
    const of = (texts: Texts) =>
      placingsOf(target, filledWith('balance-amplitudes', { ...FOUR_RUN_TYPED, ...texts }).entry);
    const [clamps, holes] = of({ clamp: '60', holes: '72/144' });
    expect(clamps?.placed.map(({ angleDeg }) => angleDeg)).toEqual([
      expect.closeTo(51.810315, 5),
      expect.closeTo(148.189685, 5),
    ]);
    expect(holes?.placed.map(({ weight }) => weight)).toEqual([
      expect.closeTo(58.432563, 5),
      expect.closeTo(39.490529, 5),
    ]);
    expect(placingText(holes!, 'g', 'metric').replaceAll('\u00a0', ' ')).toBe('58.4 g at 72° and 39.5 g at 144°');
    const [sites] = of({ sites: '60/100', weights: '40/80' });
    expect(sites).toMatchObject({ way: 'sites', placed: [{ weight: 80, angleDeg: 100 }], left: expect.closeTo(0, 9) });
    expect(of({ clamp: '30' })[0]?.problem).toMatch(/make at most 60/u);
    expect(of({ holes: '72' })[0]?.problem).toMatch(/two angles/u);
    expect(of({ sites: '0/60' })[0]?.problem).toMatch(/go together/u);
    expect(of({})).toEqual([]);
  });

  it('holds the unbalance to the standard: G 16, 9 kg, 3000 rev/min is 458 g·mm', () => {
    const figures = allowanceFigures(
      { massKg: 9, rpm: 3000, gradeMmps: 16, estimated: false },
      [458.366],
      [500, 500],
      'metric',
    );
    const texts = new Map(figures.map(([name, text]) => [plain(name), plain(text)]));
    expect(texts.get('Allowed in all')).toBe('458 g·mm');
    expect(texts.get('Allowed in each of two planes')).toBe('229 g·mm');
    expect(texts.get('Grade of the unbalance found')).toBe('G 16');
    // U·Ω² of 500 g·mm at 3000 rev/min.
    expect(texts.get('Force of the trial weight, 500 g·mm')).toBe('49.3 N');
    expect(texts.get('A first trial weight')).toBe('89.4 g·mm');
  });

  it('gives recordings their runs by name, and writes what was read into the fields', () => {
    const source = (name: string) => ({ source: { key: name, name, blob: new Blob([]) } });
    const files = withFiles([], ['b10.csv', 'b2.csv', 'a.csv', 'b1.csv'].map(source));
    expect(files.map(({ source: { name }, use }) => [name, use])).toEqual([
      ['a.csv', 'found'],
      ['b1.csv', 1],
      ['b2.csv', 2],
      ['b10.csv', 3],
    ]);
    const swapped: readonly TrialFile[] = withUse(files, 0, 2);
    expect(isComplete(files)).toBe(true);
    expect(isComplete(swapped)).toBe(false);
    expect(swapped.map(({ use }) => use)).toEqual([2, 1, null, 3]);
    const task = levelsTask(files, truck, 'driveshaft 1×');
    expect(task.of.job.runs.map(({ file, speedMps }) => [file, speedMps])).toEqual([
      ['a.csv', 25],
      ['b1.csv', 25],
      ['b2.csv', 25],
      ['b10.csv', 25],
    ]);
    const level = { run: '', frequencyHz: 50, amplitudeMps2: 0.04231, amplitudeSdMps2: 0.00112 };
    const typed = typedLevels(files, { axis: 'z', notes: [], levels: [level, level, level, level] });
    expect(typed).toEqual({
      base: '0.0423 ± 0.0011',
      level1: '0.0423 ± 0.0011',
      level2: '0.0423 ± 0.0011',
      level3: '0.0423 ± 0.0011',
    });
    expect(levelText(12.34, 0.5)).toBe('12.34 ± 0.50');
  });

  it('offers the job’s own runs, which keep the speed they were driven at', () => {
    const run = { file: 'slow.csv', speedMps: 20, stage: 'proof' as const };
    const job = { ...truck, runs: [...truck.runs, run] };
    const sourceOfRun = ({ file }: { file: string }) =>
      file === 'slow.csv' ? { key: file, name: file, blob: new Blob([]) } : null;
    const own = ownSources(job, [], sourceOfRun);
    expect(own.map(({ source: { name } }) => name)).toEqual(['slow.csv']);
    const files = withFiles([], own);
    expect(ownSources(job, files, sourceOfRun)).toEqual([]);
    expect(levelsTask(files, job, 'driveshaft 1×').of.job.runs).toEqual([
      { file: 'slow.csv', name: 'slow.csv', speedMps: 20 },
    ]);
  });
});

describe('critical speed', () => {
  it('is that of the vehicle’s own tube where nothing is typed: 6396 rev/min', () => {
    const facts = whirlFacts(filledWith('whirl', { topRpm: '5200' }, truck), truck)!;
    if (!facts.result.ok) throw new Error(facts.result.problem.message);
    expect(facts.result.value[0]?.criticalRpm).toBeCloseTo(6396.07, 1);
    expect(facts.complaintRpm).toBeCloseTo(3000, 6);
    expect(facts.result.value[0]?.atTopSpeed?.inside).toBe(false);
    // Critical speed goes with 1/L²: at this length top speed is at three quarters of it.
    expect(facts.longestMm[0]).toBeCloseTo(1524 * Math.sqrt((0.75 * 6396.07) / 5200), 1);
    expect(whirlScaleRpm(facts.result.value, 5200)).toBe(8000);
    expect(whirlFacts(filledWith('whirl', {}), emptyJob())).toBeNull();
    // A slip in what was typed is no reason to tell the speed of the tube the vehicle had.
    expect(whirlFacts(filledWith('whirl', { 'piece1.wall': '-4' }, truck), truck)).toBeNull();
  });

  it('takes top speed as a road speed: 50 m/s turns this shaft at 6000 rev/min', () => {
    expect(whirlFacts(filledWith('whirl', { topSpeed: '180 km/h' }, truck), truck)?.topRpm).toBeCloseTo(6000, 6);
  });
});

describe('what a measurement does to the causes', () => {
  it('is the difference between the job without it and with it', () => {
    const { measurement } = filledWith('end-play', { axis1: '0.2', axis2: '0.2', joint: 'rear' });
    const other = filledWith('end-play', { axis1: '0.01', axis2: '0.01', joint: 'front' }).measurement!;
    const [without, with_] = withoutAndWith({ ...truck, measurements: [measurement!, other] }, measurement!);
    expect(without.measurements).toEqual([other]);
    expect(with_.measurements).toEqual([other, measurement]);
    expect(isSame(other, measurement)).toBe(false);
    expect(isSame(measurement!, structuredClone(measurement))).toBe(true);
  });

  it('lists the likeliest first, leaves out what hardly counts, and nothing where the finding is gone', () => {
    const report = (...probabilities: readonly number[]): Report =>
      ({
        findings: [
          {
            label: 'driveshaft 1×',
            causes: probabilities.map((probability, id) => ({ id: `c${id}`, title: `cause ${id}`, probability })),
          },
        ],
      }) as unknown as Report;
    expect(shiftsOf(report(0.5, 0.2, 0.001), report(0.1, 0.6, 0.002), 'driveshaft 1×')).toEqual([
      { id: 'c1', title: 'cause 1', before: 0.2, after: 0.6 },
      { id: 'c0', title: 'cause 0', before: 0.5, after: 0.1 },
    ]);
    expect(shiftsOf(report(0.5), report(0.5), 'tire 1×')).toEqual([]);
  });
});

describe('a kept measurement', () => {
  it.each<Measurement>([
    {
      kind: 'working-angles',
      shafts: [
        { part: 'pinion', slopeDeg: -1.4, planDeg: 0.5 },
        { part: 'shaft', slopeDeg: 5.2 },
        { part: 'shaft', slopeDeg: 6 },
        { part: 'transfer-case', slopeDeg: 2 },
      ],
      phasingDeg: [0, 5],
      joints: ['cross', 'double-cardan', 'cross'],
      splitErrorDeg: [0, 0.2, 0],
      driveshaft: 'front-driveshaft',
      atRideHeight: false,
    },
    { kind: 'double-cardan', joint: 'center', halfAnglesDeg: [5, 4.5] },
    { kind: 'ride-height', axle: 'front', measuredMm: 400, specifiedMm: 412.5 },
    { kind: 'end-play', joint: 'front', axisPlayMm: [0.03, 0] },
    {
      kind: 'rings',
      joint: 'rear',
      axes: [{ grooveSpanMm: 81.85, crossAndCupsMm: 78.6, grooveOffsetMm: 0.02, ring1Mm: 1.55, ring2Mm: 1.65 }],
    },
    { kind: 'radial-play', place: 'center-bearing', playMm: 0.2 },
    { kind: 'runout', place: 'wheel-radial', tirMm: 0.4, wheelMaterial: 'alloy' },
    { kind: 'runout', place: 'tube-rear', readingsMm: [0, 0.1, -0.05, 0.02] },
    {
      kind: 'flange-reindex',
      boltCount: 4,
      levels: [
        { steps: 0, amplitudeMps2: 0.3 },
        { steps: 2, amplitudeMps2: 0.1 },
      ],
    },
    {
      kind: 'balance-amplitudes',
      part: 'tire',
      weightUnit: 'g·mm',
      baseline: { amplitude: 0.4, amplitudeSd: 0.01 },
      trialWeight: 500,
      positions: [
        { angleDeg: 0, amplitude: 0.57 },
        { angleDeg: 120, amplitude: 0.64, amplitudeSd: 0.02 },
        { angleDeg: 240, amplitude: 0.13 },
      ],
    },
    {
      kind: 'balance-phasors',
      part: 'driveshaft',
      weightUnit: 'g',
      baseline: [{ amplitude: 7, phaseDeg: 160, phaseSdDeg: 2 }],
      trials: [{ plane: 0, weight: 100, angleDeg: 0, readings: [{ amplitude: 5, phaseDeg: 70 }] }],
    },
    { kind: 'wheel-unbalance', innerG: 12, outerG: 5, radiusMm: 190 },
  ])('comes back into its form as it was kept: $kind', (measurement) => {
    const form = formOf(measurement.kind);
    for (const units of ['us', 'metric'] as const)
      expect(fillForm(form, reopened(form, {}, measurement), units).measurement).toEqual(measurement);
  });
});
