/** A cause: what a technician can put right, told as data; how much each piece of evidence weighs stands in weights.ts. */
import type { WorkDone } from '../../job/job.ts';
import type { CaseContext, FindingBasis } from '../evidence/case.ts';
import type { Sign } from '../signs.ts';
import type { CauseId, CheckId } from '../weights.ts';

export interface Cause {
  readonly id: CauseId;
  readonly title: string;
  /** Why this shakes at this order, in a sentence or two. */
  readonly why: string;
  /** What puts it right. */
  readonly repair: string;
  /** Whether this finding on this vehicle can have the cause at all. */
  readonly applies: (basis: FindingBasis, context: CaseContext) => boolean;
  /** Why a sign, a check's outcome or work done speaks to this cause, where the general sentence does not say it. */
  readonly reasons?: Readonly<Partial<Record<Sign | CheckId | WorkDone, string>>>;
}
