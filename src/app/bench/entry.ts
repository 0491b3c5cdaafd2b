/** What was typed into a measurement form: text to numbers, and to a measurement. */
import type { Measurement } from '../../core/driveline/measurement.ts';
import type { Problem } from '../../core/note.ts';
import { emptyJob } from '../form/document.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import type { Job } from '../../core/job/job.ts';
import type { Entry, MeasureChoice, MeasureField, MeasureForm, MeasureRow } from './measure-form.ts';
import type { FieldValue } from './parse-field.ts';
import type { FieldSetting } from './parse-field.ts';
import { parseField, unitOf } from './parse-field.ts';

export type Typed = Readonly<Record<string, string>>;

/** Half-typed readings are kept with the job under these names. */
export const typedKey = (form: MeasureForm, id: string): string => `measure.${form.id}.${id}`;

/** Beside a text stands the reader's choice of units while it was typed: a bare number keeps its size when that changes. */
const unitsKey = (form: MeasureForm, id: string): string => `${typedKey(form, id)}.units`;

/** The typed text with that of one field, as typed by a reader of these units. */
export const typeField = (form: MeasureForm, typed: Typed, id: string, text: string, units: UnitSystem): Typed => ({
  ...typed,
  [typedKey(form, id)]: text,
  [unitsKey(form, id)]: units,
});

/** What decides the units of a form's fields. */
export const settingOf = (form: MeasureForm, typed: Typed, units: UnitSystem): FieldSetting => ({
  units,
  weightUnit: typed[typedKey(form, 'unit')] === 'g·mm' ? 'g·mm' : 'g',
});

/** Numbers and what stands between them, without a unit. */
const BARE = /^[\d\s.,;/⁄+\-−×x]*\d[\d\s.,;/⁄+\-−×x]*$/u;

/** What a field shows, and what is read: a bare number typed in the reader's earlier units has its unit written out. */
export function textOf(form: MeasureForm, typed: Typed, { id, kind }: MeasureField, units: UnitSystem): string {
  const text = typed[typedKey(form, id)] ?? '';
  const then = typed[unitsKey(form, id)];
  if ((then !== 'us' && then !== 'metric') || then === units || !BARE.test(text)) return text;
  const unit = unitOf(kind, settingOf(form, typed, then));
  return unit === unitOf(kind, settingOf(form, typed, units)) ? text : `${text.trim()} ${unit}`;
}

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
      const text = textOf(form, typed, field, units).trim();
      if (text === '') continue;
      const parsed = parseField(field, text, settingOf(form, typed, units));
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
