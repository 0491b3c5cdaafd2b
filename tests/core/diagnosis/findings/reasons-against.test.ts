import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../../src/core/diagnosis/findings/finding.ts';
import { reasonsOf } from '../../../../src/core/diagnosis/findings/reasons.ts';
import { judgeJob } from '../../../../src/core/diagnosis/judge-job.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { madeJob } from '../../../support/made-job.ts';
import { MEASURED_TRUCK } from '../../../support/measured-truck.ts';
import { must } from '../../../support/must.ts';
import { seededRandom } from '../../../support/random.ts';

const RATE = 200;
const { normal } = seededRandom(5);
const axis = Float64Array.from(
  { length: 30 * RATE },
  (_, i) => Math.cos(2 * Math.PI * 51.3 * (i / RATE)) + 0.1 * normal(),
);
const run = { file: 'run.csv', load: 'cruise', speedMps: 26.4, speedSource: 'gps', gearRatio: 0.75 } as const;
const job = madeJob(MEASURED_TRUCK, run);
const [tone] = must(judgeJob({ job, recordings: [plainRecording([axis], RATE)] })).found;

/** The tone of 51.3 Hz, held to be fixed, with what else it may be. */
const fixedBeside = (others: { unlisted: number; resonance: number; noise: number }): Finding => {
  const fixed = 1 - others.unlisted - others.resonance - others.noise;
  return { ...tone!, part: 'fixed', chosen: null, match: { ...tone!.match, lines: [], others: { fixed, ...others } } };
};
const against = (finding: Finding): readonly string[] => reasonsOf(finding, job.vehicle).against;

describe('what speaks against a fixed tone', () => {
  it('is the road’s own shake, or a part that is not listed, so that an open answer says what it leaves open', () => {
    expect(against(fixedBeside({ unlisted: 0, resonance: 0.43, noise: 0.02 }))).toEqual([
      'The road’s own shake could look like it (45 in 100).',
    ]);
    expect(against(fixedBeside({ unlisted: 0.4, resonance: 0, noise: 0 }))).toEqual([
      'A part that is not listed could make it too (40 in 100).',
    ]);
  });

  it('is nothing where it is sure', () => {
    expect(against(fixedBeside({ unlisted: 0.01, resonance: 0.01, noise: 0 }))).toEqual([]);
  });
});
