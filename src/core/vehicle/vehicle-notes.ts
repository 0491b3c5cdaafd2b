/** What was assumed about the vehicle where its data left something open, for the reader of the report. */
import type { Note } from '../note.ts';
import { AXLES_APART, axleRatiosApart, teethContradictRatio } from './ratios.ts';
import { rollingCircumference } from './rolling.ts';
import type { Vehicle } from './vehicle.ts';

/** Axle ratios and final drives of cars, trucks and electric reductions lie well within these (common practice, no source). */
const LEAST_RATIO = 1.5;
const MOST_RATIO = 15;

/**
 * Notes on the vehicle's data: a ratio or construction letter the tire size does not print, tooth counts that
 * contradict the axle ratio, a ratio that no axle has. Empty where the data say it all.
 */
export const vehicleNotes = (vehicle: Vehicle): readonly Note[] => {
  const rolling = vehicle.tire === undefined ? null : rollingCircumference(vehicle.tire);
  const notes: Note[] = rolling !== null && rolling.ok ? [...rolling.value.notes] : [];
  if (teethContradictRatio(vehicle)) {
    notes.push({
      code: 'teeth-contradict-ratio',
      text: `${vehicle.ringTeeth} over ${vehicle.pinionTeeth} teeth do not make the ratio that was entered; the ratio is used.`,
      severity: 'warning',
    });
  }
  for (const ratio of [vehicle.axleRatio, vehicle.frontAxleRatio, vehicle.finalDrive]) {
    if (ratio === undefined || (ratio >= LEAST_RATIO && ratio <= MOST_RATIO)) continue;
    notes.push({
      code: 'ratio-unlikely',
      text: `No usual axle or final drive has a ratio of ${ratio}: check the decimal point.`,
      severity: 'warning',
    });
  }
  const apart = axleRatiosApart(vehicle);
  if (apart !== null && apart >= AXLES_APART) {
    notes.push({
      code: 'axle-ratios-apart',
      text: `Front and rear axle ratio differ by ${Math.round(100 * apart)} %: check both. Locked together on dry pavement such axles wind up, unless the transfer case makes up for it.`,
      severity: 'warning',
    });
  }
  return notes;
};
