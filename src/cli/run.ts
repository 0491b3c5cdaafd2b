/** The words of the command line to a command, and its end to an exit code. */
import { commands } from './commands.ts';
import { UsageError } from './io.ts';
import type { Io } from './io.ts';
import { overview, version } from './overview.ts';

/**
 * Runs one command line, without the program's own name.
 * @returns the exit code: 0 done, 1 a recording could not be read or analysed, 2 wrong usage
 */
export async function run(argv: readonly string[], io: Io): Promise<number> {
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
