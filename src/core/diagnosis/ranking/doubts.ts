/** The doubts a case leaves open: for each peak, what it may come from, down to the cause. */
import type { Part } from '../../vehicle/line.ts';
import type { RankedFinding } from './ranked.ts';
import { UNNAMED_IMPORTANCE } from '../weights.ts';

/** One thing that may be true of a peak. */
export interface Possibility {
  /** Cause id, or the order's label where its causes are not ranked, or what the unknown may follow. */
  readonly name: string;
  readonly causeId: string | null;
  readonly part: Part;
  /** Which of several parts of a kind. */
  readonly partName?: string | undefined;
  readonly probability: number;
}

/** Everything that may be true of one peak; adds up to 1. */
export interface Doubt {
  readonly possibilities: readonly Possibility[];
  /** How much it matters, 0..1: felt level × probability, relative to the finding where that is greatest. */
  readonly importance: number;
}

/** How much a finding matters: what is felt, as far as it is sure. */
export const weightOf = ({ feltLevel, probability }: RankedFinding): number => feltLevel * probability;

/** Findings at one place of one run are one peak seen under several names: they share one doubt. */
export function doubtsOf(findings: readonly RankedFinding[]): Doubt[] {
  const greatest = Math.max(...findings.map(weightOf), Number.MIN_VALUE);
  const named = Math.max(...findings.filter(({ part }) => part !== 'unknown').map(weightOf), 0);
  const isLesserUnnamed = (group: readonly RankedFinding[]): boolean =>
    group.every((finding) => finding.part === 'unknown' && weightOf(finding) < named);
  return groupsOf(findings).map((group) => ({
    possibilities: possibilitiesOf(group),
    importance: (Math.max(...group.map(weightOf)) / greatest) * (isLesserUnnamed(group) ? UNNAMED_IMPORTANCE : 1),
  }));
}

function groupsOf(findings: readonly RankedFinding[]): RankedFinding[][] {
  const groups: RankedFinding[][] = [];
  for (const finding of findings) {
    const group = groups.find((members) => members.some((member) => samePeak(member, finding)));
    if (group) group.push(finding);
    else groups.push([finding]);
  }
  return groups;
}

function samePeak(a: RankedFinding, b: RankedFinding): boolean {
  const names = (one: RankedFinding, other: RankedFinding): boolean =>
    one.sharesFrequencyWith.some(({ label }) => label === other.label);
  return a.run === b.run && (names(a, b) || names(b, a) || a.frequencyHz === b.frequencyHz);
}

function possibilitiesOf(group: readonly RankedFinding[]): Possibility[] {
  const labels = new Set(group.map(({ label }) => label));
  const ranked = group.flatMap(({ part, name: partName, label, probability, causes }): Possibility[] =>
    part === 'unknown'
      ? unknownOrigins(probability)
      : causes.length === 0
        ? [{ name: label, causeId: null, part, partName, probability }]
        : causes.map((cause) => ({
            name: cause.id,
            causeId: cause.id,
            part,
            partName,
            probability: probability * cause.probability,
          })),
  );
  const others = new Map<string, Possibility>();
  for (const { label, part, name: partName, probability } of group.flatMap(
    ({ sharesFrequencyWith }) => sharesFrequencyWith,
  )) {
    const known = others.get(label)?.probability ?? 0;
    if (!labels.has(label) && probability > known)
      others.set(label, { name: label, causeId: null, part, partName, probability });
  }
  const named = [...ranked, ...others.values()];
  const sum = named.reduce((total, { probability }) => total + probability, 0);
  if (sum >= 1) return named.map((one) => ({ ...one, probability: one.probability / sum }));
  return [...named, ...unknownOrigins(1 - sum)];
}

/** What is not named can still follow the road, the engine or neither; further runs tell which. */
function unknownOrigins(probability: number): Possibility[] {
  const third = { causeId: null, probability: probability / 3 };
  return [
    { ...third, name: 'something that follows the road', part: 'driveshaft' },
    { ...third, name: 'something that follows the engine', part: 'engine' },
    { ...third, name: 'something that follows neither', part: 'fixed' },
  ];
}
