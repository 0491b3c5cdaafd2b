import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Report } from '../../src/core/report/report.ts';
import { expectPlainWords, perrev } from './run-cli.ts';
import { shortCsv, VEHICLE_WORDS } from './short-recording.ts';

describe('absolute paths of recordings in a job file', () => {
  const inFolder = (write: (folder: string) => void): void => {
    const folder = mkdtempSync(join(tmpdir(), 'perrev-job-'));
    try {
      write(folder);
    } finally {
      rmSync(folder, { recursive: true });
    }
  };
  const jobOf = (file: string): string =>
    JSON.stringify({
      schemaVersion: 1,
      vehicle: { layout: 'rear-drive', tire: '265/70R17', axleRatio: 3.73 },
      runs: [{ file, speed: '62 mph' }],
    });

  it('are taken as they are, wherever the job file lies', () => {
    inFolder((folder) => {
      writeFileSync(join(folder, 'run.csv'), shortCsv());
      mkdirSync(join(folder, 'jobs'));
      writeFileSync(join(folder, 'jobs', 'a.job.json'), jobOf(join(folder, 'run.csv')));
      const outcome = perrev(['diagnose', join(folder, 'jobs', 'a.job.json')]);
      expect(outcome.stderr).toBe('');
      expect(outcome.status).toBe(0);
    });
  });

  it('that are missing are named as given', () => {
    inFolder((folder) => {
      const gone = join(folder, 'gone.csv');
      writeFileSync(join(folder, 'a.job.json'), jobOf(gone));
      const outcome = perrev(['diagnose', join(folder, 'a.job.json')]);
      expect(outcome.status).toBe(1);
      expect(outcome.stderr).toContain(`perrev: ${gone} could not be opened: there is no such file.`);
    });
  });
});

describe('diagnose', () => {
  // The words of every demo are read in demo-jobs.test.ts, from the report that each has given.
  it('tells a job of two runs in words, with the answer first', () => {
    const outcome = perrev(['diagnose', 'recordings/launch.job.json']);
    expect(outcome.status).toBe(0);
    expect(outcome.stderr).toBe('');
    expect(outcome.stdout).toMatch(/^Driveshaft 2×/);
    expect(outcome.stdout).toContain('What was recorded');
    expect(outcome.stdout).toContain('Orders');
    expectPlainWords(outcome);
  });

  it('refuses what is too short to tell orders apart, with the remedy', () => {
    const outcome = perrev(['diagnose', '-', ...VEHICLE_WORDS], shortCsv(3));
    expect(outcome.status).toBe(1);
    expect(outcome.stderr).toContain('holds 3.0 s that can be used');
    expect(outcome.stderr).toContain('Record half a minute or more at a steady speed.');
  });

  it('takes the unit of columns that tell none, and refuses one it does not know', () => {
    const rows = Array.from({ length: 1000 }, (_, i) => `${i / 100},${Math.sin(1.7 * i)},${Math.cos(2.3 * i)},0.01`);
    const csv = `time (s),acc x,acc y,acc z\n${rows.join('\n')}\n`;
    const silent = perrev(['diagnose', '-', ...VEHICLE_WORDS], csv);
    expect(silent.status).toBe(1);
    expect(silent.stderr).toContain('or give the unit by hand.');
    const told = perrev(['diagnose', '-', ...VEHICLE_WORDS, '--unit', 'm/s2'], csv);
    expect(told.status).toBe(0);
    expect(told.stdout).toContain('Unit of acceleration: m/s² was given by hand.');
    const wrong = perrev(['diagnose', '-', ...VEHICLE_WORDS, '--unit', 'furlong'], csv);
    expect(wrong.status).toBe(2);
    expect(wrong.stderr).toContain('--unit "furlong" is not known; use one of g, mg, m/s2, mm/s2.');
  });

  it('refuses a tire size it cannot read, and shows how one is written', () => {
    const outcome = perrev(['diagnose', '-', '--tire', '265/70X'], shortCsv());
    expect(outcome.status).toBe(2);
    expect(outcome.stderr).toContain('"265/70X" is not a tire size');
    expect(outcome.stderr).toContain('like 265/70R17');
  });

  it('names no part without a speed to compare with', () => {
    const outcome = perrev(['diagnose', 'recordings/direct-gear-cruise.csv']);
    expect(outcome.status).toBe(0);
    expect(outcome.stdout).toMatch(/^Cannot tell what shakes at 33\.4 Hz/);
    expect(outcome.stdout).toContain('Give the road speed');
    expect(outcome.stdout).not.toContain('Sure of the part');
  });

  it('writes one self-contained page without script or address', () => {
    const folder = mkdtempSync(join(tmpdir(), 'perrev-page-'));
    const page = join(folder, 'sheet.html');
    const outcome = perrev(['diagnose', 'recordings/launch.job.json', '--page', page]);
    expect(outcome.status).toBe(0);
    const text = readFileSync(page, 'utf8');
    expect(text).toContain('<svg');
    expect(text).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/);
    // A phone of 375 pixels, less the page's margins, shows each picture whole.
    const widthsOf = (name: string): number[] =>
      [...text.matchAll(new RegExp(`viewBox="0 0 (\\d+) \\d+"\\s+class="${name}"`, 'gu'))].map(([, width]) =>
        Number(width),
      );
    expect(widthsOf('phone').length).toBeGreaterThan(1);
    expect(widthsOf('phone')).toHaveLength(widthsOf('wide').length);
    expect(Math.max(...widthsOf('phone'))).toBeLessThanOrEqual(375 - 2 * 16);
    // It is read by itself: of which vehicle, and what was said of it.
    const { vehicle } = JSON.parse(readFileSync('recordings/launch.job.json', 'utf8')) as Report;
    expect(text).toContain(`<dd>${vehicle.description}</dd>`);
    expect(text).toContain('<dd>“Shudders like a bad clutch');
    rmSync(folder, { recursive: true });
  });

  it('reads a recording from standard input', () => {
    const outcome = perrev(['diagnose', '-', ...VEHICLE_WORDS, '--json'], shortCsv());
    expect(outcome.status).toBe(0);
    expect((JSON.parse(outcome.stdout) as Report).runs).toHaveLength(1);
  });
});
