/** The measurements for the customer's page: each figure with its limit, without where the limit comes from. */
import { judgeInJob } from '../bench/judge-in-job.ts';
import { limitFigureText, measuredText } from '../../core/report/bench-text.ts';
import { measurementTitle, verdictText } from '../bench/judged-words.ts';
import type { Job } from '../../core/job/job.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { texts } from '../texts.ts';

export interface MeasuredValue {
  readonly title: string;
  readonly verdict: string;
  /** 'joint 1 angle 5.5°, limit at most 3°'. */
  readonly figures: readonly string[];
}

/** Only what decides a verdict, and only so much of it that the page stays one page. */
const MOST_FIGURES = 2;

export function measuredValues(job: Job, units: UnitSystem): MeasuredValue[] {
  return job.measurements.map((measurement) => {
    const judged = judgeInJob(measurement, job);
    const title = measurementTitle(measurement);
    if (!judged.ok) return { title, verdict: '', figures: [] };
    const outside = judged.value.judged.filter(({ inside }) => !inside);
    const figures = (outside.length > 0 ? outside : judged.value.judged).slice(0, MOST_FIGURES).map((number) => {
      const most = texts.bench.limit(number.limit.sense, limitFigureText(number.limit, units));
      return texts.print.figure(number.title, measuredText(number, units), most);
    });
    return { title, verdict: verdictText(judged.value), figures };
  });
}
