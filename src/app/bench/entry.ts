/** What was typed into a measurement form: text to numbers, and to a measurement. */
import type { Measurement } from '../../core/driveline/measurement.ts';
import type { Problem } from '../../core/note.ts';
import { emptyJob } from '../form/document.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import type { Job } from '../../core/job/job.ts';
import type { Entry, MeasureChoice, MeasureForm, MeasureRow } from './measure-form.ts';
import type { FieldValue } from './parse-field.ts';
import { parseField } from './parse-field.ts';

export type Typed = Readonly<Record<string, string>>;

/** Half-typed readings are kept with the job under these names. */
export const typedKey = (form: MeasureForm, id: string): string => `measure.${form.id}.${id}`;

export interface FilledForm {
  readonly entry: Entry;
  readonly rows: readonly MeasureRow[];
  /** Rows whose numbers are no part of the measurement. */
  readonly extras: readonly MeasureRow[];
  /** What is wrong with each field, by id. */
  readonly problems: ReadonlyMap<string, Problem>;
  readonly measurement: Measurement | null;
}

/**
 * @param preset Choices taken where the reader made none.
 * @param job Gives what the vehicle already tells; empty where absent.
 */
export function fillForm(
  form: MeasureForm,
  typed: Typed,
  units: UnitSystem,
  preset: Typed = {},
  job: Job = emptyJob(),
): FilledForm {
  const problems = new Map<string, Problem>();
  const values = new Map<string, FieldValue>();
  let choices: readonly MeasureChoice[] = form.choices;
  const choice = (id: string): string =>
    typed[typedKey(form, id)] ?? preset[id] ?? choices.find((item) => item.id === id)?.options[0]?.[0] ?? '';
  const entry: Entry = {
    choice,
    number: (id) => values.get(id)?.number,
    uncertainty: (id) => values.get(id)?.uncertainty,
    list: (id) => values.get(id)?.list,
  };
  const take = (rows: readonly MeasureRow[]): boolean => {
    let isSound = true;
    choices = [...choices, ...rows.flatMap((row) => row.choices ?? [])];
    for (const field of rows.flatMap((row) => row.fields)) {
      const text = typed[typedKey(form, field.id)]?.trim() ?? '';
      if (text === '') continue;
      const parsed = parseField(field, text, { units, weightUnit: choice('unit') === 'g·mm' ? 'g·mm' : 'g' });
      if (parsed.ok) values.set(field.id, parsed.value);
      else {
        problems.set(field.id, parsed.problem);
        isSound = false;
      }
    }
    return isSound;
  };
  const rows = form.rows(entry);
  const isSound = take(rows);
  const measurement = isSound ? form.build(entry) : null;
  const extras = form.extras?.(entry, { job, units }) ?? [];
  take(extras);
  return { entry, rows, extras, problems, measurement };
}

/** The typed text without that of one form. */
export function clearForm(form: MeasureForm, typed: Typed): Typed {
  const prefix = typedKey(form, '');
  return Object.fromEntries(Object.entries(typed).filter(([key]) => !key.startsWith(prefix)));
}
