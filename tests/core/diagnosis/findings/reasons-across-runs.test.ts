import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../../src/core/diagnosis/findings/finding.ts';
import type { RunInference } from '../../../../src/core/diagnosis/matching/infer-run.ts';
import { reasonsAcrossRuns } from '../../../../src/core/diagnosis/findings/reasons-across-runs.ts';

interface Tone {
  readonly hz: number;
  readonly label?: string;
  readonly probability?: number;
  readonly image?: boolean;
  readonly fixed?: number;
}

/** A run as far as the sentences read it: where driveshaft 1× is expected, and the tones that were seen. */
const run = (name: string, wheelHz: number, tones: readonly Tone[]): RunInference =>
  ({
    run: { name, expected: { wheelHz, engineHz: null } },
    origins: [
      {
        group: 'road',
        trueHz: 4 * wheelHz,
        place: [{ weight: 1, mean: 0, sd: 0 }],
        line: { label: 'driveshaft 1×' },
      },
    ],
    posterior: { road: { mean: 0, sd: 0 } },
    matches: tones.map(({ hz, label = 'driveshaft 1×', probability = 0, image = false, fixed = 0 }) => ({
      tone: { peak: { frequencyHz: hz } },
      lines: [{ origin: { line: { label }, trueHz: hz }, probability, image }],
      others: { fixed, unlisted: 0 },
    })),
  }) as unknown as RunInference;

const first = run('Run 1', 10, []);
const found = (part: string, trueHz: number): Finding =>
  ({
    part,
    label: part === 'fixed' ? 'fixed tone' : 'driveshaft 1×',
    trueHz,
    chosen: { origin: { line: { label: 'driveshaft 1×', part: 'driveshaft', order: 1 } } },
    inference: first,
  }) as unknown as Finding;
const said = (finding: Finding, other: RunInference): readonly string[] => reasonsAcrossRuns(finding, [first, other]);

describe('what another run says of a finding', () => {
  const shaft = found('driveshaft', 40);

  it('an order was found again where that speed has it turn', () => {
    const other = run('Run 2', 8, [
      { hz: 20, label: 'tire 2×', probability: 0.9 },
      { hz: 32.1, probability: 0.8 },
    ]);
    expect(said(shaft, other)).toEqual(['In Run 2 it is at 32.1 Hz, where driveshaft 1× turns at that speed.']);
  });

  it.each([
    ['the other speed is the same', 10.1, { hz: 40.4, probability: 0.9 }],
    ['the tone there is an image', 8, { hz: 32, probability: 0.9, image: true }],
    ['it is hardly that order', 8, { hz: 32, probability: 0.4 }],
    ['it is another part', 8, { hz: 32, label: 'engine 1×', probability: 0.9 }],
  ])('nothing where %s', (_, wheelHz, tone) => {
    expect(said(shaft, run('Run 2', wheelHz, [tone]))).toEqual([]);
  });

  it('a fixed tone stayed though the speed was another, and not where it was the same or the tone elsewhere', () => {
    const hum = found('fixed', 36);
    expect(said(hum, run('Run 2', 8, [{ hz: 36.1, fixed: 0.9 }]))).toEqual([
      'It stands at 36.1 Hz in Run 2 too, though the speed was another.',
    ]);
    expect(said(hum, run('Run 2', 10.1, [{ hz: 36.1, fixed: 0.9 }]))).toEqual([]);
    expect(said(hum, run('Run 2', 8, [{ hz: 37, fixed: 0.9 }]))).toEqual([]);
    expect(said(hum, run('Run 2', 8, [{ hz: 36, fixed: 0.4 }]))).toEqual([]);
  });
});
