/** The Report: one plain object that text, page and screen are renderings of. The `--json` output is this object. */
import type { AfterProof } from '../diagnosis/compare/after-proof.ts';
import type { Proof } from '../diagnosis/compare/proof.ts';
import type { ProposedCheck, RankedCause, RankedFinding, RankedOther, Repair } from '../diagnosis/ranking/ranked.ts';
import type { Perceived } from '../diagnosis/findings/perceived.ts';
import type { Note } from '../note.ts';
import type { AxisName } from '../reading/recording.ts';
import type { Part } from '../vehicle/line.ts';
import type { SpeedSource, Vehicle, Load } from '../vehicle/vehicle.ts';
import type { WorkDone } from '../job/job.ts';
import type { Measurement } from '../driveline/measurement.ts';

export const REPORT_SCHEMA_VERSION = 1;

export type Verdict = 'found' | 'nothing-felt' | 'cannot-tell';

export interface Report {
  readonly schemaVersion: number;
  readonly program: { readonly name: 'perrev'; readonly version: string };
  readonly verdict: Verdict;
  /** The answer as one or two sentences. */
  readonly sentence: string;
  /** Why, in one to three sentences a sceptic can follow. */
  readonly why: string;
  readonly settings: Readonly<Record<string, string | number | boolean>>;
  readonly vehicle: Vehicle;
  /** Present where something else than was given was taken for true, since only that fits the recordings. */
  readonly takenInstead?: TakenInstead;
  readonly work: readonly WorkDone[];
  readonly measurements: readonly Measurement[];
  readonly runs: readonly RunReport[];
  readonly orders: readonly OrderReport[];
  readonly peaks: readonly PeakReport[];
  readonly findings: readonly FindingReport[];
  /** What a measurement has found outside its limit: to be put right and proved before the checks. Absent in older reports. */
  readonly repairs?: readonly RepairReport[];
  readonly checks: readonly CheckReport[];
  /** What the runs after the repair showed, and what follows; absent where the job holds none, and in older reports. */
  readonly proof?: ProofReport;
  readonly cautions: readonly string[];
}

export interface RunReport {
  readonly name: string;
  readonly file: string;
  readonly samplingRateHz: number;
  readonly durationS: number;
  readonly axes: readonly AxisName[];
  readonly load: Load | null;
  readonly gearRatio: number | null;
  readonly speed: SpeedReport;
  readonly engine: { readonly usedRpm: number | null; readonly source: 'given' | 'logged' | 'gear' | 'unknown' };
  /** How the speed moved: steady, drifting (found in the recording) or logged. */
  readonly speedVaried: 'steady' | 'drift' | 'ramp' | 'logged' | 'unknown';
  readonly notes: readonly Note[];
}

/** A usual slip in what was given, and what was taken in its place. */
export interface TakenInstead {
  readonly kind: 'speed-unit' | 'speeds-exchanged' | 'axle-ratio';
  /** In words: '60 mph', '60 km/h'; null where what was given has no short name. */
  readonly fits: string;
  readonly given: string | null;
  /** Of the kind of that name only. */
  readonly axleRatio?: number;
}

export interface SpeedReport {
  readonly statedMps: number | null;
  /** Present where `statedMps` is not what was given but what was taken for it, since only that fits the recording. */
  readonly restated?: true;
  readonly usedMps: number | null;
  /** Road speed over rolling circumference, as implied by the recording, relative to stated; 1 = as stated. */
  readonly scale: number;
  readonly scaleSd: number;
  readonly source: SpeedSource | 'unknown';
  /** Rolling circumference from the tire data, m; null where none was given. */
  readonly circumferenceM: number | null;
  /** Circumference the recording implies if the stated speed is right, m, with its standard uncertainty. */
  readonly impliedCircumferenceM: number | null;
  readonly impliedCircumferenceSdM: number | null;
}

export interface OrderReport {
  readonly run: string;
  readonly part: Part;
  readonly name?: string;
  readonly order: number;
  readonly label: string;
  readonly frequencyHz: number;
  readonly frequencySdHz: number;
  readonly visibility: 'seen' | 'not-seen' | 'above-nyquist';
  readonly aliasHz?: number;
  /** Label of the order whose the tone at this one's frequency rather is. */
  readonly sharesLineOf?: string;
  /**
   * Measured level at the line (0-to-peak), or the upper limit of what could hide there when not seen:
   * all of a tone that it shares. Above half the rate that of the image where it was found, else null; null too above
   * what is looked through: where it came within 2 % of half the rate at the fastest of the run, and above 800 Hz.
   */
  readonly amplitudeMps2: number | null;
  readonly feltLevel: number | null;
}

export interface PeakReport {
  readonly run: string;
  readonly frequencyHz: number;
  readonly frequencySdHz: number;
  readonly amplitudeMps2: number;
  readonly axisAmplitudeMps2: readonly number[];
  readonly velocityMmps: number;
  readonly feltLevel: number;
  readonly overFloorDb: number;
  readonly falseAlarmProbability: number;
  readonly verticalShare: number | null;
  /** Probabilities over all origins, most likely first; add up to 1. */
  readonly matches: readonly MatchReport[];
}

export interface MatchReport {
  readonly part: Part;
  readonly name?: string;
  readonly order: number | null;
  readonly label: string;
  readonly probability: number;
  /** True where the peak would be the line's alias image. */
  readonly alias?: boolean;
  /** Where the line was expected, Hz (after the speed scale), for 'why this, why not that'. */
  readonly expectedHz?: number;
  readonly expectedSdHz?: number;
}

export interface FindingReport extends RankedFinding {
  readonly frequencySdHz: number;
  /** Where it shook in parts of the run only: when, on the recording's clock, s. Levels are of these parts then. */
  readonly during?: readonly { readonly fromS: number; readonly toS: number }[];
  readonly amplitudeMps2: number;
  readonly perceived: Perceived;
  /** Root mean square over that of the road's own shake in the octave about it; null where that is not known. */
  readonly overRoad: number | null;
  readonly sharesFrequencyWith: readonly SharedOrigin[];
  readonly for: readonly string[];
  readonly against: readonly string[];
  readonly missing: readonly string[];
}

export interface SharedOrigin extends RankedOther {
  /** The run that would separate the two, and how far apart they would then be, in a sentence. */
  readonly separatedBy: string;
  /** What it would most likely be if it is this one; absent where it is too unlikely, and in older reports. */
  readonly likeliest?: readonly { readonly title: string; readonly probability: number }[];
}

export type CauseReport = RankedCause;

export type RepairReport = Repair;

export type CheckReport = ProposedCheck;

/** The proof with what is to be done now: it comes before repairs and checks. */
export type ProofReport = Proof &
  AfterProof & {
    /** Titles of the causes that the job says were put right, none where it does not say; absent in older reports. */
    readonly repaired?: readonly string[];
  };
