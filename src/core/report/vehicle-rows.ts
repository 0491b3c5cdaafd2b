/** The vehicle in a few rows, as screens, paper and page tell it: what the answer stood on. */
import { WORK_NAMES } from '../job/work-done.ts';
import { inchFromMm } from '../units.ts';
import type { Layout, TireSpec } from '../vehicle/vehicle.ts';
import type { UnitSystem } from './format.ts';
import type { Report } from './report.ts';

export const LAYOUT_NAMES: Readonly<Record<Layout, string>> = {
  'rear-drive': 'Rear drive',
  'front-drive': 'Front drive',
  'four-wheel-drive': 'Four-wheel drive',
  electric: 'Electric',
};

/** '265/70R17', '680 rev/mile', '92.91 in'; empty where no tire is given. */
export function tireText(tire: TireSpec | undefined, units: UnitSystem): string {
  if (!tire) return '';
  if (tire.kind === 'size') return tire.size;
  if (tire.kind === 'revs-per-mile') return `${tire.revsPerMile} rev/mile`;
  if (tire.kind === 'revs-per-km') return `${tire.revsPerKm} rev/km`;
  const metres = tire.circumferenceM;
  return units === 'us' ? `${+inchFromMm(metres * 1000).toFixed(2)} in` : `${+metres.toFixed(4)} m`;
}

/** Name and value of what is known of the vehicle; what was done to it last. */
export function vehicleRows(
  { vehicle, work }: Pick<Report, 'vehicle' | 'work'>,
  units: UnitSystem,
): [name: string, value: string][] {
  const rows: [string, string | undefined][] = [
    ['Vehicle', vehicle.description],
    ['Tires', tireText(vehicle.tire, units) || 'not given'],
    ['Layout', LAYOUT_NAMES[vehicle.layout]],
    ['Axle ratio', vehicle.axleRatio?.toFixed(2)],
    ['Final drive', vehicle.finalDrive?.toFixed(2)],
    ['Cylinders', vehicle.cylinders?.toString()],
    ['Work done', work.map((item) => WORK_NAMES[item].toLowerCase()).join(', ') || undefined],
  ];
  return rows.filter((row): row is [string, string] => row[1] !== undefined);
}
