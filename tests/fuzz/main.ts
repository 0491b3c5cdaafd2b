/**
 * Bad input without end: npm run fuzz -- --cases 1000000 --seed 7. Runs the cases in a thread with little memory and
 * watches it: a thread that dies or a case that does not end is found, written down, and stepped over.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { Worker } from 'node:worker_threads';
import type { ChildData } from './child.ts';
import { countsOf, heartbeatOf, sharedCounts } from './heartbeat.ts';
import { HANG_S, runCase } from './run-case.ts';
import type { Finding } from './run-case.ts';
import { targets } from './targets/all.ts';

const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '1000000' },
    minutes: { type: 'string', default: '600' },
    seed: { type: 'string', default: '1' },
    only: { type: 'string' },
    case: { type: 'string' },
    found: { type: 'string', default: join(tmpdir(), 'perrev-fuzz') },
  },
});
const seed = Number(values.seed);
const only = values.only === undefined ? null : targets.findIndex(({ name }) => name === values.only);
if (only === -1) throw new Error(`targets: ${targets.map(({ name }) => name).join(' ')}`);

/** Old-generation heap of the thread; a reader that holds what it need not dies of it. */
const HEAP_MB = 600;
/** Most of the whole process, columns outside the heap included. */
const RESIDENT_BYTES = 1.5e9;
const LOOK_MS = 250;
const TELL_EVERY = 120;

const shared = sharedCounts(targets.length);
const findings: Finding[] = [];
const say = (text: string): void => void process.stdout.write(`${text}\n`);

function note(finding: Finding): void {
  findings.push(finding);
  mkdirSync(values.found, { recursive: true });
  const name = `${finding.target}-${seed}-${finding.index}`;
  writeFileSync(join(values.found, name), finding.input);
  say(`FOUND ${finding.kind} in ${finding.target}, case ${finding.index} of seed ${seed}: ${finding.text}`);
}

const tally = (): string => {
  const counts = countsOf(shared);
  const total = counts.reduce((sum, n) => sum + n, 0);
  return `${total} inputs (${targets.map(({ name }, t) => `${name} ${counts[t]}`).join(', ')}), ${findings.length} found`;
};

/** A thread from the given cases on, until it is told to end or dies. @returns why it ended */
function runThread(next: readonly number[], until: () => boolean): Promise<string | null> {
  const data: ChildData = { shared, seed, only, next };
  const thread = new Worker(new URL('child-start.js', import.meta.url), {
    workerData: data,
    resourceLimits: { maxOldGenerationSizeMb: HEAP_MB },
  });
  return new Promise((ended) => {
    let beats = -1;
    let since = process.cpuUsage();
    let looks = 0;
    const end = (why: string | null): void => {
      clearInterval(timer);
      void thread.terminate().then(() => ended(why));
    };
    const timer = setInterval(() => {
      const now = heartbeatOf(shared);
      if (now.beats !== beats) since = process.cpuUsage();
      beats = now.beats;
      if (++looks % TELL_EVERY === 0) say(tally());
      if (until()) end(null);
      else if (now.beats > 0 && process.cpuUsage(since).user / 1e6 > 4 * HANG_S) end('hang');
      else if (process.memoryUsage().rss > RESIDENT_BYTES) end('memory');
    }, LOOK_MS);
    thread.on('message', note);
    thread.on('error', (error) => end(error.message));
  });
}

if (values.case !== undefined && only !== null) {
  const found = await runCase(targets[only]!, seed, Number(values.case));
  if (found) note(found);
  else say('nothing found');
} else {
  const endMs = performance.now() + 60_000 * Number(values.minutes);
  const enough = (): boolean =>
    performance.now() > endMs || countsOf(shared).reduce((sum, n) => sum + n, 0) >= Number(values.cases);
  const next = targets.map(() => 0);
  while (!enough()) {
    const why = await runThread(next, enough);
    countsOf(shared).forEach((n, t) => (next[t] = Math.max(next[t]!, n)));
    if (why === null) break;
    const { target, index, beats } = heartbeatOf(shared);
    if (beats === 0) throw new Error(`the thread does not start: ${why}`);
    next[target] = index + 1;
    const input = Buffer.from(why);
    note({ target: targets[target]!.name, index, kind: why === 'hang' ? 'hang' : 'died', text: why, input });
  }
  say(tally());
}
process.exitCode = findings.length > 0 ? 1 : 0;
