/** The vehicle in a few rows: what the answer stood on. */
import type { UnitSystem } from '../../core/report/format.ts';
import type { Report } from '../../core/report/report.ts';
import { tireText } from '../form/vehicle-fields.ts';
import { texts } from '../texts.ts';

const words = texts.form;

export function summaryRows({ vehicle, work }: Report, units: UnitSystem): [name: string, value: string][] {
  const { fields } = words;
  const rows: [string, string | undefined][] = [
    [words.vehicle, vehicle.description],
    [fields.tire.label, tireText(vehicle.tire, units) || words.nothing],
    [fields.layout.label, words.layouts[vehicle.layout]],
    [fields.axleRatio.label, vehicle.axleRatio?.toFixed(2)],
    [fields.finalDrive.label, vehicle.finalDrive?.toFixed(2)],
    [fields.cylinders.label, vehicle.cylinders?.toString()],
    [texts.sheet.workDone, work.map((item) => words.workDone[item].toLowerCase()).join(', ') || undefined],
  ];
  return rows.filter((row): row is [string, string] => row[1] !== undefined);
}
