/** What a measurement form asks for. Data and pure functions; drawing is the components' work. */
import type { Measurement } from '../../core/driveline/measurement.ts';
import type { ProcedureId } from '../../core/driveline/procedures.ts';

/** What kind of number a field takes; decides units and wording. */
export type FieldKind = 'length' | 'angle' | 'count' | 'grams' | 'weight' | 'level' | 'acceleration';

export interface MeasureField {
  readonly id: string;
  readonly label: string;
  readonly kind: FieldKind;
  readonly optional?: boolean;
}

/** A choice between a few things; the first is taken where none was made. */
export interface MeasureChoice {
  readonly id: string;
  readonly label: string;
  readonly options: readonly (readonly [value: string, label: string])[];
}

/** Fields that stand together under one heading; a reading may carry choices of its own. */
export interface MeasureRow {
  readonly heading: string;
  readonly fields: readonly MeasureField[];
  readonly choices?: readonly MeasureChoice[];
}

/** What was entered: choices by id, numbers by id in the core's units; absent where empty or not understood. */
export interface Entry {
  readonly choice: (id: string) => string;
  readonly number: (id: string) => number | undefined;
}

export interface MeasureForm {
  readonly id: string;
  readonly title: string;
  readonly procedure: ProcedureId;
  readonly choices: readonly MeasureChoice[];
  readonly rows: (entry: Entry) => readonly MeasureRow[];
  /** The measurement, or null while something needed is missing. */
  readonly build: (entry: Entry) => Measurement | null;
}

/** All numbers, or null where one is missing. */
export function allOf(entry: Entry, ids: readonly string[]): number[] | null {
  const numbers = ids.map((id) => entry.number(id));
  return numbers.every((value) => value !== undefined) ? numbers : null;
}

/** A key only where there is a value, as optional entries want it. */
export const given = <K extends string, V>(key: K, value: V | undefined): Partial<Record<K, V>> =>
  value === undefined ? {} : ({ [key]: value } as Record<K, V>);
