/** Limits the shop or the maker sets for a job. */
import type { LimitId } from '../../core/driveline/limit.ts';
import { limitOf } from '../../core/driveline/limit.ts';
import type { Job } from '../../core/job/job.ts';
import { parseLengthMm, parseRatio } from '../../core/quantity.ts';
import { without } from '../form/document.ts';

/** The job with a figure of its own for a limit, in the limit's unit; empty or senseless text brings the default back. */
export function setLimit(job: Job, id: LimitId, text: string): Job {
  const limits = job.limits ?? {};
  const { unit } = limitOf(id);
  const parsed = unit === 'mm' ? parseLengthMm(text, 'mm') : parseRatio(text);
  if (text.trim() === '' || !parsed.ok || parsed.value <= 0) return { ...job, limits: without(limits, id) };
  return { ...job, limits: { ...limits, [id]: { value: parsed.value } } };
}
