/** One case of every family, few enough for every run of the tests. */
import { FAMILIES, NO_LEAN } from './case.ts';
import { makeCase } from './families.ts';
import { runCase } from './run-case.ts';

/** Not the seed the suite itself starts from. */
const SEED = 77;

export const smallCases = async (): Promise<Awaited<ReturnType<typeof runCase>>[]> => {
  const done = [];
  for (const family of FAMILIES) done.push(await runCase(makeCase(family, 0, SEED, NO_LEAN), 0));
  return done;
};
