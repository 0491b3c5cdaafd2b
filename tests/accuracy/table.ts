/** The results as text. */
import type { Family } from './case.ts';
import { FAMILIES } from './case.ts';
import { overall, tenths } from './calibration.ts';
import type { Outcome } from './run-case.ts';

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
const secondsOf = (o: Outcome): number => o.seconds.read + o.seconds.analyse;

const row = (name: string, outcomes: readonly Outcome[]): readonly string[] => {
  const right = outcomes.filter((o) => o.score.right).length;
  // Of each case the first finding; the finding a person acts on.
  const firsts = overall(outcomes.flatMap((o) => o.score.stated.slice(0, 1)));
  const frequency = outcomes.flatMap((o) => (o.score.frequency === null ? [] : [o.score.frequency]));
  const within = frequency.filter((f) => Math.abs(f.overSd) <= 2).length;
  return [
    name,
    String(outcomes.length),
    percent(right / outcomes.length),
    firsts ? firsts.meanStated.toFixed(3) : '–',
    firsts ? firsts.shareHit.toFixed(3) : '–',
    firsts ? Math.abs(firsts.meanStated - firsts.shareHit).toFixed(3) : '–',
    frequency.length > 0 ? `${(100 * Math.sqrt(mean(frequency.map((f) => f.relative ** 2)))).toFixed(3)} %` : '–',
    frequency.length > 0 ? percent(within / frequency.length) : '–',
    mean(outcomes.map((o) => o.score.falseFindings)).toFixed(2),
    mean(outcomes.map(secondsOf)).toFixed(2),
  ];
};

const HEAD = [
  'family',
  'cases',
  'right',
  'stated',
  'hit',
  'calibr. error',
  'freq. error rms',
  'within 2σ',
  'false findings',
  's/case',
];

const aligned = (rows: readonly (readonly string[])[]): string => {
  const widths = rows[0]!.map((_, i) => Math.max(...rows.map((r) => r[i]!.length)));
  return rows
    .map((r) => r.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join('  '))
    .join('\n');
};

const familiesIn = (outcomes: readonly Outcome[]): readonly Family[] =>
  FAMILIES.filter((f) => outcomes.some((o) => o.family === f));

export const resultTable = (outcomes: readonly Outcome[]): string =>
  aligned([
    HEAD,
    ...familiesIn(outcomes).map((f) =>
      row(
        f,
        outcomes.filter((o) => o.family === f),
      ),
    ),
    row('all', outcomes),
  ]);

export const calibrationTable = (outcomes: readonly Outcome[]): string =>
  aligned([
    ['stated', 'findings', 'mean stated', 'hit', 'error', 'standard error'],
    ...tenths(outcomes.flatMap((o) => o.score.stated)).map((b) => [
      `${b.from.toFixed(1)}..${(b.from + 0.1).toFixed(1)}`,
      String(b.count),
      b.meanStated.toFixed(3),
      b.shareHit.toFixed(3),
      Math.abs(b.meanStated - b.shareHit).toFixed(3),
      b.standardError.toFixed(3),
    ]),
  ]);

export const missList = (outcomes: readonly Outcome[]): string =>
  outcomes
    .filter((o) => !o.score.right)
    .map((o) => `${o.family} ${o.index}\n  true: ${o.score.truth}\n  said: ${o.score.answered}\n  ${o.about}`)
    .join('\n');

/** Right answers per family under each variant, and the change against the first. */
export const leanTable = (
  variants: readonly { readonly name: string; readonly outcomes: readonly Outcome[] }[],
): string => {
  const share = (outcomes: readonly Outcome[]): number =>
    outcomes.filter((o) => o.score.right).length / outcomes.length;
  const base = variants[0]!.outcomes;
  const line = (name: string, pick: (all: readonly Outcome[]) => readonly Outcome[]): readonly string[] => [
    name,
    percent(share(pick(base))),
    ...variants.slice(1).map((v) => {
      const change = share(pick(v.outcomes)) - share(pick(base));
      return `${change >= 0 ? '+' : ''}${(100 * change).toFixed(1)}`;
    }),
  ];
  return aligned([
    ['family', ...variants.map((v) => v.name)],
    ...familiesIn(base).map((f) => line(f, (all) => all.filter((o) => o.family === f))),
    line('all', (all) => all),
  ]);
};
