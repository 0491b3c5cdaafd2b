/** What the worker does with a request. Knows no worker: posts through the function it is given. */
import { analyse } from '../core/analyse.ts';
import { compare, stagesOf } from '../core/compare.ts';
import { reweigh } from '../core/conclude.ts';
import { angleWhatIf } from '../core/driveline/angles/angle-what-if.ts';
import type { Problem, Result } from '../core/note.ts';
import { assertNever, success } from '../core/note.ts';
import type { Progress } from '../core/report/analysis.ts';
import { trialLevels } from '../core/trials/trial-levels.ts';
import type { AnswerOf, FromWorker, SourcedJob, Task, TaskKind, ToWorker } from './protocol.ts';
import type { RecordingFacts } from './recording-facts.ts';
import { factsOf, factsOfProblem } from './recording-facts.ts';
import { Shelf } from './shelf.ts';

export type Post = (message: FromWorker) => void;
type Tell = (progress: Progress) => void;

/** Reading's share of the whole work, for the progress bar; measured on the demo jobs. */
const READING_SHARE = 0.4;

/** Answers requests, and keeps the recordings it has read. */
export class RequestHandler {
  readonly #shelf = new Shelf();
  readonly #post: Post;

  constructor(post: Post) {
    this.#post = post;
  }

  /** Always ends in exactly one 'answer' or 'problem' message. */
  async handle({ request, task }: ToWorker): Promise<void> {
    try {
      const result = await this.#answer(task, (progress) => this.#post({ kind: 'progress', request, progress }));
      if (result.ok) this.#post({ kind: 'answer', request, answer: result.value });
      else this.#post({ kind: 'problem', request, problem: result.problem });
    } catch (error) {
      this.#post({ kind: 'problem', request, problem: problemOfBug(error) });
    }
  }

  async #answer(task: Task, tell: Tell): Promise<Result<AnswerOf[TaskKind]>> {
    switch (task.kind) {
      case 'read':
        return success(await this.#facts(task.sources, tell));
      case 'analyse':
        return this.#analysis(task.of, tell);
      case 'reweigh':
        return success(reweigh({ report: task.report, bases: task.bases, pictures: [] }, task.job).report);
      case 'compare':
        return this.#comparison(task.before, task.after, tell);
      case 'trial-levels': {
        const recorded = await this.#shelf.readJob(task.of, reading(tell));
        return recorded.ok ? trialLevels(recorded.value, task.label) : recorded;
      }
      case 'angle-what-if':
        return angleWhatIf(task.input, task.geometry, { splineTeeth: task.splineTeeth });
      default:
        return assertNever(task);
    }
  }

  async #facts(sources: SourcedJob['sources'], tell: Tell): Promise<RecordingFacts[]> {
    const facts: RecordingFacts[] = [];
    for (const [index, source] of sources.entries()) {
      const result = await this.#shelf.read(source, (within, text) =>
        tell({ step: 'reading', fraction: (index + within) / sources.length, text }),
      );
      const { key, name } = source;
      facts.push(result.ok ? factsOf(key, result.value) : factsOfProblem(key, name, result.problem));
    }
    return facts;
  }

  async #analysis(of: SourcedJob, tell: Tell): Promise<Result<AnswerOf['analyse']>> {
    const share = of.sources.every((source) => this.#shelf.has(source)) ? 0 : READING_SHARE;
    const recorded = await this.#shelf.readJob(of, reading(tell, share));
    if (!recorded.ok) return recorded;
    return analyse(recorded.value.job, recorded.value.recordings, {
      onProgress: (progress) => tell({ ...progress, fraction: share + (1 - share) * progress.fraction }),
    });
  }

  async #comparison(
    before: SourcedJob,
    after: SourcedJob | undefined,
    tell: Tell,
  ): Promise<Result<AnswerOf['compare']>> {
    const first = await this.#shelf.readJob(before, reading(tell, after ? READING_SHARE / 2 : READING_SHARE));
    if (!first.ok) return first;
    const second = after ? await this.#shelf.readJob(after, reading(tell, READING_SHARE / 2, READING_SHARE / 2)) : null;
    if (second && !second.ok) return second;
    tell({ step: 'matching', fraction: READING_SHARE, text: 'comparing' });
    const stages = second ? { before: first.value, after: second.value } : stagesOf(first.value);
    return compare(stages.before, stages.after);
  }
}

/** Reading as a share of the whole work, which has come this far before it. */
const reading =
  (tell: Tell, share = 1, from = 0) =>
  (fraction: number, text: string): void =>
    tell({ step: 'reading', fraction: from + share * fraction, text });

/** A bug must end in a message too, not in a bar that never moves. */
function problemOfBug(error: unknown): Problem {
  const what = error instanceof Error ? error.message : String(error);
  return {
    code: 'internal-error',
    message: `perrev made a mistake of its own while working on this job: ${what}.`,
    remedy: 'The job is kept. Please report the sentence above together with the recording, if you can share it.',
  };
}
