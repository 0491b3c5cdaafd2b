/** Serves the demo jobs under demo/, with a list of them in demo/demos.json. */
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Plugin } from 'vite';

/** One entry of demo/demos.json. */
export interface DemoEntry {
  /** File name of the job. */
  readonly job: string;
  readonly title: string;
  readonly complaint: string;
  /** File names of its recordings. */
  readonly recordings: readonly string[];
  readonly bytes: number;
}

const JOB_ENDING = '.job.json';
const LIST = 'demos.json';
/** The question the program was made for stands first. */
const FIRST = `joint-replaced${JOB_ENDING}`;
/** The demo jobs are a shop's week, and are listed as it went by. */
const WEEK = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;

/** @param folder Where the demo jobs and their recordings are. */
export function demoJobs(folder: string): Plugin {
  return {
    name: 'perrev-demo-jobs',
    configureServer(server) {
      server.middlewares.use('/demo/', (request, response, next) => {
        const name = basename(decodeURIComponent(new URL(request.url ?? '/', 'http://local').pathname));
        if (name === LIST) response.end(JSON.stringify(listDemos(folder)));
        else if (filesOf(listDemos(folder)).includes(name)) response.end(readFileSync(join(folder, name)));
        else next();
      });
    },
    generateBundle() {
      const demos = listDemos(folder);
      this.emitFile({ type: 'asset', fileName: `demo/${LIST}`, source: JSON.stringify(demos) });
      for (const name of filesOf(demos)) {
        this.emitFile({ type: 'asset', fileName: `demo/${name}`, source: readFileSync(join(folder, name)) });
      }
    },
  };
}

function filesOf(demos: readonly DemoEntry[]): string[] {
  return [...new Set(demos.flatMap((demo) => [demo.job, ...demo.recordings]))];
}

function listDemos(folder: string): DemoEntry[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith(JOB_ENDING))
    .map((job) => demoEntry(folder, job))
    .sort(
      (a, b) =>
        Number(b.job === FIRST) - Number(a.job === FIRST) || dayOf(a) - dayOf(b) || (a.title < b.title ? -1 : 1),
    );
}

/** Place in the week; a job of no day comes last. */
function dayOf({ title }: DemoEntry): number {
  const day = WEEK.findIndex((name) => title.startsWith(name));
  return day < 0 ? WEEK.length : day;
}

function demoEntry(folder: string, job: string): DemoEntry {
  const content = JSON.parse(readFileSync(join(folder, job), 'utf8')) as {
    title?: string;
    complaint?: string;
    runs?: { file: string }[];
  };
  const recordings = (content.runs ?? []).map((run) => run.file);
  return {
    job,
    title: content.title ?? job.slice(0, -JOB_ENDING.length),
    complaint: content.complaint ?? '',
    recordings,
    bytes: recordings.reduce((sum, name) => sum + statSync(join(folder, name)).size, 0),
  };
}
