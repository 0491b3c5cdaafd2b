/** Which columns are the acceleration: by name where there are names, by the size of gravity where there are none. */
import type { Note } from '../../note.ts';
import type { ColumnFacts } from './column-facts.ts';
import { accelerationUnitOf } from './header-units.ts';
import type { AccelerationUnit } from './header-units.ts';
import { gravityLike } from './gravity-size.ts';
import type { AxisName } from '../recording.ts';

export interface AxisColumn {
  readonly axis: AxisName;
  readonly column: number;
  readonly name: string;
  readonly unit: AccelerationUnit | 'counts' | null;
}

export interface AccelerationChoice {
  readonly axes: readonly AxisColumn[];
  readonly notes: readonly Note[];
}

const AXES: readonly AxisName[] = ['x', 'y', 'z'];
const asAxis = (fact: ColumnFacts, axis: AxisName): AxisColumn => ({
  axis,
  column: fact.column,
  name: fact.name,
  unit: fact.named ? accelerationUnitOf(fact.name) : null,
});
const alive = (fact: ColumnFacts): boolean => fact.numbers.length > 0;

/** Acceleration by the names of the columns; null where no name speaks of it. */
export function accelerationByName(facts: readonly ColumnFacts[]): AccelerationChoice | null {
  const named = facts.filter((f) => f.quantity === 'acceleration' || f.quantity === 'linear-acceleration');
  // Columns that are still empty in the first rows may fill up later, as long as no others are there.
  const candidates = named.some(alive) ? named.filter(alive) : named;
  if (candidates.length === 0) return null;
  const groups = new Map<string, ColumnFacts[]>();
  for (const fact of candidates) {
    const key = `${fact.quantity} ${fact.axis === null ? '' : fact.stem}`;
    groups.set(key, [...(groups.get(key) ?? []), fact]);
  }
  const rank = (group: readonly ColumnFacts[]): number =>
    new Set(group.map((f) => f.axis)).size * 2 -
    (group[0]!.quantity === 'linear-acceleration' ? 1 : 0) -
    (group[0]!.axis === null ? 3 : 0);
  const ordered = [...groups.values()].sort((a, b) => rank(b) - rank(a));
  const best = ordered[0]!;
  const axes = best[0]!.axis === null ? inOrder(best) : withBareAxes(byAxis(best), facts);
  const used = new Set(axes.map((axis) => axis.column));
  const left = candidates.filter((fact) => !used.has(fact.column));
  const notes: Note[] = [];
  if (left.length > 0)
    notes.push({
      code: 'acceleration-columns-left-out',
      severity: 'warning',
      text: `The file has more acceleration columns than one sensor's; used: ${names(axes)}. Left out: ${left
        .slice(0, 6)
        .map((f) => `"${f.name}"`)
        .join(', ')}.`,
    });
  return { axes, notes };
}

const names = (axes: readonly { readonly name: string }[]): string => axes.map((axis) => `"${axis.name}"`).join(', ');

function byAxis(group: readonly ColumnFacts[]): AxisColumn[] {
  return AXES.flatMap((axis) => {
    const fact = group.find((candidate) => candidate.axis === axis);
    return fact ? [asAxis(fact, axis)] : [];
  });
}

/** 'Acceleration x (g), y, z': bare letters beside a named axis are its sensor's others, in its unit. */
function withBareAxes(axes: readonly AxisColumn[], facts: readonly ColumnFacts[]): readonly AxisColumn[] {
  const bare = facts.filter(
    (fact) => alive(fact) && fact.named && fact.quantity === null && fact.axis !== null && fact.stem === '',
  );
  const more = bare.filter((fact) => !axes.some(({ axis }) => axis === fact.axis));
  if (axes.length !== 1 || more.length !== AXES.length - 1 || bare.length !== more.length) return axes;
  const { unit } = axes[0]!;
  return [...axes, ...byAxis(more).map((axis) => ({ ...axis, unit }))].sort((a, b) => (a.axis < b.axis ? -1 : 1));
}

const inOrder = (group: readonly ColumnFacts[]): AxisColumn[] =>
  group.slice(0, 3).map((fact, i) => asAxis(fact, AXES[i]!));

/**
 * Acceleration among columns without telling names: bare axis letters, or up to three columns of numbers, or the one
 * run of three columns whose vector has the size of gravity. Null where none of these fits.
 */
export function accelerationByNumbers(
  facts: readonly ColumnFacts[],
  timeColumn: number | null,
): AccelerationChoice | null {
  const bare = facts.filter(
    (f) => alive(f) && f.quantity === null && f.axis !== null && f.neutral && f.column !== timeColumn,
  );
  if (bare.length > 0) return { axes: byAxis(bare), notes: [] };
  const placed = placedSensor(facts);
  if (placed) return placed;
  const unknown = facts.filter(
    (f) =>
      alive(f) && f.quantity === null && f.neutral && f.column !== timeColumn && f.numbers.length >= f.texts.length,
  );
  if (unknown.length === 0) return null;
  const chosen = unknown.length <= 3 ? unknown : threeOf(unknown);
  if (!chosen) return null;
  const axes = inOrder(chosen);
  const text = `No column is named as acceleration; ${names(axes)} taken as ${axes.map((a) => a.axis).join(', ')}${unknown.length > 3 ? ' because their vector has the size of gravity' : ''}.`;
  return { axes, notes: [{ code: 'acceleration-columns-assumed', severity: 'warning', text }] };
}

/** 'seat x', 'seat y', 'seat z': a sensor named by its place, with gravity in its columns; of several the first. */
function placedSensor(facts: readonly ColumnFacts[]): AccelerationChoice | null {
  const groups = new Map<string, ColumnFacts[]>();
  for (const fact of facts) {
    if (!alive(fact) || fact.quantity !== null || fact.axis === null || fact.neutral) continue;
    groups.set(fact.stem, [...(groups.get(fact.stem) ?? []), fact]);
  }
  const sensors = [...groups.values()]
    .map(byAxis)
    .filter((axes) => axes.length === AXES.length)
    .filter((axes) => gravityLike(axes.map(({ column }) => facts.find((fact) => fact.column === column)!.numbers)));
  const [axes, ...others] = sensors;
  if (!axes) return null;
  const left = others.length === 0 ? '' : ` Left out: ${others.map(names).join(', ')}.`;
  const text = `No column is named as acceleration; ${names(axes)} taken because their vector has the size of gravity.${left}`;
  return { axes, notes: [{ code: 'acceleration-columns-assumed', severity: 'warning', text }] };
}

/** The only run of three columns with gravity in it; a fourth column that is their length does not disturb. */
function threeOf(unknown: readonly ColumnFacts[]): readonly ColumnFacts[] | null {
  const found: (readonly ColumnFacts[])[] = [];
  for (let i = 0; i + 3 <= unknown.length; i++) {
    const three = unknown.slice(i, i + 3);
    if (gravityLike(three.map((fact) => fact.numbers))) found.push(three);
  }
  if (found.length > 1 && unknown.length === 4 && isLengthOf(unknown[3]!, unknown.slice(0, 3))) return found[0]!;
  return found.length === 1 ? found[0]! : null;
}

function isLengthOf(fact: ColumnFacts, three: readonly ColumnFacts[]): boolean {
  return fact.numbers.every((value, i) => {
    const length = Math.hypot(...three.map((axis) => axis.numbers[i] ?? NaN));
    return Math.abs(value - length) <= 0.02 * Math.max(1e-9, length);
  });
}
