/** The demo jobs that came with the page. */
import type { DemoEntry } from '../build/demo-jobs.ts';

const FOLDER = 'demo/';

let known: Promise<readonly DemoEntry[]> | null = null;

/** The list of demo jobs, fetched once. Rejects where it cannot be fetched. */
export function listDemos(): Promise<readonly DemoEntry[]> {
  known ??= fetchList();
  known.catch(() => (known = null));
  return known;
}

async function fetchList(): Promise<readonly DemoEntry[]> {
  const response = await fetchFile('demos.json');
  return (await response.json()) as readonly DemoEntry[];
}

/** The job file and recordings of a demo, as if the reader had opened them. */
export async function fetchDemo(demo: DemoEntry): Promise<readonly File[]> {
  return Promise.all(
    [demo.job, ...demo.recordings].map(async (name) => new File([await (await fetchFile(name)).blob()], name)),
  );
}

async function fetchFile(name: string): Promise<Response> {
  const response = await fetch(FOLDER + encodeURIComponent(name));
  if (!response.ok) throw new Error(`${name}: ${response.status}`);
  return response;
}
