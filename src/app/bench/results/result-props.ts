/** What the result of a form is worked out from. */
import type { Job } from '../../../core/job/job.ts';
import type { FilledForm } from '../entry.ts';
import type { MeasureForm } from '../measure-form.ts';

export interface ResultProps {
  readonly form: MeasureForm;
  readonly filled: FilledForm;
  readonly job: Job;
}
