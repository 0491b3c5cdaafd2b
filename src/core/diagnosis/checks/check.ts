/** A check: something to do that would tell causes apart. Minutes and outcome probabilities stand in weights.ts. */
import type { WorkDone } from '../../job/job.ts';
import type { Part } from '../../vehicle/line.ts';
import type { Vehicle } from '../../vehicle/vehicle.ts';
import type { CautionId } from '../../cautions.ts';
import type { CheckId } from '../weights.ts';

/** What is asked of the finding that shakes most. */
export interface FirstFinding {
  readonly part: Part;
  readonly order: number | null;
}

export interface Check {
  readonly id: CheckId;
  readonly title: string;
  readonly kind: 'measurement' | 'run' | 'swap' | 'inspection';
  readonly how: readonly string[];
  /** Whether it can be made on this vehicle; on all where absent. */
  readonly applies?: (vehicle: Vehicle) => boolean;
  /** Where it goes before all others, however little doubt it removes: what could kill, and what the work done calls for. */
  readonly first?: (finding: FirstFinding, work: readonly WorkDone[]) => boolean;
  /** The check that tells where to do this one: it is proposed first where it was not done yet. */
  readonly after?: CheckId;
  /** Limit with where it comes from; null where the outcome is seen rather than measured. */
  readonly limit: string | null;
  /** What was found, as evidence: the sentence for a good and for a bad outcome. */
  readonly fine: string;
  readonly wrong: string;
  readonly cautions: readonly CautionId[];
}
