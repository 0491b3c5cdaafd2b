/** `perrev batch`: many files in one go, one JSON line each, one bad file not stopping the rest. */
import { availableParallelism } from 'node:os';
import type { Arguments } from '../arguments.ts';
import type { Command, ExitCode, Io } from '../io.ts';
import { UsageError } from '../io.ts';
import { JOB_OPTIONS, RUN_OPTIONS, VEHICLE_OPTIONS, optionHelp } from '../option-table.ts';
import { jobOfFiles } from '../options.ts';
import type { BatchLine } from './batch-file.ts';
import { BATCH_OPTIONS, argumentsOfFile, batchLine, readBatchArguments } from './batch-file.ts';
import { workThrough } from './batch-pool.ts';

async function run(args: string[], io: Io): Promise<ExitCode> {
  const given = readBatchArguments(args);
  const { files } = given;
  if (files.length === 0)
    throw new UsageError('name at least one recording or job file. Try: perrev batch *.csv --speed 62mph');
  if (files.filter((file) => file === '-').length > 1) throw new UsageError('standard input (-) can be read once.');
  const threads = threadsOf(given);
  // Every word is read before the first file is opened, so that wrong usage costs nothing.
  files.forEach((_, index) => jobOfFiles(argumentsOfFile(given, index)));

  const ready = new Map<number, BatchLine>();
  let printed = 0;
  let failed = 0;
  let done = 0;
  const progress = (): void => {
    if (io.progress) io.stderr(`\r${done} of ${files.length} files${failed > 0 ? `, ${failed} failed` : ''}`);
  };
  const onLine = (index: number, line: BatchLine): void => {
    ready.set(index, line);
    done += 1;
    if (!line.ok) failed += 1;
    for (let next = ready.get(printed); next; next = ready.get(printed)) {
      io.stdout(`${next.text}\n`);
      ready.delete(printed);
      printed += 1;
    }
    progress();
  };
  progress();
  const ofInput = (index: number): Promise<BatchLine> => batchLine(given, index, io);
  await workThrough({ files, args, threads, ofInput, onLine, printed: () => printed });
  if (io.progress) io.stderr('\n');
  return failed > 0 ? 1 : 0;
}

function threadsOf(given: Arguments): number {
  const text = given.text('parallel');
  if (text === undefined) return availableParallelism();
  const threads = Number(text);
  if (!Number.isInteger(threads) || threads < 1 || threads > 256)
    throw new UsageError(`--parallel "${text}" is not a whole number from 1 to 256.`);
  return threads;
}

export const batchCommand: Command = {
  name: 'batch',
  summary: 'diagnose many files at once, one JSON line each',
  usage: `Diagnoses many recordings and job files, as many at the same time as there are cores. Each recording stands alone.

  perrev batch monday/*.csv --tire 265/70R17 --axle 3.73 --speed 62mph > monday.jsonl
  perrev batch recordings/*.job.json --parallel 2

Prints one JSON object a line, in the order of the files: {"file", "ok": true, "report"} or {"file", "ok": false,
"problem"}. A file that cannot be read does not stop the rest; the exit status is then 1. Run options are given once
for all files, or once for each. - reads standard input.

${optionHelp('Vehicle', VEHICLE_OPTIONS)}

${optionHelp('Run', RUN_OPTIONS)}

${optionHelp('Job', JOB_OPTIONS)}

${optionHelp('Batch', BATCH_OPTIONS)}`,
  run,
};
