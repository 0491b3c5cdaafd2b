/** Which tests can notice a change of a source file: those that import it, at however many removes, nearest first. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';

const IMPORT = /(?:from|import)\s*\(?\s*'(\.[^']+)'/g;

/** Every file imported by each file of `src` and `tests`, by path from the root. */
export function importGraph(root: string): Map<string, readonly string[]> {
  const files = ['src', 'tests'].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((path) => /\.(ts|svelte)$/.test(path))
      .map((path) => join(folder, path)),
  );
  return new Map(
    files.map((file) => {
      const code = readFileSync(join(root, file), 'utf8');
      const imported = [...code.matchAll(IMPORT)].map(([, path]) => normalize(join(dirname(file), path!)));
      return [file, imported] as const;
    }),
  );
}

/** Test files of the core and golden figures, by how many imports they are away; those in the mirrored folder first. */
export function testsNear(graph: ReadonlyMap<string, readonly string[]>, file: string): string[] {
  const importers = new Map<string, string[]>();
  for (const [from, all] of graph) for (const to of all) importers.set(to, [...(importers.get(to) ?? []), from]);
  const distance = new Map([[file, 0]]);
  for (const at of distance.keys())
    for (const next of importers.get(at) ?? []) if (!distance.has(next)) distance.set(next, distance.get(at)! + 1);
  const mirrored = join('tests', relative('src', dirname(file)));
  const rank = (test: string): number => distance.get(test)! + (test.startsWith(mirrored) ? 0 : 100);
  return [...distance.keys()]
    .filter((path) => /^tests\/(core|golden)\//.test(path) && path.endsWith('.test.ts'))
    .sort((a, b) => rank(a) - rank(b));
}
