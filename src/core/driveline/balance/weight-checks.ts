/** Whether weights are of a size that belongs on a shaft: what a trial may push with, and what a correction may be for. */
import type { Note } from '../../note.ts';
import { permissibleUnbalanceGmm, trialUnbalanceGmm } from './balance-grade.ts';

/** A trial is told where it pushes with more than the rotor weighs, ten times the usual tenth; judgment. */
const MOST_TRIAL_TIMES = 10;
/** A correction beyond so many times the allowance is no residue of manufacture; judgment. */
const MOST_ALLOWANCES = 5;

export interface WeightSetting {
  readonly massKg: number;
  readonly rpm: number;
  readonly gradeMmps: number;
}

const rounded = (times: number): string => String(Number(times.toPrecision(2)));

/** Warnings of trial weights and corrections that are too large. */
export const weightNotes = (
  trialsGmm: readonly number[],
  correctionsGmm: readonly number[],
  setting: WeightSetting,
): Note[] => {
  const notes: Note[] = [];
  const trial = Math.max(0, ...trialsGmm) / trialUnbalanceGmm(setting.massKg, setting.rpm);
  if (trial > MOST_TRIAL_TIMES) {
    notes.push({
      code: 'heavy-trial',
      severity: 'warning',
      text: `At this speed the trial weight pushes with ${rounded(trial)} times the usual tenth of the shaft’s weight: too much to run with. Use a lighter one, or go slower.`,
    });
  }
  const allowed = permissibleUnbalanceGmm(setting.gradeMmps, setting.massKg, setting.rpm);
  const times = correctionsGmm.reduce((sum, one) => sum + one, 0) / allowed;
  if (times > MOST_ALLOWANCES) {
    notes.push({
      code: 'large-correction',
      severity: 'warning',
      text: `The correction is ${rounded(times)} times what the grade allows. That much comes of a bent or dented tube, a balance weight that fell off, or a joint off center: find and mend that, and do not weight against it.`,
    });
  }
  return notes;
};
