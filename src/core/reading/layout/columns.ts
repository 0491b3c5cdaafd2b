/** Gives every column its role: time, acceleration axes, speeds; the rest is left out. */
import type { Note, Problem } from '../../note.ts';
import { accelerationByName, accelerationByNumbers } from './acceleration-columns.ts';
import type { AxisColumn } from './acceleration-columns.ts';
import { isAccelerationName, sensorNamed } from './column-facts.ts';
import type { ColumnFacts } from './column-facts.ts';
import { speedUnitOf, turningUnitOf } from './header-units.ts';
import type { ScaledUnit } from './header-units.ts';
import { steadyPart, unitByGravity } from './gravity-size.ts';
import { readingProblems } from '../problems.ts';
import { chooseTime } from './time-column.ts';
import type { TimeColumn } from './time-column.ts';

export interface SpeedColumn {
  readonly column: number;
  readonly name: string;
  readonly unit: ScaledUnit;
}

export interface ColumnRoles {
  readonly time: TimeColumn | null;
  readonly axes: readonly AxisColumn[];
  readonly roadSpeed: SpeedColumn | null;
  readonly wheelSpeeds: readonly SpeedColumn[];
  readonly engineSpeed: SpeedColumn | null;
  /** Only rows whose cell in this column reads so hold acceleration. */
  readonly only: { readonly column: number; readonly word: string } | null;
  readonly notes: readonly Note[];
}

/** Where a refusal points to. */
export interface Place {
  readonly file: string;
  readonly line: number;
  /** File name and remarks above the table: they may name the sensor of columns that are only called x, y, z. */
  readonly context: readonly string[];
}

/** Roles of the columns, or the reason why the table holds no acceleration. */
export function assignColumns(facts: readonly ColumnFacts[], place: Place): ColumnRoles | Problem {
  const hasHeader = facts.some((fact) => fact.named);
  const time = chooseTime(facts, hasHeader);
  const only = sensorColumn(facts);
  const named = accelerationByName(facts);
  const other = named || only ? null : sensorOfContext(facts, place);
  const choice = named ?? (other ? null : accelerationByNumbers(facts, time?.column ?? null));
  if (!choice || choice.axes.length === 0) return refusal(facts, place, other);
  const notes = [...choice.notes];
  const speeds = speedColumns(facts, notes);
  if (only)
    notes.push({
      code: 'sensor-rows-chosen',
      severity: 'info',
      text: `Rows of several sensors are mixed; only those marked "${only.word}" are read as acceleration.`,
    });
  return { time, axes: choice.axes, ...speeds, only, notes };
}

/**
 * The other sensor that a remark or the file's name names, where no column says acceleration. A name alone does not
 * outweigh columns x, y, z with gravity in them, except 'gravity', which is acceleration with all vibration taken out.
 */
function sensorOfContext(facts: readonly ColumnFacts[], place: Place): string | null {
  if (place.context.some(isAccelerationName)) return null;
  const named = place.context.map(sensorNamed).find((sensor) => sensor !== null) ?? null;
  const telling = facts.find((fact) => fact.quantity === 'gyroscope' || fact.quantity === 'location')?.quantity ?? null;
  if (named === 'gravity') return named;
  const bare = facts.filter((fact) => fact.quantity === null && fact.axis !== null && fact.numbers.length > 0);
  const gravity = bare.length === 3 && unitByGravity(steadyPart(bare.map((fact) => fact.numbers))) !== null;
  return gravity ? null : (named ?? telling);
}

function refusal(facts: readonly ColumnFacts[], place: Place, other: string | null): Problem {
  const names = facts.filter((fact) => fact.named).map((fact) => fact.name);
  const has = (quantity: string): boolean => other === quantity || facts.some((fact) => fact.quantity === quantity);
  if (names.length === 0) return readingProblems.accelerationUnclear(place.file, place.line, facts.length);
  if (has('gyroscope')) return readingProblems.gyroscopeOnly(place.file, place.line, names);
  if (has('location')) return readingProblems.locationOnly(place.file, place.line, names);
  return readingProblems.noAcceleration(place.file, place.line, names);
}

/** A text column that names the sensor of each row, with accelerometer rows among others. */
function sensorColumn(facts: readonly ColumnFacts[]): ColumnRoles['only'] {
  for (const fact of facts) {
    const words = new Set(fact.texts);
    if (fact.texts.length < 2 || words.size < 2 || words.size > 20) continue;
    if (![...words].some((word) => sensorNamed(word))) continue;
    const word = [...words].find(isAccelerationName);
    if (word !== undefined) return { column: fact.column, word };
  }
  return null;
}

type Speeds = Pick<ColumnRoles, 'roadSpeed' | 'wheelSpeeds' | 'engineSpeed'>;

function speedColumns(facts: readonly ColumnFacts[], notes: Note[]): Speeds {
  // A receiver without a fix leaves its column empty at first: such a column counts as long as no filled one is there.
  const of = (quantity: string): readonly ColumnFacts[] => {
    const all = facts.filter((fact) => fact.quantity === quantity);
    const filled = all.filter((fact) => fact.numbers.length > 0);
    return filled.length > 0 ? filled : all.filter((fact) => fact.texts.length === 0);
  };
  const leftOut = (fact: ColumnFacts, because: string): void => {
    notes.push({ code: 'speed-column-left-out', severity: 'warning', text: `"${fact.name}" is not used: ${because}.` });
  };
  const withUnit = (quantity: string): SpeedColumn[] =>
    of(quantity).flatMap((fact) => {
      const unit = speedUnitOf(fact.name);
      if (unit) return [{ column: fact.column, name: fact.name, unit }];
      leftOut(fact, 'its name states no unit of speed, such as (km/h), (mph) or (m/s)');
      return [];
    });
  const wheels = withUnit('wheel-speed');
  const mean = wheels.find((wheel) => /mean|average|mittel|moyen|medi[ao]/i.test(wheel.name));
  const engineSpeed = of('engine-speed').map((fact) => ({
    column: fact.column,
    name: fact.name,
    unit: turningUnitOf(fact.name) ?? { unit: 'rev/min', factor: 1 },
  }))[0];
  return {
    roadSpeed: withUnit('road-speed')[0] ?? null,
    wheelSpeeds: mean ? [mean] : wheels,
    engineSpeed: engineSpeed ?? null,
  };
}
