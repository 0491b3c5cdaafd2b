/** How a finding's level stands in all runs: by load, and its growth with speed. */
import type { Load } from '../../vehicle/vehicle.ts';
import { limitAt } from '../origins/absence.ts';
import type { Finding } from './finding.ts';
import type { RunInference } from '../matching/infer-run.ts';
import { aliasOfHz } from '../../vehicle/alias.ts';
import { expectedPlace } from '../matching/place.ts';
import { ONE_SPEED, OTHER_SPEED, speedsApart } from '../speeds-apart.ts';

interface LevelInRun {
  readonly load: Load | null;
  readonly speedMps: number | null;
  readonly engineRpm: number | null;
  readonly amplitudeMps2: number;
  /** Standard error of ln(level); infinite where only an upper limit is known. */
  readonly logSd: number;
}

/** Where it is likely enough to be the order's: what a twin is left with at the least (`amongTwins`). */
const MAY_BE_FROM = 0.3;
/**
 * Levels (ln) of two runs at unlike speeds scatter by about this beside their growth: other road, other lane, trim of the
 * throttle. More than from run to run of one drive (`RUN_TO_RUN_SD_DB`), less than under unlike torque. Judgment.
 */
const REPEAT_SD = 0.15;

const levelIn = (inference: RunInference, finding: Finding): LevelInRun | null => {
  const { run } = inference;
  const { load = null, speedMps = null, engineRpm = null } = run.condition;
  const base = { load, speedMps, engineRpm };
  let best: LevelInRun | null = null;
  for (const match of inference.matches) {
    const { amplitudeMps2, amplitudeSdMps2 } = match.tone.peak;
    const share = match.lines.find((line) => line.origin.line.label === finding.label)?.probability ?? 0;
    if (share < MAY_BE_FROM && match !== finding.match) continue;
    if (best && best.amplitudeMps2 > amplitudeMps2) continue;
    best = { ...base, amplitudeMps2, logSd: Math.hypot(REPEAT_SD, amplitudeSdMps2 / amplitudeMps2) };
  }
  if (best || !finding.chosen) return best;
  const origin = inference.origins.find((o) => o.line.label === finding.label);
  if (!origin) return null;
  const hz = aliasOfHz(expectedPlace(inference, origin).hz, run.prepared.samplingRateHz);
  const limit = limitAt(run.limit, hz);
  return Number.isFinite(limit) ? { ...base, amplitudeMps2: limit, logSd: Infinity } : null;
};

/** True also where one of them is not known: levels under other loads are compared at one speed only. */
const isNear = (one: number | null | undefined, other: number | null | undefined): boolean =>
  !(speedsApart(one, other) > ONE_SPEED);

export interface AcrossRuns {
  readonly levelByLoadMps2: Readonly<Partial<Record<Load, number>>>;
  readonly speedExponent: { readonly value: number; readonly sd: number } | null;
}

/** Straight line through ln(level) over ln(speed) of runs driven in the finding's own load, weighted. */
const growth = (levels: readonly LevelInRun[], load: Load | null): AcrossRuns['speedExponent'] => {
  const used = levels.filter((l) => l.load === load && (l.speedMps ?? 0) > 0 && Number.isFinite(l.logSd));
  const speeds = used.map((l) => l.speedMps ?? 1);
  if (used.length < 2 || speedsApart(Math.max(...speeds), Math.min(...speeds)) < OTHER_SPEED) return null;
  const weights = used.map((l) => 1 / l.logSd ** 2);
  const total = weights.reduce((a, b) => a + b, 0);
  const mean = (of: (l: LevelInRun) => number): number =>
    used.reduce((sum, l, i) => sum + weights[i]! * of(l), 0) / total;
  const x = (l: LevelInRun): number => Math.log(l.speedMps ?? 1);
  const centre = mean(x);
  const spread = used.reduce((sum, l, i) => sum + weights[i]! * (x(l) - centre) ** 2, 0);
  const slope = used.reduce((sum, l, i) => sum + weights[i]! * (x(l) - centre) * Math.log(l.amplitudeMps2), 0) / spread;
  return { value: slope, sd: 1 / Math.sqrt(spread) };
};

export const acrossRuns = (finding: Finding, inferences: readonly RunInference[]): AcrossRuns => {
  const levels = inferences.map((inference) => levelIn(inference, finding)).filter((level) => level !== null);
  const own = finding.inference.run.condition;
  const levelByLoadMps2: Partial<Record<Load, number>> = {};
  for (const { load, amplitudeMps2, speedMps, engineRpm } of levels) {
    const isAlike = load === 'standing' ? isNear(engineRpm, own.engineRpm) : isNear(speedMps, own.speedMps);
    if (load && isAlike) levelByLoadMps2[load] = Math.max(levelByLoadMps2[load] ?? 0, amplitudeMps2);
  }
  return { levelByLoadMps2, speedExponent: growth(levels, finding.inference.run.condition.load ?? null) };
};
