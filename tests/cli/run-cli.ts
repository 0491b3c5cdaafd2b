/** Runs the built command line as a user does. Build it first: npm run build:cli. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const program = `${root}dist/cli/perrev.js`;

export interface Outcome {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export function perrev(args: readonly string[], input?: string | Uint8Array): Outcome {
  if (!existsSync(program)) throw new Error('the command line is not built: npm run build:cli');
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    timeout: 240_000,
    env: { ...process.env, NO_COLOR: '1' },
    ...(input === undefined ? {} : { input }),
  });
  return { status, stdout, stderr };
}

/** What no run may ever print: a stack trace or an unformatted value. */
export function expectPlainWords({ stdout, stderr }: Outcome): void {
  const text = stdout + stderr;
  for (const bad of [
    /\n {4}at \S+ \(|\n {4}at (?:async |file:|node:|\/)/,
    /\bundefined\b/,
    /\bNaN\b/,
    /\[object Object\]/,
    /fault of its own/,
  ]) {
    if (bad.test(text)) throw new Error(`found ${bad} in:\n${text.slice(0, 2000)}`);
  }
}
