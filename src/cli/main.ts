/**
 * perrev on the command line.
 *
 *   main ──▶ commands/*.ts, bench/*.ts ──▶ core (reads, analyses)  ──▶ report as text, JSON or page
 *              options.ts (words → job)     load.ts (files → job + recordings)
 */
import { isBatchThread, serveBatch } from './commands/batch-pool.ts';
import { commands } from './commands.ts';
import { UsageError } from './io.ts';
import { nodeIo } from './node-io.ts';
import { overview, version } from './overview.ts';

async function main(argv: string[]): Promise<number> {
  const io = nodeIo();
  const [word, ...rest] = argv;
  if (word === undefined || word === '--help' || word === '-h' || word === 'help') {
    io.stdout(overview(commands));
    return word === undefined ? 2 : 0;
  }
  if (word === '--version') {
    io.stdout(`perrev ${version}\n`);
    return 0;
  }
  const command = commands.find(({ name }) => name === word);
  if (!command) {
    io.stderr(
      `perrev: no command "${word}". Commands: ${commands.map(({ name }) => name).join(', ')}. Try: perrev --help\n`,
    );
    return 2;
  }
  if (rest.includes('--help') || rest.includes('-h')) {
    io.stdout(`${command.usage}\n`);
    return 0;
  }
  try {
    return await command.run(rest, io);
  } catch (error) {
    if (error instanceof UsageError) {
      io.stderr(`perrev ${command.name}: ${error.message}\n`);
      return 2;
    }
    throw error;
  }
}

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
else main(process.argv.slice(2)).then(ended, stoppedByFault);
