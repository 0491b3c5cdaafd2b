/** What a command may touch of the outside: the report goes to standard output, all else to standard error. */
export interface Io {
  readonly stdout: (text: string) => void;
  readonly stderr: (text: string) => void;
  /** Reads a file whole; '-' is standard input. Rejects with the system's error. */
  readonly readFile: (path: string) => Promise<Uint8Array>;
  /** A file in chunks with its size where known; '-' is standard input. */
  readonly openFile: (path: string) => Promise<{ chunks: AsyncIterable<Uint8Array>; sizeBytes?: number }>;
  readonly writeFile: (path: string, text: string) => Promise<void>;
  /** Columns of the terminal, or null where the output is a file or a pipe. */
  readonly terminalColumns: number | null;
  /** Emphasis allowed: a terminal, and NO_COLOR not set. */
  readonly emphasis: boolean;
  /** Standard error is a terminal: progress may be shown there. */
  readonly progress: boolean;
}

/** 0 done, 1 a recording could not be read or analysed, 2 wrong usage. */
export type ExitCode = 0 | 1 | 2;

export interface Command {
  readonly name: string;
  /** One line for the list of commands. */
  readonly summary: string;
  /** The text behind --help; begins with two examples. */
  readonly usage: string;
  readonly run: (args: string[], io: Io) => Promise<number>;
}

/** Wrong usage: what was wrong, and one thing to try. Caught by main, which exits with 2. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}
