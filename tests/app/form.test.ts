import { describe, expect, it } from 'vitest';
import type { FieldSpec, JobDocument } from '../../src/app/form/document.ts';
import { emptyDocument, fieldState, leaveField, removeRun, typeInto } from '../../src/app/form/document.ts';
import { missingRecording } from '../../src/app/form/missing-recording.ts';
import { needsOf } from '../../src/app/form/needs.ts';
import { runFields } from '../../src/app/form/run-fields.ts';
import { mainFields, moreFields, parseTire, withYesNo, yesNoKeys, yesNoOf } from '../../src/app/form/vehicle-fields.ts';
import { readJob, writeJob } from '../../src/core/job/job-file.ts';
import { missingData } from '../../src/core/vehicle/missing-data.ts';
import type { Vehicle } from '../../src/core/vehicle/vehicle.ts';
import type { RecordingFacts } from '../../src/worker/recording-facts.ts';

const field = (id: string, document: JobDocument): FieldSpec => {
  const { layout } = document.job.vehicle;
  const all = [...mainFields(layout), ...moreFields(layout), ...Object.values(runFields(0))];
  const found = all.find((spec) => spec.id === id);
  if (!found) throw new Error(`no field ${id}`);
  return found;
};

const withOneRun: JobDocument = {
  ...emptyDocument(),
  job: { ...emptyDocument().job, runs: [{ file: 'a.csv' }] },
};

const facts = new Map<string, RecordingFacts>([
  ['a.csv', { key: 'k', name: 'a.csv', samplingRateHz: 400, durationS: 60, axes: 3, notes: [] }],
]);

function typed(id: string, text: string, units: 'us' | 'metric' = 'us'): JobDocument {
  return typeInto(withOneRun, field(id, withOneRun), text, units);
}

describe('fields take what people type', () => {
  it.each([
    ['265/70 r17', { kind: 'size', size: '265/70R17' }],
    ['2.36 m', { kind: 'rolling-circumference', circumferenceM: 2.36 }],
    ['680 rev/mile', { kind: 'revs-per-mile', revsPerMile: 680 }],
    ['423,7 per km', { kind: 'revs-per-km', revsPerKm: 423.7 }],
  ])('tires: %s', (text, expected) => {
    expect(parseTire(text)).toEqual({ ok: true, value: expected });
  });

  it('a bare speed is in the reader’s units, and any unit may be typed', () => {
    expect(typed('run.0.speedMps', '62').job.runs[0]?.speedMps).toBeCloseTo(27.71648, 6);
    expect(typed('run.0.speedMps', '100', 'metric').job.runs[0]?.speedMps).toBeCloseTo(100 / 3.6, 6);
    expect(typed('run.0.speedMps', '100 km/h').job.runs[0]?.speedMps).toBeCloseTo(100 / 3.6, 6);
  });

  it('a decimal comma is a decimal comma', () => {
    expect(typed('vehicle.axleRatio', '3,73').job.vehicle.axleRatio).toBe(3.73);
  });

  it('gear ratios and accessories are lists', () => {
    expect(typed('vehicle.gearRatios', '4.17 2.34, 1.52; 0.69').job.vehicle.gearRatios).toEqual([
      4.17, 2.34, 1.52, 0.69,
    ]);
    expect(typed('vehicle.accessories', 'alternator 2.8, water pump 1.2').job.vehicle.accessories).toEqual([
      { name: 'alternator', ratio: 2.8 },
      { name: 'water pump', ratio: 1.2 },
    ]);
  });

  it('shows 62 mph again after the field is left, without a digit lost', () => {
    const spec = field('run.0.speedMps', withOneRun);
    const left = leaveField(typed('run.0.speedMps', '62'), spec, 'us');
    expect(fieldState(left, spec, 'us')).toEqual({ text: '62 mph' });
    expect(fieldState(left, spec, 'metric').text).toBe('99.779 km/h');
  });

  it('keeps wrong text as it was typed, says why, and takes the entry out of the job', () => {
    const spec = field('vehicle.axleRatio', withOneRun);
    const wrong = leaveField(typed('vehicle.axleRatio', '373'), spec, 'us');
    expect(wrong.job.vehicle.axleRatio).toBeUndefined();
    expect(fieldState(wrong, spec, 'us')).toMatchObject({ text: '373', message: expect.stringContaining('373') });
  });

  it.each([
    ['vehicle.cylinders', 'eight', '"eight" is not a number of cylinders.', 'Write it like 8.'],
    ['vehicle.axleRatio', 'long', '"long" is not an axle ratio.', 'Write it like 3.73.'],
    ['vehicle.pinionTeeth', '3', '"3" is outside what is possible for a number of teeth.', 'Write it like 11.'],
    ['run.0.engineRpm', 'idle', '"idle" is not an engine speed.', 'Write it like 1850 rpm.'],
    ['run.0.engineRpm', '50 km/h', '"km/h" is not a unit of turning speed.', 'Write it like 1850 rpm.'],
    ['run.0.gearRatio', 'third', '"third" is not a gear ratio.', 'Write it like 0.70.'],
  ])('%s: %s is refused in words and with an example of its own', (id, text, message, remedy) => {
    const spec = field(id, withOneRun);
    expect(fieldState(typed(id, text), spec, 'us')).toEqual({ text, message, remedy });
  });

  it.each(['8', 'V8', 'v-8', '8 cyl', '8 cyl.', '8 cylinders', 'V8 cyl', 'straight 8'])('cylinders: %s', (text) => {
    expect(typed('vehicle.cylinders', text).job.vehicle.cylinders).toBe(8);
  });

  it.each(['41/11', '41:11'])('an axle ratio of tooth counts, %s, is shown as short as one is read', (text) => {
    const spec = field('vehicle.axleRatio', withOneRun);
    const left = leaveField(typed('vehicle.axleRatio', text), spec, 'us');
    expect(left.job.vehicle.axleRatio).toBeCloseTo(41 / 11, 12);
    expect(fieldState(left, spec, 'us')).toEqual({ text: '3.727' });
    expect(fieldState(typeInto(left, spec, '3.7272', 'us'), spec, 'us')).toEqual({ text: '3.7272' });
  });

  it('a road speed of 0 is refused unless the vehicle stood', () => {
    const spec = field('run.0.speedMps', withOneRun);
    const zero = typed('run.0.speedMps', '0');
    expect(zero.job.runs[0]?.speedMps).toBeUndefined();
    expect(fieldState(zero, spec, 'us')).toMatchObject({
      message: 'At a road speed of 0 the vehicle stands.',
      remedy: expect.stringContaining('Standing'),
    });
    const stood = { ...zero, job: { ...zero.job, runs: [{ file: 'a.csv', load: 'standing' as const }] } };
    expect(fieldState(stood, spec, 'us').message).toBeUndefined();
  });

  it('a part of the recording that ends before it begins is refused, whichever time was written last', () => {
    const [from, to] = [field('run.0.fromS', withOneRun), field('run.0.toS', withOneRun)];
    const late = leaveField(typed('run.0.fromS', '30'), from, 'us');
    const wrong = leaveField(typeInto(late, to, '10', 'us'), to, 'us');
    expect(fieldState(wrong, to, 'us')).toMatchObject({ text: '10 s', message: expect.stringContaining('before') });
    expect(needsOf(wrong, facts, 'us').blocker).toContain('Use up to');
    const right = typeInto(wrong, from, '5', 'us');
    expect(fieldState(right, to, 'us')).toEqual({ text: '10 s' });
    expect(right.job.runs[0]).toMatchObject({ fromS: 5, toS: 10 });
  });

  it('refuses half a cylinder', () => {
    const spec = field('vehicle.cylinders', withOneRun);
    expect(fieldState(typed('vehicle.cylinders', '7.5'), spec, 'us').message).toContain('whole number');
  });

  it('an emptied field takes its entry out of the job', () => {
    const spec = field('vehicle.axleRatio', withOneRun);
    const filled = typed('vehicle.axleRatio', '3.73');
    expect('axleRatio' in typeInto(filled, spec, '', 'us').job.vehicle).toBe(false);
  });

  it('a removed run takes its half-typed text with it', () => {
    const wrong = typed('run.0.speedMps', 'fast');
    expect(removeRun(wrong, 0)).toMatchObject({ typed: {}, job: { runs: [] } });
  });
});

describe('questions of yes or no', () => {
  const vehicle: Vehicle = { layout: 'rear-drive' };

  it('are those the answer asks for, and an electric car is not asked for a torque converter', () => {
    const asked = missingData(vehicle, { speedMps: 27, gearRatio: 1 }).map(({ key }) => key);
    expect(asked).toContain('vehicle.converter');
    expect(yesNoKeys('rear-drive')).toContain('converter');
    expect(yesNoKeys('electric')).not.toContain('converter');
  });

  it('are answered into the job, and read from it', () => {
    const no = withYesNo(vehicle, 'converter', 'no');
    expect(missingData(no, { speedMps: 27, gearRatio: 1 }).map(({ key }) => key)).not.toContain('vehicle.converter');
    const written = writeJob({ ...emptyDocument().job, vehicle: withYesNo(no, 'tripodJoints', 'yes') });
    const reopened = readJob(written, 'a.job.json');
    expect(reopened).toMatchObject({ ok: true, value: { vehicle: { converter: false, tripodJoints: true } } });
    expect(yesNoOf(no, 'converter')).toBe('no');
    expect(yesNoOf(no, 'tripodJoints')).toBe('');
    expect(withYesNo(no, 'converter', '')).toEqual(vehicle);
  });
});

describe('what is missing', () => {
  it('is told in the order that matters, and only where it would change the answer', () => {
    const { blocker, wishes } = needsOf(withOneRun, facts, 'us');
    expect(blocker).toBeNull();
    expect(wishes).toEqual([
      'Without the tire size and the road speed no part can be named, only frequencies.',
      'Also missing: axle ratio, gear ratio or engine speed, cylinders.',
    ]);
  });

  it('is not said of what was typed and cannot be understood yet', () => {
    const { wishes } = needsOf(typed('vehicle.axleRatio', 'x'), facts, 'us');
    expect(wishes.join(' ')).not.toContain('axle ratio');
  });

  it('names a recording that was not opened, at once', () => {
    const missing = new Map([['a.csv', { ...facts.get('a.csv')!, problem: missingRecording('a.csv') }]]);
    const needs = needsOf(withOneRun, missing, 'us');
    expect(needs.isToldAtOnce).toBe(true);
    expect(needs.blocker).toBe('a.csv is not opened yet: open it, or remove its run.');
    expect(needsOf(withOneRun, facts, 'us').isToldAtOnce).toBe(false);
  });

  it('asks for no speed where the recording holds it, and for no axle ratio on a front drive', () => {
    const logged = new Map([['a.csv', { ...facts.get('a.csv')!, loggedSpeedMps: 25 }]]);
    const front = { ...withOneRun, job: { ...withOneRun.job, vehicle: { layout: 'front-drive' as const } } };
    const { wishes } = needsOf(front, logged, 'us');
    expect(wishes.some((wish) => wish.includes('road speed'))).toBe(false);
    expect(wishes.some((wish) => wish.includes('axle ratio'))).toBe(false);
  });

  it('names every field that must be put right, each once, as they stand on the screen', () => {
    const { job } = withOneRun;
    const twoRuns = { ...job, runs: [...job.runs, ...job.runs.map((run) => ({ ...run, file: 'b.csv' }))] };
    const texts = { 'vehicle.axleRatio': 'x', 'run.0.speedMps': 'fast', 'run.1.speedMps': 'fast' };
    expect(needsOf({ ...withOneRun, job: twoRuns, typed: texts }, facts, 'us').blocker).toBe(
      'To be put right first: Road speed, Axle ratio.',
    );
  });

  it('blocks on a field that cannot be understood, on a recording being read, and on one that cannot be read', () => {
    expect(needsOf(typed('vehicle.axleRatio', 'x'), facts, 'us').blocker).toContain('Axle ratio');
    expect(needsOf(withOneRun, new Map(), 'us').blocker).toContain('being read');
    const problem = { code: 'x', message: 'm', remedy: 'r' };
    const bad = new Map([['a.csv', { ...facts.get('a.csv')!, problem }]]);
    expect(needsOf(withOneRun, bad, 'us').blocker).toContain('cannot be read');
    expect(needsOf(emptyDocument(), facts, 'us').blocker).toContain('Open a recording');
  });
});
