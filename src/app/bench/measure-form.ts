/** What a measurement form asks for. Data and pure functions; drawing is the components' work. */
import type { Measurement } from '../../core/driveline/measurement.ts';
import type { ProcedureId } from '../../core/driveline/procedures.ts';
import type { Job } from '../../core/job/job.ts';
import type { LengthOf } from '../../core/quantity/plausible.ts';
import type { Counted } from '../../core/quantity/quantity-list.ts';
import type { UnitSystem } from '../../core/report/format.ts';

/** What kind of number a field takes; decides units and wording. The last three take several numbers in one text. */
export type FieldKind =
  | 'length'
  | 'angle'
  | 'count'
  | 'grams'
  | 'weight'
  | 'level'
  | 'phase'
  | 'acceleration'
  | 'mass'
  | 'torque'
  | 'turning-speed'
  | 'road-speed'
  | 'grade'
  | 'lengths'
  | 'angles'
  | 'weights';

export interface MeasureField {
  readonly id: string;
  readonly label: string;
  readonly kind: FieldKind;
  /** What a length is of: a figure that it cannot have is asked about. */
  readonly of?: LengthOf;
  readonly optional?: boolean;
  /** What is in force while the field is empty, or how to write it: stands under the field. */
  readonly hint?: string;
}

/** A choice between a few things; the first is taken where none was made. */
export interface MeasureChoice {
  readonly id: string;
  readonly label: string;
  readonly options: readonly (readonly [value: string, label: string])[];
  /** What the options are called by a reader of US units, where that differs. */
  readonly usLabels?: Readonly<Record<string, string>>;
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
  /** Standard uncertainty typed with a number, as in '0.40 ± 0.01'. */
  readonly uncertainty: (id: string) => number | undefined;
  readonly list: (id: string) => readonly Counted[] | undefined;
}

/** What a form may know besides what is typed into it. */
export interface Surroundings {
  readonly job: Job;
  readonly units: UnitSystem;
}

export interface MeasureForm {
  readonly id: string;
  readonly title: string;
  readonly procedure: ProcedureId;
  readonly choices: readonly MeasureChoice[];
  readonly rows: (entry: Entry) => readonly MeasureRow[];
  /** The measurement, or null while something needed is missing. */
  readonly build: (entry: Entry) => Measurement | null;
  /** Facts that are no part of the measurement but say more about it: masses, distances, what is at hand. */
  readonly extras?: (entry: Entry, around: Surroundings) => readonly MeasureRow[];
}

/** All numbers, or null where one is missing. */
export function allOf(entry: Entry, ids: readonly string[]): number[] | null {
  const numbers = ids.map((id) => entry.number(id));
  return numbers.every((value) => value !== undefined) ? numbers : null;
}

/** A key only where there is a value, as optional entries want it. */
export const given = <K extends string, V>(key: K, value: V | undefined): Partial<Record<K, V>> =>
  value === undefined ? {} : ({ [key]: value } as Record<K, V>);
