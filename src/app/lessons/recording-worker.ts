/** Makes a case's recording off the page's thread: one case in, one recording and its answer out. */
import { csvLayout } from '../../core/simulate/csv-layouts.ts';
import { csvText } from '../../core/simulate/csv-write.ts';
import { simulate } from '../../core/simulate/simulate.ts';
import { answerOf } from './class-answer.ts';
import type { ClassCase } from './class-case.ts';
import { scenarioOf } from './class-case.ts';
import type { MadeRecording } from './make-recording.ts';

self.onmessage = (event: MessageEvent<ClassCase>): void => {
  const run = simulate(scenarioOf(event.data));
  const made: MadeRecording = {
    csv: csvText(run, csvLayout('plain'), event.data.seed),
    samples: run.stampS.length,
    answer: answerOf(event.data, run.truth),
  };
  self.postMessage(made);
};
