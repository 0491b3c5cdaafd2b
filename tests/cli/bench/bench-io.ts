/** Runs a bench command in this process, as main would, over files held in memory. */
import type { Command } from '../../../src/cli/io.ts';
import { UsageError } from '../../../src/cli/io.ts';

export interface Outcome {
  readonly status: number;
  readonly stdout: string;
  readonly stderr: string;
}

const missing = (path: string): Error => Object.assign(new Error(`no such file: ${path}`), { code: 'ENOENT' });

export async function runBench(
  command: Command,
  args: readonly string[],
  files: Readonly<Record<string, string>> = {},
): Promise<Outcome> {
  let stdout = '';
  let stderr = '';
  const bytesOf = (path: string): Uint8Array => {
    const text = files[path];
    if (text === undefined) throw missing(path);
    return new TextEncoder().encode(text);
  };
  const io = {
    stdout: (text: string) => void (stdout += text),
    stderr: (text: string) => void (stderr += text),
    readFile: async (path: string) => bytesOf(path),
    openFile: async (path: string) => {
      const bytes = bytesOf(path);
      const chunks = (async function* () {
        yield bytes;
      })();
      return { chunks, sizeBytes: bytes.length };
    },
    writeFile: async () => {
      throw new Error('the bench writes no files');
    },
    terminalColumns: null,
    emphasis: false,
    progress: false,
  };
  try {
    return { status: await command.run([...args], io), stdout, stderr };
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    return { status: 2, stdout, stderr: `perrev ${command.name}: ${error.message}\n` };
  }
}

/** The object printed with --json. */
export const jsonOf = ({ status, stdout, stderr }: Outcome): Record<string, never> => {
  if (status !== 0) throw new Error(`exit ${status}: ${stderr}`);
  return JSON.parse(stdout) as Record<string, never>;
};

/** The text without its line breaks, as it is read aloud. */
export const spoken = (text: string): string => text.replaceAll(/\s+/g, ' ');
