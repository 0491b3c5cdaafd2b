import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import type { Problem } from '../../../src/core/note.ts';
import { readJob, writeJob } from '../../../src/core/job/job-file.ts';
import type { Job } from '../../../src/core/job/job.ts';
import { anyJob } from './arbitrary-job.ts';
import { must } from '../../support/must.ts';

const jobOf = (text: string): Job => must(readJob(text, 'a.job.json'));
const problemOf = (text: string): Problem => {
  const result = readJob(text, 'a.job.json');
  if (result.ok) throw new Error('read without a problem');
  return result.problem;
};
/** A job file that is right but for what is put in; the vehicle stands on line 3, the runs on line 4. */
const file = (vehicle: string, rest = '"runs": []'): string =>
  `{\n"schemaVersion": 1,\n"vehicle": {${vehicle}},\n${rest}\n}`;
const rear = '"layout": "rear-drive"';

describe('reading', () => {
  test('the example in the README is a job file', () => {
    const readme = readFileSync(new URL('../../../src/core/job/README.md', import.meta.url), 'utf8');
    const example = /```json\n([\s\S]*?)```/u.exec(readme)?.[1] ?? '';
    const job = jobOf(example);
    expect(job.vehicle.tire).toEqual({ kind: 'size', size: '265/70R17' });
    expect(job.vehicle.driveshaftPieces?.[0]).toMatchObject({ lengthMm: 1524, wallMm: 2.1 });
    expect(job.vehicle.driveshaftPieces?.[0]?.massKg).toBeCloseTo(9.0718474, 9);
    expect(job.runs[0]?.speedMps).toBeCloseTo(27.71648, 9);
    expect(job.runs[1]?.engineRpm).toBe(700);
    expect(job.measurements[0]).toMatchObject({ kind: 'end-play' });
    expect(job.measurements[0]?.kind === 'end-play' ? job.measurements[0].axisPlayMm[0] : NaN).toBeCloseTo(0.1016, 12);
    expect(job.measurements[1]?.kind === 'runout' ? job.measurements[1].tirMm : NaN).toBeCloseTo(0.508, 12);
    expect(job).not.toHaveProperty('unknownKeys');
    expect(jobOf(writeJob(job))).toEqual(job);
  });

  test('only the layout is needed; lists that are left out are empty', () => {
    expect(jobOf(file(rear, '"title": "A"'))).toEqual({
      schemaVersion: 2,
      title: 'A',
      vehicle: { layout: 'rear-drive' },
      work: [],
      runs: [],
      measurements: [],
    });
  });

  test('a number stands in the unit of its key, or the key is bare and the text has the unit', () => {
    const runs = (run: string): number | undefined =>
      jobOf(file(rear, `"runs": [{"file": "a.csv", ${run}}]`)).runs[0]?.speedMps;
    expect(runs('"speedMps": 27.5')).toBe(27.5);
    expect(runs('"speedMps": "99 km/h"')).toBeCloseTo(27.5, 12);
    expect(runs('"speed": "99 km/h"')).toBeCloseTo(27.5, 12);
    expect(runs('"speed": "99,0 km/h"')).toBeCloseTo(27.5, 12);
  });

  test('the tire may be written short', () => {
    const tire = (text: string): unknown => jobOf(file(`${rear}, "tire": ${text}`)).vehicle.tire;
    expect(tire('"265/70R17"')).toEqual({ kind: 'size', size: '265/70R17' });
    expect(tire('"2.36 m"')).toEqual({ kind: 'rolling-circumference', circumferenceM: 2.36 });
    expect(tire('"92.9 in"')).toEqual({ kind: 'rolling-circumference', circumferenceM: 2.35966 });
    expect(tire('{"kind": "rolling-circumference", "circumference": "2360 mm"}')).toEqual({
      kind: 'rolling-circumference',
      circumferenceM: 2.36,
    });
    expect(tire('{"kind": "revs-per-mile", "revsPerMile": 680}')).toEqual({ kind: 'revs-per-mile', revsPerMile: 680 });
  });

  test('null counts as not given', () => {
    expect(jobOf(file(`${rear}, "axleRatio": null`, '"runs": null')).vehicle).toEqual({ layout: 'rear-drive' });
  });

  test('a byte order mark and Windows line ends do no harm, and lines are counted right', () => {
    const text = file(rear).replaceAll('\n', '\r\n');
    expect(jobOf(`\uFEFF${text}`).vehicle.layout).toBe('rear-drive');
    expect(problemOf(`\uFEFF${file('"layout": "x"').replaceAll('\n', '\r\n')}`)).toMatchObject({ line: 3, column: 13 });
  });
});

describe('keys the program does not know', () => {
  const text = file(
    `${rear}, "paint": {"colour": "red"}, "driveshaftPieces": [{"maker": "own", "massKg": 9}]`,
    '"runs": [{"file": "a.csv", "weather": "dry"}], "shop": {"bay": 3}, "measurements": [{"kind": "observation", "checkId": "a", "outcome": "fine", "by": "bay 3"}]',
  );
  test('are kept at every level, and written again', () => {
    const job = jobOf(text);
    expect(job.unknownKeys).toEqual({ shop: { bay: 3 } });
    expect(job.vehicle).toMatchObject({ paint: { colour: 'red' }, driveshaftPieces: [{ maker: 'own', massKg: 9 }] });
    expect(job.runs[0]).toMatchObject({ weather: 'dry' });
    expect(job.measurements[0]).toMatchObject({ by: 'bay 3' });
    expect(jobOf(writeJob(job))).toEqual(job);
    expect(JSON.parse(writeJob(job))).toMatchObject({ shop: { bay: 3 }, vehicle: { paint: { colour: 'red' } } });
  });
  test('stay with their run when runs change places', () => {
    const job = jobOf(file(rear, '"runs": [{"file": "a", "weather": "dry"}, {"file": "b", "weather": "wet"}]'));
    const turned = jobOf(writeJob({ ...job, runs: job.runs.toReversed() }));
    expect(turned.runs).toEqual([
      { file: 'b', weather: 'wet' },
      { file: 'a', weather: 'dry' },
    ]);
  });
  test('cannot reach the prototype of anything', () => {
    const job = jobOf(file(`${rear}, "__proto__": {"axleRatio": 9}`, '"__proto__": {"title": "x"}, "constructor": 1'));
    expect(job.vehicle.axleRatio).toBeUndefined();
    expect(job.title).toBeUndefined();
    expect(writeJob(job)).toContain('"__proto__": {');
    expect(({} as Record<string, unknown>)['axleRatio']).toBeUndefined();
  });
  test('cannot take the place of a known key when written', () => {
    const job: Job = { ...jobOf(file(rear)), title: 'kept', unknownKeys: { title: 'lost', vehicle: 1, extra: 2 } };
    expect(JSON.parse(writeJob(job))).toMatchObject({ title: 'kept', vehicle: { layout: 'rear-drive' }, extra: 2 });
  });
});

describe('a damaged file is refused with file, line, column and key, and what to do', () => {
  test.each([
    ['', 1, 1, undefined, 'expected a value but found the end of the file'],
    ['   ', 1, 3, undefined, 'expected a value but found the end of the file'],
    ['{\n"vehicle": {', 2, 12, 'vehicle', 'expected a key in double quotes but found the end of the file'],
    ['{\n"vehicle": {"layout": "rear-drive",}\n}', 2, 36, 'vehicle', 'expected a key in double quotes but found "}"'],
    ["{\n'vehicle': 1}", 2, 1, undefined, 'expected a key in double quotes but found "\'"'],
    ['{\n"vehicle" {}}', 2, 11, 'vehicle', 'expected a colon but found "{"'],
    ['{"runs": [\n{} {}]}', 2, 4, 'runs', 'expected a comma or a closing bracket but found "{"'],
    ['{"title": "a"\n"notes": "b"}', 2, 1, undefined, 'expected a comma or a closing brace but found """'],
    ['{"vehicle":\nNaN}', 2, 1, 'vehicle', 'expected a value but found "N"'],
    ['{"vehicle":\n01}', 2, 1, 'vehicle', 'expected a value but found "0"'],
    ['{}\n{}', 2, 1, undefined, 'expected the end of the file but found "{"'],
    ['{"a": 1,\n"a": 2}', 2, 1, 'a', 'the key "a" stands here twice'],
    ['{"title": "a\nb"}', 1, 11, 'title', 'expected a value but found """'],
  ])('%j', (text, line, column, key, found) => {
    const problem = problemOf(text);
    expect(problem).toMatchObject({ code: 'job-not-json', file: 'a.job.json', line, column });
    expect(problem.key).toBe(key);
    expect(problem.message).toBe(`The file is not a job file that can be read: ${found}.`);
    expect(problem.remedy).toBe('Correct this place with a text editor, or take an earlier copy of the file.');
  });

  test.each([
    ['[]', 'The file holds a list where a job is expected.'],
    ['null', 'The file holds null where a job is expected.'],
    ['"vehicle"', 'The file holds "vehicle" where a job is expected.'],
    ['12', 'The file holds 12 where a job is expected.'],
  ])('%s is JSON but no job', (text, message) => {
    expect(problemOf(text)).toMatchObject({ code: 'job-key', line: 1, message });
  });

  test('nesting without end, and a file that is far too large, are refused at once', () => {
    expect(problemOf('['.repeat(200_000)).message).toContain('values are nested too deeply');
    expect(problemOf(' '.repeat(5_000_001))).toMatchObject({ code: 'job-too-large' });
  });
});

describe('a wrong value is refused with its key and line', () => {
  test.each([
    ['{}', 'vehicle', 1, 'vehicle: it is missing.'],
    [file(''), 'vehicle.layout', 3, 'vehicle.layout: it is missing.'],
    [file('"layout": "rwd"'), 'vehicle.layout', 3, 'vehicle.layout: "rwd" is not one of the known words.'],
    [file(`${rear},\n"axleRatio": "abc"`), 'vehicle.axleRatio', 4, 'vehicle.axleRatio: "abc" is not a ratio.'],
    [
      file(`${rear},\n"axleRatio": 373`),
      'vehicle.axleRatio',
      4,
      'vehicle.axleRatio: 373 is outside what is possible for this ratio.',
    ],
    [
      file(`${rear},\n"axleRatio": [3.73]`),
      'vehicle.axleRatio',
      4,
      'vehicle.axleRatio: a ratio is expected, but it holds a list.',
    ],
    [
      file(`${rear},\n"cylinders": 5.5`),
      'vehicle.cylinders',
      4,
      'vehicle.cylinders: a whole number is expected, but it holds 5.5.',
    ],
    [
      file(`${rear},\n"converter": "yes"`),
      'vehicle.converter',
      4,
      'vehicle.converter: true or false is expected, but it holds "yes".',
    ],
    [
      file(`${rear},\n"description": 7`),
      'vehicle.description',
      4,
      'vehicle.description: a text is expected, but it holds 7.',
    ],
    [
      file(`${rear},\n"gearRatios": [1,\n"x"]`),
      'vehicle.gearRatios[1]',
      5,
      'vehicle.gearRatios[1]: "x" is not a ratio.',
    ],
    [
      file(`${rear},\n"gearRatios": 1`),
      'vehicle.gearRatios',
      4,
      'vehicle.gearRatios: a list is expected, but it holds 1.',
    ],
    [
      file(`${rear},\n"tire": {"kind": "size",\n"size": "265/70"}`),
      'vehicle.tire.size',
      5,
      'vehicle.tire.size: "265/70" is not a tire size that could be read: the width 265 mm and the ratio 70 % were understood, but the rim is missing.',
    ],
    [
      file(`${rear},\n"tire": "round"`),
      'vehicle.tire',
      4,
      'vehicle.tire: "round" is not a tire size that could be read.',
    ],
    [
      file(`${rear},\n"tire": {"kind": "square"}`),
      'vehicle.tire.kind',
      4,
      'vehicle.tire.kind: "square" is not a known kind.',
    ],
    [file(`${rear},\n"tire": 17`), 'vehicle.tire', 4, 'vehicle.tire: an object is expected, but it holds 17.'],
    [file(rear, '"runs": [\n{}]'), 'runs[0].file', 5, 'runs[0].file: it is missing.'],
    [file(rear, '"runs": [\n{"file": " "}]'), 'runs[0].file', 5, 'runs[0].file: it is empty.'],
    [file(rear, '"runs": [{"file": "a",\n"speed": 62}]'), 'runs[0].speed', 5, 'runs[0].speed: 62 has no unit.'],
    [
      file(rear, '"runs": [{"file": "a",\n"speedMps": "62"}]'),
      'runs[0].speedMps',
      5,
      'runs[0].speedMps: "62" has no unit, so the speed is not known.',
    ],
    [
      file(rear, '"runs": [{"file": "a", "speedMps": 27,\n"speed": "62 mph"}]'),
      'runs[0].speed',
      5,
      'runs[0].speed: it is given twice, also as speedMps.',
    ],
    [
      file(rear, '"runs": [{"file": "a",\n"speedMps": 1e999}]'),
      'runs[0].speedMps',
      5,
      'runs[0].speedMps: a number too large to be held is outside what is possible for this speed.',
    ],
    [file(rear, '"shop": {"bay":\n1e999}'), 'shop.bay', 5, 'shop.bay: the number "1e999" is too large to be kept.'],
    [file(rear, '"work": [\n"polished"]'), 'work[0]', 5, 'work[0]: "polished" is not one of the known words.'],
    [
      file(rear, '"measurements": [\n{"kind": "guess"}]'),
      'measurements[0].kind',
      5,
      'measurements[0].kind: "guess" is not a known kind.',
    ],
    [
      file(rear, '"measurements": [{"kind": "end-play", "joint": "rear",\n"axisPlayMm": [0.05]}]'),
      'measurements[0].axisPlayMm',
      5,
      'measurements[0].axisPlayMm: two values are expected, but it holds 1.',
    ],
    [
      file(rear, '"measurements": [{"kind": "end-play", "joint": "rear",\n"axisPlay": [0.05, 0.05]}]'),
      'measurements[0].axisPlay',
      5,
      'measurements[0].axisPlay: a list has no unit.',
    ],
    [file(rear, '"title": {}'), 'title', 4, 'title: a text is expected, but it holds an object.'],
  ])('%j', (text, key, line, message) => {
    const problem = problemOf(text);
    expect(problem).toMatchObject({ code: 'job-key', file: 'a.job.json', key, line });
    expect(problem.message).toBe(message);
    expect(problem.remedy).toMatch(/^[A-Z].*\.$/u);
  });

  test('the remedy names the known words, the range, or the key to use', () => {
    expect(problemOf(file('"layout": "rwd"')).remedy).toBe(
      'Write one of: rear-drive, front-drive, four-wheel-drive, electric.',
    );
    expect(problemOf(file(`${rear}, "axleRatio": 373`)).remedy).toBe('Write a number from 0.5 to 30, like 3.73.');
    expect(problemOf(file(rear, '"runs": [{"file": "a", "speed": 62}]')).remedy).toBe(
      'Write it as a text with its unit, or name the key speedMps.',
    );
  });

  test.each([
    ['"axleRatio"', 0.5, 30],
    ['"frontAxleRatio"', 0.5, 30],
    ['"finalDrive"', 0.5, 60],
    ['"transferRatio"', 0.5, 10],
    ['"cylinders"', 1, 24],
    ['"pinionTeeth"', 1, 200],
    ['"ringTeeth"', 1, 400],
    ['"polePairs"', 1, 100],
  ])('%s is taken from %d to %d, ends included', (key, least, most) => {
    const read = (value: number): boolean => readJob(file(`${rear}, ${key}: ${value}`), 'a.job.json').ok;
    expect([read(least), read(most)]).toEqual([true, true]);
    expect([read(least - 0.01), read(least - 1), read(most + 0.01), read(most + 1)]).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });

  test.each([
    ['"speedMps"', 0, 150],
    ['"engineRpm"', 0, 30_000],
    ['"gearRatio"', 0.2, 40],
    ['"samplingRateHz"', 0.1, 10_000_000],
    ['"fromS"', 0, 345_600],
    ['"toS"', 0, 345_600],
  ])('of a run, %s is taken from %d to %d, ends included', (key, least, most) => {
    const read = (value: number): boolean =>
      readJob(file(rear, `"runs": [{"file": "a", ${key}: ${value}}]`), 'a.job.json').ok;
    expect([read(least), read(most)]).toEqual([true, true]);
    expect([read(least - 0.01), read(most + 1)]).toEqual([false, false]);
  });

  test('the unit of a run’s acceleration is taken in either spelling of the square', () => {
    const unitOf = (unit: string): unknown => {
      const job = readJob(file(rear, `"runs": [{"file": "a", "accelerationUnit": ${unit}}]`), 'a.job.json');
      return job.ok ? job.value.runs[0]!.accelerationUnit : job.problem;
    };
    expect(['"g"', '"mg"', '"m/s²"', '"m/s2"', '"M/s^2"', '"mm/s2"'].map(unitOf)).toEqual([
      'g',
      'mg',
      'm/s²',
      'm/s²',
      'm/s²',
      'mm/s²',
    ]);
    for (const unit of ['"counts"', '"ft/s2"', '9.8'])
      expect(unitOf(unit)).toMatchObject({
        code: 'job-key',
        key: 'runs[0].accelerationUnit',
        remedy: 'Write one of: g, mg, m/s², mm/s².',
      });
  });

  test('a long wrong value is cut in the sentence', () => {
    expect(problemOf(file(`"layout": "${'x'.repeat(5000)}"`)).message.length).toBeLessThan(150);
  });
});

describe('schema versions', () => {
  test('a newer one is refused and told that the file is unchanged', () => {
    const problem = problemOf('{\n"schemaVersion": 3, "vehicle": {"layout": "hover"}}');
    expect(problem).toMatchObject({ code: 'job-newer', line: 2, key: 'schemaVersion' });
    expect(problem.message).toBe('The file has schema version 3; this program knows versions up to 2.');
    expect(problem.remedy).toBe('Open it with a newer version of the program. The file was not changed.');
  });
  test.each(['"1"', '1.5', '-1', '[]'])('%s is no version', (version) => {
    expect(problemOf(`{"schemaVersion": ${version}}`)).toMatchObject({ code: 'job-key', key: 'schemaVersion' });
  });

  const old = `{
    "units": "us",
    "vehicle": {"layout": "rear-drive", "tireSize": "265/70R17", "axle": 3.73, "gears": [1, 0.69]},
    "runs": [{"recording": "a.csv", "speed": 62, "source": "gps", "gear": 0.69, "rpm": 1850}]
  }`;
  test('version 0 with its short names and one unit for all is migrated', () => {
    const job = jobOf(old);
    expect(job.schemaVersion).toBe(2);
    expect(job.vehicle).toEqual({
      layout: 'rear-drive',
      tire: { kind: 'size', size: '265/70R17' },
      axleRatio: 3.73,
      gearRatios: [1, 0.69],
    });
    expect(job.runs).toEqual([
      { file: 'a.csv', speedMps: 27.71648, speedSource: 'gps', gearRatio: 0.69, engineRpm: 1850 },
    ]);
    expect(job).not.toHaveProperty('unknownKeys');
    expect(jobOf(old.replace('"us"', '"metric"')).runs[0]?.speedMps).toBeCloseTo(17.2222222, 6);
    expect(JSON.parse(writeJob(job))).toMatchObject({ schemaVersion: 2 });
  });
  test('a bare speed without a unit for all is refused, on the line of its old name', () => {
    expect(problemOf(old.replace('"units": "us",', ''))).toMatchObject({ key: 'runs[0].speed', line: 4 });
    expect(problemOf(old.replace('3.73', '"x"'))).toMatchObject({ key: 'vehicle.axleRatio', line: 3, column: 66 });
  });
  test('version 1 spelled the center the other way: work, joints, places, checks and limits are migrated', () => {
    const said = (center: string): string => `
      "work": ["joint-replaced-${center}", "${center}-bearing-replaced", "shaft-removed"],
      "measurements": [
        {"kind": "end-play", "joint": "${center}", "axisPlayMm": [0.02, 0.03]},
        {"kind": "radial-play", "place": "${center}-bearing", "playMm": 0.4},
        {"kind": "observation", "checkId": "${center}-bearing-inspection", "outcome": "fine", "note": "centre worn"}
      ],
      "limits": {"${center}-bearing-play": {"value": 0.3}, "end-play": {"value": 0.1}}`;
    const job = jobOf(file(rear, said('centre')));
    expect(job).toEqual(jobOf(file(rear, said('center')).replace('"schemaVersion": 1', '"schemaVersion": 2')));
    expect(job.work).toContain('center-bearing-replaced');
    expect(job.limits).toEqual({ 'center-bearing-play': { value: 0.3 }, 'end-play': { value: 0.1 } });
    expect(job.measurements[2]).toMatchObject({ checkId: 'center-bearing-inspection', note: 'centre worn' });
  });
  test('of one limit under both spellings the new one counts', () => {
    const both = '"limits": {"centre-bearing-play": {"value": 0.3}, "center-bearing-play": {"value": 0.4}}';
    expect(jobOf(file(rear, both)).limits).toMatchObject({ 'center-bearing-play': { value: 0.4 } });
  });
  test('in version 1 the short names are unknown keys like any other', () => {
    const job = jobOf(file(`${rear}, "axle": 3.73`));
    expect(job.vehicle).toEqual({ layout: 'rear-drive', axle: 3.73 });
  });
  test('a present name wins over its old one, which is kept', () => {
    const job = jobOf('{"vehicle": {"layout": "rear-drive", "axle": 4.1, "axleRatio": 3.73}}');
    expect(job.vehicle).toEqual({ layout: 'rear-drive', axle: 4.1, axleRatio: 3.73 });
  });
  test('units of another kind are kept as an unknown key', () => {
    expect(jobOf('{"units": "imperial", "vehicle": {"layout": "electric"}}').unknownKeys).toEqual({
      units: 'imperial',
    });
  });
});

describe('properties', () => {
  test('a job that is written is read as the same job', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        expect(jobOf(writeJob(job))).toEqual(job);
      }),
      { numRuns: 200 },
    );
  });

  test('a file cut anywhere is refused with its place, or is whole', () => {
    fc.assert(
      fc.property(anyJob, fc.nat(), (job, cut) => {
        const text = writeJob(job);
        const result = readJob(text.slice(0, cut % text.length), 'a.job.json');
        if (result.ok) expect(result.value).toEqual(job);
        else expect(result.problem).toMatchObject({ code: 'job-not-json', line: expect.any(Number) as number });
      }),
      { numRuns: 100 },
    );
  });

  test('no text makes it throw, and every problem has file, line, sentence and remedy', () => {
    const mutated = fc
      .tuple(anyJob, fc.nat(), fc.nat({ max: 20 }), fc.string({ unit: 'binary', maxLength: 5 }))
      .map(([job, at, length, text]) => {
        const whole = writeJob(job);
        const start = at % whole.length;
        return whole.slice(0, start) + text + whole.slice(start + length);
      });
    const values = fc.json({ maxDepth: 4 }).map((value) => `{"vehicle": ${value}, "runs": ${value}, "work": ${value}}`);
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.json(), values, mutated), (text) => {
        const result = readJob(text, 'a.job.json');
        if (result.ok) return;
        expect(result.problem.file).toBe('a.job.json');
        expect(result.problem.line).toBeGreaterThanOrEqual(1);
        expect(result.problem.message).toMatch(/\.$/u);
        expect(result.problem.remedy.length).toBeGreaterThan(5);
      }),
      { numRuns: 500 },
    );
  });
});
