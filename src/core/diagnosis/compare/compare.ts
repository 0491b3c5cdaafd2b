/** Two sets of runs of one vehicle → what changed, by order, and whether the complaint is gone. */
import type { Line } from '../../vehicle/line.ts';
import type { RunInference } from '../matching/infer-run.ts';
import type { Finding } from '../findings/finding.ts';
import { isSameTone } from '../findings/same-tone.ts';
import { changeOf } from './change.ts';
import type { KnownAs } from './change-of-finding.ts';
import { isChangeOf } from './change-of-finding.ts';
import type { ComparedPair, ComparedRun, Comparison, OrderChange } from './comparison.ts';
import { COMPARISON_SCHEMA_VERSION } from './comparison.ts';
import { fixedToneChanges } from './fixed-tones.ts';
import { unknownToneChanges } from './unknown-tones.ts';
import { orderChange, overNoise } from './order-change.ts';
import type { Pair } from './pair.ts';
import { fasterDb, pairRuns, statedFaster } from './pair.ts';
import { partnerLevel } from './partner-level.ts';
import type { RunLevel } from './run-levels.ts';
import { hiddenLevel, runLevels } from './run-levels.ts';
import { sentenceOf } from './sentence.ts';
import { speedMissed } from './speed-missed.ts';
import { beatSdDb } from './wheels-beat.ts';

/** The runs of one side of the repair, and what of them a person would notice, most important first. */
export interface Side {
  readonly inferences: readonly RunInference[];
  readonly found: readonly Finding[];
}

/**
 * @param before the runs of the complaint
 * @param after the runs that shall prove the repair
 */
export function compareRuns(before: Side, after: Side): Comparison {
  const pairs = pairRuns(before.inferences, after.inferences);
  const complaint = before.found[0] ?? null;
  const unknownHz = [...before.found, ...after.found].flatMap(({ part, trueHz }) => (part === 'unknown' ? trueHz : []));
  const results = pairs.map((pair) => comparePair(pair, unknownHz, complaint?.label ?? null));
  const compared = results.map(({ pair }) => pair);
  const fresh = newFindings(after.found, before.found, compared);
  return {
    schemaVersion: COMPARISON_SCHEMA_VERSION,
    ...sentenceOf({ complaint, change: changeOfFinding(complaint, compared), fresh, pairs: compared }),
    pairs: compared,
    notes: [
      ...compared
        .filter(({ differences }) => differences.length > 0)
        .map(({ before: a, after: b, differences }) => ({
          code: 'runs-not-alike',
          severity: 'warning' as const,
          text: `“${a.name}” and “${b.name}” are not like for like: ${differences.join('; ')}. The intervals are wider for it.`,
        })),
      ...results
        .flatMap(({ driveAgain }) => driveAgain ?? [])
        .map((text) => ({ code: 'speed-missed', severity: 'warning' as const, text })),
    ],
  };
}

interface PairResult {
  readonly pair: ComparedPair;
  /** What a run at the same speed would tell more of the complaint; null where that is nothing. */
  readonly driveAgain: string | null;
}

/**
 * @param unknownHz where the findings of both sides have unknown tones
 * @param complaint label of the complaint's order; null where there is none
 */
function comparePair(pair: Pair, unknownHz: readonly number[], complaint: string | null): PairResult {
  const before = runLevels(pair.before);
  const after = runLevels(pair.after);
  const speedDb = fasterDb(pair);
  const faster = statedFaster(pair);
  const runs = { before: comparedRun(pair.before), after: comparedRun(pair.after) };
  let driveAgain: string | null = null;
  const orders = [...new Set([...before.keys(), ...after.keys()])].flatMap((label) => {
    // Where one run shows the order and the other does not, what could hide there is looked for more widely.
    const one = levelIn(pair.before, before.get(label), pair.after, after.get(label), faster && 1 / faster);
    const other = levelIn(pair.after, after.get(label), pair.before, before.get(label), faster);
    if (!one || !other) return [];
    // What neither run's diagnosis found is the road's: a level read there says what could hide, no more.
    const [a, b] = one.own || other.own ? overNoise([one, other], pair) : [hidden(one), hidden(other)];
    const { line, levels } = one.origin;
    const unlikeSdDb = Math.hypot(pair.unlikeSdDb, beatSdDb(line.part, levels.normal.medianMps2, [a, b]));
    const conditions = { speedDb: orderFasterDb(a, b) ?? speedDb ?? 0, unlikeSdDb };
    const change = changeOf(a, b, conditions);
    if (label === complaint) driveAgain = speedMissed([a, b], conditions, change, runs);
    return [orderChange(lineNames(line), [a, b], change)];
  });
  const { unlikeSdDb, differences } = pair;
  const others = [...fixedToneChanges(pair, speedDb ?? 0, unknownHz), ...unknownToneChanges(pair, unknownHz, speedDb)];
  return { pair: { ...runs, unlikeSdDb, differences, orders: [...orders, ...others] }, driveAgain };
}

/**
 * An order's level in one run, helped where the partner shows the order surely.
 * @param faster speed of this run over the partner's; null where not stated
 */
function levelIn(
  inference: RunInference,
  level: RunLevel | undefined,
  partner: RunInference,
  partnersLevel: RunLevel | undefined,
  faster: number | null,
): RunLevel | null {
  if (level?.own || !partnersLevel?.own) return level ?? null;
  const shown = { inference: partner, level: partnersLevel };
  const found = faster === null ? null : partnerLevel(shown, inference, faster);
  return found ?? level ?? hiddenLevel(inference, partnersLevel.origin.line.label);
}

/** Where both runs show the order, it tells better than any speed read elsewhere how much faster the second was. */
const orderFasterDb = (one: RunLevel, other: RunLevel): number | null =>
  one.own && other.own && one.origin.group === 'road' ? 20 * Math.log10(other.frequencyHz / one.frequencyHz) : null;

const lineNames = ({ part, name, order, label }: Line): Pick<OrderChange, 'part' | 'name' | 'order' | 'label'> => ({
  part,
  ...(name === undefined ? {} : { name }),
  order,
  label,
});

const hidden = (level: RunLevel): RunLevel => ({ ...level, seen: false });

const comparedRun = ({ run, posterior }: RunInference): ComparedRun => ({
  name: run.name,
  speedMps: run.condition.speedMps === undefined ? null : run.condition.speedMps * Math.exp(posterior.road.mean),
  durationS: run.prepared.durationS,
});

/** The change of a finding, in the pair most alike of those whose run before showed it. */
export function changeOfFinding(finding: Finding | null, compared: readonly ComparedPair[]): OrderChange | null {
  if (!finding) return null;
  const isIts = isChangeOf(knownAs(finding));
  const changes = compared.flatMap(({ orders, unlikeSdDb }) =>
    orders.filter((order) => isIts(order) && order.before.seen).map((change) => ({ change, unlikeSdDb })),
  );
  return changes.sort((a, b) => a.unlikeSdDb - b.unlikeSdDb)[0]?.change ?? null;
}

const knownAs = ({ label, part, order, trueHz }: Finding): KnownAs => ({ label, part, order, frequencyHz: trueHz });

/** What is felt or heard after, was not before, and did change: the road may have covered it then, or cover it now. */
const newFindings = (
  after: readonly Finding[],
  before: readonly Finding[],
  compared: readonly ComparedPair[],
): Finding[] =>
  after.filter((finding, i) => {
    const changes = compared.flatMap(({ orders }) => orders.filter(isChangeOf(knownAs(finding))));
    const changed = changes.length === 0 || changes.some(({ real, changeDb }) => real && changeDb > 0);
    const isKnown = [...before, ...after.slice(0, i)].some((old) => isSameOrigin(old, finding));
    return finding.perceived !== 'buried' && changed && !isKnown;
  });

/** One order, or tones of no order at one place. */
const isSameOrigin = (one: Finding, other: Finding): boolean =>
  one.label === other.label && (one.order !== null || isSameTone(one.trueHz, other.trueHz));
