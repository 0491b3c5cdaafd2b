import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import type { Job } from '../../../../src/core/job/job.ts';
import type { Recording } from '../../../../src/core/reading/recording.ts';
import { launch } from '../../../support/launch.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

/** 265/75R16: 3.05 times the outer diameter of 803.9 mm rolls 2.452 m a turn. */
const AXLE = 4.1;
const SHAFT_TURNS_PER_M = AXLE / 2.452;

const job = (axleRatio: number): Job =>
  madeJob(
    { tire: { kind: 'size', size: '265/75R16' }, layout: 'rear-drive', axleRatio },
    { file: 'launch.csv', load: 'pull' },
  );

const reportOn = (recording: Recording, axleRatio = AXLE) => must(analyse(job(axleRatio), [recording])).report;

const SHUDDER = { turnsPerM: 2 * SHAFT_TURNS_PER_M, amplitude: 0.5, fromMps: 2.2, toMps: 7.6 };

describe('a launch', () => {
  // Shudder at twice driveshaft speed between 5 and 20 mph under torque: common practice, no source.
  it.each([0, 0.5, 0.9])('that shudders at driveshaft 2× shows it, its log %s s late', (lagS) => {
    const { verdict, findings, runs } = reportOn(launch(SHUDDER, lagS));
    expect(verdict).toBe('found');
    expect(findings[0]).toMatchObject({ part: 'driveshaft', order: 2 });
    expect(findings[0]!.causes[0]!.id).toBe('launch-shudder');
    expect(runs[0]!.notes.map(({ code }) => code)).toContain('part-of-drive');
  });

  it('that shakes is not cleared where no order explains it', () => {
    // Turns of no listed part: driveshaft 3×.
    const { verdict, sentence, findings } = reportOn(launch({ ...SHUDDER, turnsPerM: 3.3 * SHAFT_TURNS_PER_M }));
    expect(verdict).toBe('cannot-tell');
    expect(findings.map(({ part }) => part)).not.toContain('driveshaft');
    expect(sentence).toMatch(/^Cannot tell/);
  });

  it('that does not shake shows nothing, and clears nothing', () => {
    const { verdict, sentence, findings } = reportOn(launch(null));
    expect(findings).toEqual([]);
    expect(verdict).toBe('cannot-tell');
    expect(sentence).toContain('changed too fast');
  });
});
