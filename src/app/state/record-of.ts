/** The open job as a record of the job book. */
import { writeJob } from '../../core/job/job-file.ts';
import type { Job } from '../../core/job/job.ts';
import type { AnswerSummary, StoredJob } from '../book/stored-job.ts';
import { storedOf } from '../book/stored-job.ts';
import type { JobEvent } from '../book/timeline.ts';
import { addEvents, eventOfAnswer, eventsOfChange } from '../book/timeline.ts';
import type { Session } from './session.svelte.ts';

interface Keeping {
  readonly id: string;
  readonly events: readonly JobEvent[];
  /** The record as it was last saved or loaded. */
  readonly before: StoredJob | null;
  readonly nowMs: number;
}

export function recordOf(session: Session, { id, events, before, nowMs }: Keeping): StoredJob {
  const answer = answerOf(session, nowMs) ?? before?.answer;
  const base = { id, revision: 0, createdMs: before?.createdMs ?? nowMs, updatedMs: nowMs, events };
  return storedOf(answer ? { ...base, answer } : base, session.document);
}

function answerOf({ analysis, analysed }: Session, atMs: number): AnswerSummary | null {
  if (!analysis || !analysed) return null;
  const { verdict, sentence } = analysis.report;
  return { verdict, sentence, atMs, of: writeJob(analysed) };
}

/** What has happened to the open job, with what its last change adds. @param before null where all in it is new */
export function eventsNow(
  { job, analysis, analysed }: Session,
  events: readonly JobEvent[],
  before: Job | null,
  nowMs: number,
): readonly JobEvent[] {
  const added = eventsOfChange(before ?? { ...job, runs: [], measurements: [] }, job, nowMs);
  const answered = analysis && analysed === job ? eventOfAnswer(events, analysis.report, nowMs) : null;
  return added.length > 0 || answered ? addEvents(events, answered ? [...added, answered] : added) : events;
}
