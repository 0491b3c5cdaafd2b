import { describe, expect, test } from 'vitest';
import { expectedLines } from '../../../src/core/vehicle/expected-lines.ts';
import { missingData } from '../../../src/core/vehicle/missing-data.ts';
import { vehicleNotes } from '../../../src/core/vehicle/vehicle-notes.ts';
import { without } from './without.ts';
import type { RunCondition, Vehicle } from '../../../src/core/vehicle/vehicle.ts';

const keys = (vehicle: Vehicle, condition: RunCondition): string[] =>
  missingData(vehicle, condition).map((datum) => datum.key);

const full: Vehicle = {
  layout: 'rear-drive',
  tire: { kind: 'size', size: '265/70R17' },
  axleRatio: 3.73,
  cylinders: 8,
  converter: true,
};
const driven: RunCondition = { speedMps: 27, speedSource: 'gps', load: 'cruise', gearRatio: 0.69 };

describe('what is missing', () => {
  test('nothing, where all that matters was given', () => {
    expect(missingData(full, driven)).toEqual([]);
  });
  test('out of gear, no gear is asked for', () => {
    const [datum] = missingData(full, { ...driven, load: 'neutral' });
    expect(datum).toMatchObject({ key: 'run.engineRpm' });
    expect(datum?.text).not.toContain('the gear in use');
    expect(datum?.text).toContain('idle');
  });
  test('everything, of a bare vehicle, with what blocks a line first', () => {
    expect(keys({ layout: 'rear-drive' }, {})).toEqual([
      'run.speedMps',
      'vehicle.tire',
      'vehicle.axleRatio',
      'run.engineRpm',
      'run.load',
      'vehicle.cylinders',
    ]);
  });
  test.each<[string, Vehicle, RunCondition, string]>([
    ['the speed source where it is a dial', full, { ...driven, speedSource: 'dial' }, 'run.speedSource'],
    ['the speed source where none was told', full, { speedMps: 27, load: 'cruise', gearRatio: 1 }, 'run.speedSource'],
    [
      'the front axle ratio of a four-wheel drive',
      { ...full, layout: 'four-wheel-drive' },
      driven,
      'vehicle.frontAxleRatio',
    ],
    [
      'the reduction of an electric drive',
      { layout: 'electric', tire: { kind: 'size', size: '265/70R17' } },
      driven,
      'vehicle.finalDrive',
    ],
    [
      'tooth counts that do not make the ratio',
      { ...full, ringTeeth: 41, pinionTeeth: 10 },
      driven,
      'vehicle.ringTeeth',
    ],
    [
      'the converter',
      { layout: 'rear-drive', tire: { kind: 'size', size: '265/70R17' }, axleRatio: 3.73, cylinders: 8 },
      driven,
      'vehicle.converter',
    ],
  ])('%s', (_, vehicle, condition, key) => {
    expect(keys(vehicle, condition)).toEqual([key]);
  });
  test('an electric drive is not asked for cylinders, a standing vehicle not for its speed', () => {
    expect(keys({ layout: 'electric', tire: { kind: 'size', size: '265/70R17' }, finalDrive: 9 }, driven)).toEqual([]);
    expect(keys(full, { load: 'standing', engineRpm: 700 })).toEqual([]);
    // Nor for tire and axle, which do not turn.
    expect(keys({ layout: 'rear-drive', cylinders: 8 }, { load: 'standing', engineRpm: 700 })).toEqual([]);
  });
  test('every text is a whole sentence', () => {
    for (const datum of missingData({ layout: 'four-wheel-drive' }, { speedMps: 20 })) {
      expect(datum.text).toMatch(/^[A-Z].*\.$/u);
    }
  });

  test('what is said to block lines does: giving it brings lines that were not there', () => {
    const count = (vehicle: Vehicle, condition: RunCondition): number => {
      const result = expectedLines(vehicle, condition);
      return result.ok ? result.value.lines.length : 0;
    };
    const noTire = without(full, 'tire');
    const noAxle = without(full, 'axleRatio');
    const noSpeed = without(driven, 'speedMps');
    const noGear = without(driven, 'gearRatio');
    const all = count(full, driven);
    for (const [vehicle, condition] of [
      [noTire, driven],
      [noAxle, driven],
      [full, noSpeed],
      [full, noGear],
    ] as const) {
      expect(missingData(vehicle, condition).some((datum) => datum.blocks)).toBe(true);
      expect(count(vehicle, condition)).toBeLessThan(all);
    }
  });
});

describe('notes on the vehicle', () => {
  test('none where the data say it all', () => {
    expect(vehicleNotes({ ...full, ringTeeth: 41, pinionTeeth: 11 })).toEqual([]);
    expect(vehicleNotes({ layout: 'rear-drive' })).toEqual([]);
  });
  test('an assumed height ratio is told', () => {
    const notes = vehicleNotes({ ...full, tire: { kind: 'size', size: '165R15' } });
    expect(notes.map((note) => note.code)).toEqual(['tire-ratio-assumed']);
  });
  test('contradicting tooth counts are a warning', () => {
    const [note] = vehicleNotes({ ...full, ringTeeth: 41, pinionTeeth: 10 });
    expect(note).toMatchObject({ code: 'teeth-contradict-ratio', severity: 'warning' });
    expect(note?.text).toContain('41 over 10 teeth');
  });
});
