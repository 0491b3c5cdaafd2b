/** What was assumed about the vehicle where its data left something open, for the reader of the report. */
import type { Note } from '../note.ts';
import { teethContradictRatio } from './ratios.ts';
import { rollingCircumference } from './rolling.ts';
import type { Vehicle } from './vehicle.ts';

/**
 * Notes on the vehicle's data: a ratio or construction letter the tire size does not print, tooth counts that
 * contradict the axle ratio. Empty where the data say it all.
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
  return notes;
};
