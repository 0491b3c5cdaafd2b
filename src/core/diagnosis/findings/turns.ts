/**
 * Tones that take turns: no log tells the speed, and where one of them stops the next begins, as strong. That is
 * one order at several speeds or in several gears, and what was stated holds for one of them at the most.
 */
import type { Span } from '../../reading/cut-recording.ts';
import type { Finding } from './finding.ts';

/** Of one order at speeds of one drive: no stronger than so many times the other, and no faster. Judgment. */
const AS_STRONG = 2.5;
const AS_FAST = 2;
/** Together they take up at least this share of the run: what comes now and then takes no turns. Judgment. */
const LEAST_SHARE = 0.7;

const within = (a: number, b: number, factor: number): boolean => a < factor * b && b < factor * a;

const lengthOf = (spans: readonly Span[]): number => spans.reduce((sum, { fromS, toS }) => sum + toS - fromS, 0);

const apart = (a: readonly Span[], b: readonly Span[]): boolean =>
  a.every((one) => b.every((other) => one.toS <= other.fromS || other.toS <= one.fromS));

/** Speed not logged: all that is known of it was stated, for all of the run. */
const isStatedOnly = ({ inference: { run } }: Finding): boolean => run.part === null && !run.histories.logged;

/** Of one order whose history was followed its turns are one tone: so far apart (ln) no history found has them. */
const furtherThanFollowed = ({ inference: { run } }: Finding): number => 2 * Math.max(0, ...run.histories.wander);

/** The others with which a tone takes turns, in order of time; none where it does not. */
export const turnsOf = (finding: Finding, all: readonly Finding[]): readonly Finding[] => {
  const { during, inference } = finding;
  if (!during || !isStatedOnly(finding)) return [];
  const leastApart = furtherThanFollowed(finding);
  const others = all.filter(
    (other) =>
      other.inference === inference &&
      other.during !== null &&
      apart(during, other.during) &&
      within(other.amplitudeMps2, finding.amplitudeMps2, AS_STRONG) &&
      within(other.trueHz, finding.trueHz, AS_FAST) &&
      Math.abs(Math.log(other.trueHz / finding.trueHz)) > leastApart,
  );
  const takenS = [finding, ...others].reduce((sum, one) => sum + lengthOf(one.during ?? []), 0);
  return takenS < LEAST_SHARE * inference.run.prepared.durationS
    ? []
    : others.toSorted((a, b) => (a.during?.[0]?.fromS ?? 0) - (b.during?.[0]?.fromS ?? 0));
};

/** The finding, as likely as that the statement was meant for its turn and for none of the others. */
export const amongTurns = (finding: Finding, all: readonly Finding[]): Finding => {
  const turns = turnsOf(finding, all);
  if (turns.length === 0) return finding;
  const share = 1 / (1 + turns.length);
  const { match } = finding;
  const { fixed } = match.others;
  const left = (1 - share) * match.lines.reduce((sum, { probability }) => sum + probability, fixed);
  return {
    ...finding,
    turns,
    probability: share * finding.probability,
    weight: share * finding.weight,
    match: {
      ...match,
      lines: match.lines.map((line) => ({ ...line, probability: share * line.probability })),
      others: { ...match.others, fixed: share * fixed, unlisted: match.others.unlisted + left },
    },
  };
};
