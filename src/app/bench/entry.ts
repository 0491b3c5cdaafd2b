/** What was typed into a measurement form: text to numbers, and to a measurement. */
import type { Measurement } from '../../core/driveline/measurement.ts';
import type { Problem, Result } from '../../core/note.ts';
import { parseAccelerationMps2, parseAngleDeg, parseLengthMm, parseMassKg, parseRatio } from '../../core/quantity.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import type { Entry, FieldKind, MeasureField, MeasureForm, MeasureRow } from './measure-form.ts';

export type Typed = Readonly<Record<string, string>>;

/** Half-typed readings are kept with the job under these names. */
export const typedKey = (form: MeasureForm, id: string): string => `measure.${form.id}.${id}`;

/** The unit that a bare number is in, for the label of the field. */
export function unitOf(kind: FieldKind, units: UnitSystem): string {
  switch (kind) {
    case 'length':
      return units === 'us' ? 'in' : 'mm';
    case 'angle':
      return '°';
    case 'grams':
      return 'g';
    case 'acceleration':
      return 'm/s²';
    case 'weight':
    case 'level':
    case 'count':
      return '';
  }
}

/** A typed number in the core's unit. Any unit may be typed; a bare number is in the reader's. */
export function parseField({ kind, label }: MeasureField, text: string, units: UnitSystem): Result<number> {
  const name = label.toLowerCase();
  switch (kind) {
    case 'length':
      return parseLengthMm(text, units === 'us' ? 'in' : 'mm', { name });
    case 'angle':
      return parseAngleDeg(text, '°', { name });
    case 'grams': {
      const mass = parseMassKg(text, 'g', { name });
      return mass.ok ? { ok: true, value: mass.value * 1000 } : mass;
    }
    case 'acceleration':
      return parseAccelerationMps2(text, 'm/s²', { name });
    case 'weight':
    case 'level':
      return parseRatio(text, { name, range: [0, 1e6] });
    case 'count':
      return parseRatio(text, { name, range: [1, 100] });
  }
}

export interface FilledForm {
  readonly entry: Entry;
  readonly rows: readonly MeasureRow[];
  /** What is wrong with each field, by id. */
  readonly problems: ReadonlyMap<string, Problem>;
  readonly measurement: Measurement | null;
}

/** @param preset Choices taken where the reader made none. */
export function fillForm(form: MeasureForm, typed: Typed, units: UnitSystem, preset: Typed = {}): FilledForm {
  const problems = new Map<string, Problem>();
  const numbers = new Map<string, number>();
  const choice = (id: string): string => typed[typedKey(form, id)] ?? preset[id] ?? firstOption(form, id);
  const entry: Entry = { choice, number: (id) => numbers.get(id) };
  const rows = form.rows(entry);
  for (const field of rows.flatMap((row) => row.fields)) {
    const text = typed[typedKey(form, field.id)]?.trim() ?? '';
    if (text === '') continue;
    const parsed = parseField(field, text, units);
    if (parsed.ok) numbers.set(field.id, parsed.value);
    else problems.set(field.id, parsed.problem);
  }
  return { entry, rows, problems, measurement: problems.size > 0 ? null : form.build(entry) };
}

function firstOption(form: MeasureForm, id: string): string {
  const listed = form.choices.find((item) => item.id === id);
  // Choices inside a row all begin with 'rear lower'.
  return listed?.options[0]?.[0] ?? 'rear';
}

/** The typed text without that of one form. */
export function clearForm(form: MeasureForm, typed: Typed): Typed {
  const prefix = typedKey(form, '');
  return Object.fromEntries(Object.entries(typed).filter(([key]) => !key.startsWith(prefix)));
}
