/** What the ranking of causes and the choice of the next check are given: findings without causes, and the case. */
import type { LimitOverrides } from '../../driveline/limits/limit.ts';
import type { Measurement } from '../../driveline/measurement.ts';
import type { WorkDone } from '../../job/job.ts';
import type { Line, Part } from '../../vehicle/line.ts';
import type { RunCondition, Vehicle } from '../../vehicle/vehicle.ts';
import type { GrowthHiddenBy } from '../findings/growth-in-sweep.ts';
import type { Perceived } from '../findings/perceived.ts';

/** Level of another order in the same run, seen or as the most that could hide. */
export interface Companion {
  readonly part: Part;
  readonly order: number;
  readonly role?: Line['role'];
  readonly label: string;
  readonly amplitudeMps2: number;
  readonly feltLevel: number;
  readonly seen: boolean;
}

/** A part and order held to be felt or heard, before its causes are ranked. */
export interface FindingBasis {
  readonly part: Part;
  readonly name?: string;
  /** null for fixed and unknown. */
  readonly order: number | null;
  readonly label: string;
  readonly role?: 'firing' | 'mesh' | 'companion' | 'electric' | 'knock';
  readonly probability: number;
  readonly run: string;
  readonly frequencyHz: number;
  readonly amplitudeMps2: number;
  readonly feltLevel: number;
  readonly perceived: Perceived;
  /** Share of the power along gravity, 0..1; null where unknown. */
  readonly verticalShare: number | null;
  /** Other orders measured in the same run. */
  readonly companions: readonly Companion[];
  /** Level grows with speed to this power; null unless the speed varied enough or runs differ. */
  readonly speedExponent: { readonly value: number; readonly sd: number } | null;
  /** Why a run that swept through speeds does not tell it; absent where none did, or it is told. */
  readonly growthHiddenBy?: GrowthHiddenBy;
  /** Level in each load condition that was recorded, m/s²; absent conditions were not driven. */
  readonly levelByLoadMps2: Readonly<Partial<Record<NonNullable<RunCondition['load']>, number>>>;
  /** Share of its frequency within which the tone held it; null where it is broader than a line, absent where not known. */
  readonly heldWithin?: number | null;
  /** True where the level pulsates slowly, as two wheels of slightly different size do. */
  readonly beats: boolean;
}

export interface CaseContext {
  readonly vehicle: Vehicle;
  readonly work: readonly WorkDone[];
  readonly measurements: readonly Measurement[];
  /** The maker's or the shop's own figures in place of default limits. */
  readonly limits?: LimitOverrides;
  /** Ids of the causes that were put right before the runs made after the repair. */
  readonly repaired?: readonly string[];
  /** Label of what shakes as before though what was measured wrong has been put right since; absent where nothing tells. */
  readonly unmoved?: string;
  /** Conditions driven, with the speed used in the analysis. */
  readonly runs: readonly (RunCondition & { readonly name: string; readonly usedSpeedMps: number | null })[];
}
