/** A copy of the tree to change, so that the working copy is never touched. */
import { cpSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const COPIED = ['src', 'tests', 'recordings', 'package.json', 'tsconfig.json', 'svelte.config.js', '.config'];

export interface Tree {
  readonly root: string;
  readonly remove: () => void;
}

/** Everything the unit tests need; the packages and what was built are linked, not copied. */
export function copyOfTree(from: string): Tree {
  const root = mkdtempSync(join(tmpdir(), 'perrev-mutants-'));
  for (const name of COPIED) cpSync(join(from, name), join(root, name), { recursive: true });
  for (const name of ['node_modules', 'dist']) symlinkSync(join(from, name), join(root, name));
  return { root, remove: () => rmSync(root, { recursive: true, force: true }) };
}
