/** Runs cases in turns around the targets, in a thread of its own; tells what it finds and which case it is at. */
import { parentPort, workerData } from 'node:worker_threads';
import { beat, count } from './heartbeat.ts';
import { runCase } from './run-case.ts';
import { targets } from './targets/all.ts';

export interface ChildData {
  readonly shared: Int32Array;
  readonly seed: number;
  /** Index of the only target, or null. */
  readonly only: number | null;
  /** Next case of each target. */
  readonly next: readonly number[];
}

const { shared, seed, only, next } = workerData as ChildData;
const at = [...next];

for (;;) {
  for (const [t, target] of targets.entries()) {
    if (only !== null && t !== only) continue;
    const cases = only === null ? target.cases : Math.max(1, target.cases);
    for (let left = cases; left > 0; left--) {
      const index = at[t]!++;
      beat(shared, t, index);
      const found = await runCase(target, seed, index);
      count(shared, t);
      if (found) parentPort!.postMessage(found);
    }
    // Lets messages out, and the end of the run in.
    await new Promise((done) => setImmediate(done));
  }
}
