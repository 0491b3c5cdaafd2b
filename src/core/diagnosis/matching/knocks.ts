/**
 * A knock once a turn: something loose that hits makes a row of tones at whole multiples of its part's turning, of which
 * only the first few are lines of the part by themselves (a periodic pulse has all multiples: Fourier). Lines for the
 * others are there only where the recording shows the row: each by itself would be found by chance.
 */
import { lineLabel } from '../../vehicle/labels.ts';
import type { Line, Part } from '../../vehicle/line.ts';
import type { Vehicle } from '../../vehicle/vehicle.ts';
import type { RunEvidence } from '../observing/run-evidence.ts';
import { stoodStill } from '../observing/tone-motion.ts';
import { inferJob } from './infer-job.ts';
import type { RunInference } from './infer-run.ts';
import { priorMomentsOf } from '../origins/scale-prior.ts';
import type { Match } from './match.ts';

/** Multiples that are looked for; 1× and 2× are lines anyhow, and have other causes. Judgment. */
const FIRST = 3;
const LAST = 12;
/** What turns once a knock: the driveshafts, and each wheel with its hub, brake and tire. */
const KNOCKING: readonly Part[] = ['driveshaft', 'tire'];
/** A row has so many of them, in one run, of which so many fit no expected line. Judgment. */
const LEAST_TONES = 3;
const LEAST_UNNAMED = 2;
/** A tone of the row stands this near to its multiple, relative: what a shaft wanders within a run. */
const WITHIN = 6e-4;
/** The turning speed may be off by so many of its standard uncertainties. */
const REACH_SDS = 2.5;
/** An engine that turns in the same ratio would make the same row: then nothing is said. */
const SAME_RATIO = 0.01;

interface Row {
  /** Turning speed that its tones are multiples of. */
  readonly hz: number;
  readonly orders: readonly number[];
  readonly unnamed: number;
}

/** A line that did not stand still while the speed moved. */
const isMovingLine = (run: RunEvidence, { tone, others }: Match): boolean =>
  !stoodStill(run, tone) && others.resonance + others.noise < 0.5;

/** Not surely the road line of another part. */
const isNoOthers = (once: Line, { lines: [first] }: Match): boolean =>
  !first ||
  first.origin.group !== 'road' ||
  first.probability <= 0.5 ||
  (first.origin.line.part === once.part && first.origin.line.name === once.name);

const isUnnamed = ({ lines }: Match): boolean => (lines[0]?.probability ?? 0) < 0.5;

/** The tones that are multiples of one turning speed. */
const rowAt = (hz: number, matches: readonly Match[]): Row => {
  const hits = matches.flatMap((match) => {
    const order = Math.round(match.tone.peak.frequencyHz / hz);
    const off = Math.abs(match.tone.peak.frequencyHz / (order * hz) - 1);
    return order >= FIRST && order <= LAST && off < WITHIN ? [{ order, unnamed: isUnnamed(match) }] : [];
  });
  const orders = [...new Set(hits.map(({ order }) => order))];
  return { hz, orders, unnamed: hits.filter((hit) => hit.unnamed).length };
};

/**
 * The longest row of one part, at the turning speeds that its tones themselves would give: about the speed that all
 * lines together say, and about the stated one, as a row that is no line's pulls that astray.
 */
const rowOf = (inference: RunInference, once: Line): Row | null => {
  const moving = inference.matches.filter((match) => isMovingLine(inference.run, match));
  const tones = moving.filter((match) => isNoOthers(once, match));
  const rows = [inference.posterior.road, priorMomentsOf(inference.prior.road)].flatMap(({ mean, sd }) => {
    const expectedHz = once.frequencyHz * Math.exp(mean);
    const reach = Math.max(WITHIN, REACH_SDS * sd);
    return tones
      .map(({ tone: { peak } }) => peak.frequencyHz / Math.max(1, Math.round(peak.frequencyHz / expectedHz)))
      .filter((hz) => Math.abs(hz / expectedHz - 1) < reach)
      .map((hz) => rowAt(hz, tones));
  });
  const longest = rows.reduce<Row | null>((a, b) => (a && a.orders.length >= b.orders.length ? a : b), null);
  // A tooth that another part's line took before the row was known is weighed between the two.
  return longest && isRow(longest) ? rowAt(longest.hz, moving) : null;
};

/** Multiples with a common factor are those of something that turns so much faster: an engine of unknown speed. */
const isRow = ({ orders, unnamed }: Row): boolean =>
  orders.length >= LEAST_TONES && unnamed >= LEAST_UNNAMED && orders.reduce(commonFactor, 0) === 1;

const commonFactor = (a: number, b: number): number => (b === 0 ? a : commonFactor(b, a % b));

const turnsAlike = ({ run }: RunInference, { frequencyHz }: Line): boolean => {
  const engineHz = run.expected?.engineHz ?? null;
  return engineHz !== null && Math.abs(engineHz / frequencyHz - 1) < SAME_RATIO;
};

/** The line of another multiple: all that is relative stays. */
const multipleOf = (once: Line, order: number): Line => ({
  ...once,
  order,
  label: lineLabel(once.part, order, once.name, 'knock'),
  role: 'knock',
  perTurn: order * once.perTurn,
  frequencyHz: order * once.frequencyHz,
  frequencySdHz: order * once.frequencySdHz,
});

/** Lines of the rows that a run shows, as far as they are not expected anyhow. */
const knockLines = (inference: RunInference): readonly Line[] => {
  const lines = inference.run.expected?.lines ?? [];
  const turning = lines.filter((line) => KNOCKING.includes(line.part) && line.order === 1);
  return turning
    .filter((once) => !turnsAlike(inference, once))
    .flatMap((once) => (rowOf(inference, once)?.orders ?? []).map((order) => multipleOf(once, order)))
    .filter((made) => !lines.some(({ label }) => label === made.label));
};

const withLines = (run: RunEvidence, more: readonly Line[]): RunEvidence =>
  run.expected === null || more.length === 0
    ? run
    : { ...run, expected: { ...run.expected, lines: [...run.expected.lines, ...more] } };

/** All runs weighed together; where one shows a row of a knock, once more with its lines. */
export const inferWithKnocks = (
  vehicle: Vehicle,
  runs: readonly RunEvidence[],
  onRun?: (index: number) => void,
): readonly RunInference[] => {
  const inferences = inferJob(vehicle, runs, onRun);
  const found = inferences.flatMap(knockLines);
  if (found.length === 0) return inferences;
  const knocking = runs.map((run) => {
    const scaled = (line: Line): Line => {
      const once = run.expected?.lines.find(
        (one) => one.part === line.part && one.name === line.name && one.order === 1,
      );
      return once ? multipleOf(once, line.order) : line;
    };
    const labels = [...new Set(found.map(({ label }) => label))];
    return withLines(
      run,
      labels.map((label) => scaled(found.find((line) => line.label === label)!)),
    );
  });
  return inferJob(vehicle, knocking);
};
