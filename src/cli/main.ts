/**
 * perrev on the command line.
 *
 *   main ──▶ run ──▶ commands/*.ts, bench/*.ts ──▶ core (reads, analyses)  ──▶ report as text, JSON or page
 *              options.ts (words → job)     load.ts (files → job + recordings)
 */
import { isBatchThread, serveBatch } from './commands/batch-pool.ts';
import { nodeIo } from './node-io.ts';
import { run } from './run.ts';

// A reader that stops early (head, less) closes the pipe: that is no fault of ours, end quietly.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

const ended = (code: number): void => {
  process.exitCode = code;
};

const stoppedByFault = (error: unknown): void => {
  const text = error instanceof Error ? error.message : String(error);
  process.stderr.write(
    `perrev: stopped by a fault of its own: ${text}. Nothing was changed. Please report it with the file that caused it.\n`,
  );
  process.exitCode = 1;
};

if (isBatchThread) serveBatch(nodeIo());
else run(process.argv.slice(2), nodeIo()).then(ended, stoppedByFault);
