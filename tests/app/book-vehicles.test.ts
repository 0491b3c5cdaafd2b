import { describe, expect, it } from 'vitest';
import { rowsOf } from '../../src/app/book/book-list.ts';
import { vehiclesOf } from '../../src/app/book/book-vehicles.ts';
import { storedOf } from '../../src/app/book/stored-job.ts';
import { emptyDocument, typeInto, withVehicle } from '../../src/app/form/document.ts';
import { mainFields } from '../../src/app/form/vehicle-fields.ts';
import type { Vehicle } from '../../src/core/vehicle/vehicle.ts';

const rows = (...vehicles: Vehicle[]) =>
  rowsOf(
    vehicles.map((vehicle, i) => ({
      kind: 'job' as const,
      job: storedOf({ id: `${i}`, revision: 1, createdMs: 0, updatedMs: -i, events: [] }, emptyDocument(vehicle)),
    })),
  );
const TRUCK: Vehicle = {
  layout: 'rear-drive',
  description: 'Work truck',
  tire: { kind: 'size', size: 'LT245/75R16' },
  axleRatio: 3.73,
  cylinders: 8,
};

describe('vehicles of the job book', () => {
  it('are listed once each, as the newest job has them', () => {
    const before = { ...TRUCK, description: 'work truck ', axleRatio: 4.1 };
    expect(vehiclesOf(rows(TRUCK, before), 'us')).toEqual([
      { label: 'Work truck · Rear drive · LT245/75R16 · 3.73 · 8 cylinders', vehicle: TRUCK },
    ]);
  });

  it('that nobody described are told apart by their figures, and one without any is left out', () => {
    const unnamed: Vehicle = { layout: 'front-drive', tire: { kind: 'rolling-circumference', circumferenceM: 1.95 } };
    const other: Vehicle = { ...unnamed, finalDrive: 3.94 };
    const listed = vehiclesOf(rows(unnamed, other, unnamed, { layout: 'electric' }), 'metric');
    expect(listed.map(({ label }) => label)).toEqual(['Front drive · 1.95 m', 'Front drive · 1.95 m · 3.94']);
  });

  it('take the place of a vehicle that is half typed', () => {
    const axle = mainFields('rear-drive').find(({ id }) => id === 'vehicle.axleRatio')!;
    const typing = typeInto(emptyDocument(), axle, '3.4 or so', 'us');
    expect(withVehicle(typing, TRUCK)).toMatchObject({ typed: {}, job: { vehicle: TRUCK } });
  });
});
