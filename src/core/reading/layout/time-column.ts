/** Which column is the time: the one that runs. */
import type { ColumnFacts } from './column-facts.ts';
import { timeUnitOf } from './header-units.ts';
import type { ScaledUnit } from './header-units.ts';

export interface TimeColumn {
  readonly column: number;
  readonly name: string;
  readonly kind: 'number' | 'clock';
  /** Unit the name states. */
  readonly unit: ScaledUnit | null;
  readonly because: string;
}

interface Running {
  /** Share of rows whose stamp is later than the one before. */
  readonly forward: number;
  readonly backward: number;
  /** Every step is exactly one: may be a count of rows as well as a time. */
  readonly counts: boolean;
}

/** How the values of a column run from row to row. */
function runningOf(values: readonly number[]): Running {
  let forward = 0;
  let backward = 0;
  let ones = 0;
  for (let i = 1; i < values.length; i++) {
    const step = values[i]! - values[i - 1]!;
    if (step > 0) forward++;
    if (step < 0) backward++;
    if (step === 1) ones++;
  }
  const steps = Math.max(1, values.length - 1);
  return {
    forward: forward / steps,
    backward: backward / steps,
    counts: values.length > 2 && ones === values.length - 1,
  };
}

/** More stamps than this going backward in the first rows, and the column is no time. */
const BACKWARD_LIMIT = 0.05;

/**
 * The time column, or null. Columns named as time come first; among them the one whose stamps move in most rows (a
 * whole-second clock beside a running milliseconds column loses), then the one that names its unit, then the leftmost.
 * Without names, the leftmost column that moves forward in nearly every row.
 */
export function chooseTime(facts: readonly ColumnFacts[], hasHeader: boolean): TimeColumn | null {
  const seriesOf = (fact: ColumnFacts): readonly number[] =>
    fact.clocks.length > fact.numbers.length ? fact.clocks : fact.numbers;
  const named = facts.filter(
    (f) =>
      (f.quantity === 'time' || (f.clocks.length > f.texts.length && f.clocks.length > f.numbers.length)) &&
      seriesOf(f).length > 0,
  );
  const ranked = named
    .map((fact) => ({ fact, running: runningOf(seriesOf(fact)), unit: timeUnitOf(fact.name) }))
    .filter(({ running }) => running.backward <= BACKWARD_LIMIT)
    .sort(
      (a, b) =>
        Math.round(50 * (b.running.forward - a.running.forward)) ||
        Number(b.unit !== null) - Number(a.unit !== null) ||
        a.fact.column - b.fact.column,
    );
  const best = ranked[0];
  if (best) {
    const others = ranked.slice(1).map(({ fact }) => `"${fact.name}"`);
    const because = others.length
      ? `"${best.fact.name}" is taken as the time: of the time columns it is the one that runs (also there: ${others.slice(0, 4).join(', ')})`
      : `"${best.fact.name}" is the time column`;
    return asColumn(best.fact, because, best.unit);
  }
  if (hasHeader && facts.some((fact) => fact.named && !fact.neutral)) return null;
  const leading = facts.find((fact) => {
    if (fact.quantity !== null || fact.numbers.length < 3 || fact.texts.length > 0) return false;
    const running = runningOf(fact.numbers);
    return running.forward > 0.9 && running.backward === 0 && !running.counts;
  });
  return leading ? asColumn(leading, `${leading.name} rises from row to row and is taken as the time`, null) : null;
}

function asColumn(fact: ColumnFacts, because: string, unit: ScaledUnit | null): TimeColumn {
  const kind = fact.clocks.length > fact.numbers.length ? 'clock' : 'number';
  return { column: fact.column, name: fact.name, kind, unit, because };
}
