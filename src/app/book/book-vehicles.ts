/** Vehicles of the job book, to be taken over into a new job. */
import type { Vehicle } from '../../core/vehicle/vehicle.ts';
import { tireText } from '../../core/report/vehicle-rows.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { texts } from '../texts.ts';
import type { BookRow } from './book-list.ts';
import { documentOf } from './stored-job.ts';

export interface BookVehicle {
  /** What the reader calls it, and what sets it apart. */
  readonly label: string;
  readonly vehicle: Vehicle;
}

/** One entry for each vehicle, as its newest job has it. One that nobody described is known by its figures. */
export function vehiclesOf(rows: readonly BookRow[], units: UnitSystem): readonly BookVehicle[] {
  const vehicles = new Map<string, BookVehicle>();
  for (const { stored } of rows) {
    const document = documentOf(stored);
    if (!document.ok) continue;
    const { vehicle } = document.value.job;
    const figures = figuresOf(vehicle, units);
    if (figures === '') continue;
    const name = vehicle.description?.trim() ?? '';
    const key = name === '' ? `${vehicle.layout} ${figures}` : name.toLowerCase();
    if (!vehicles.has(key)) {
      vehicles.set(key, {
        label: [name, texts.form.layouts[vehicle.layout], figures].filter(Boolean).join(' · '),
        vehicle,
      });
    }
  }
  return [...vehicles.values()];
}

/** What sets a vehicle apart in short; empty where nothing was entered of it. */
export function figuresOf({ tire, axleRatio, finalDrive, cylinders }: Vehicle, units: UnitSystem): string {
  const ratio = axleRatio ?? finalDrive;
  const parts = [tireText(tire, units), ratio?.toString() ?? '', cylinders ? texts.form.cylinders(cylinders) : ''];
  return parts.filter(Boolean).join(' · ');
}
