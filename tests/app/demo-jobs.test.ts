import { describe, expect, it } from 'vitest';
import { demoJobs, type DemoEntry } from '../../src/app/build/demo-jobs.ts';

/** What the plugin writes of a folder of demo jobs. */
const listed = (folder: string): DemoEntry[] => {
  const files = new Map<string, unknown>();
  const plugin = demoJobs(folder) as unknown as { generateBundle: (this: unknown) => void };
  plugin.generateBundle.call({
    emitFile: ({ fileName, source }: { fileName: string; source: unknown }) => files.set(fileName, source),
  });
  return JSON.parse(String(files.get('demo/demos.json'))) as DemoEntry[];
};

describe('the list of demo jobs', () => {
  it('goes through the week, and begins with the question the program was made for', () => {
    const demos = listed('recordings');
    expect(demos[0]!.job).toBe('joint-replaced.job.json');
    const week = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
    const days = demos.map(({ title }) => week.findIndex((day) => title.startsWith(day)));
    expect(days).toEqual(days.toSorted((a, b) => a - b));
    expect(new Set(days)).toEqual(new Set([0, 1, 2, 3, 4, 5]));
  });
});
