/** The open job as a record of the job book. */
import type { AnswerSummary, StoredJob } from '../book/stored-job.ts';
import { storedOf } from '../book/stored-job.ts';
import type { JobEvent } from '../book/timeline.ts';
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
  return { verdict, sentence, atMs };
}
