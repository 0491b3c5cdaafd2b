import { describe, expect, it } from 'vitest';
import { acrossRuns } from '../../../../src/core/diagnosis/findings/across-runs.ts';
import type { Finding } from '../../../../src/core/diagnosis/findings/finding.ts';
import type { RunInference } from '../../../../src/core/diagnosis/matching/infer-run.ts';
import type { Load } from '../../../../src/core/vehicle/vehicle.ts';

const run = (load: Load, speedMps: number, amplitudeMps2: number): RunInference =>
  ({
    run: { condition: { load, speedMps } },
    origins: [],
    matches: [
      {
        tone: { peak: { amplitudeMps2, amplitudeSdMps2: 0.001 } },
        lines: [{ origin: { line: { label: 'driveshaft 1×' } }, probability: 0.95 }],
      },
    ],
  }) as unknown as RunInference;

const levels = (first: RunInference, ...others: RunInference[]) =>
  acrossRuns({ label: 'driveshaft 1×', chosen: null, inference: first } as unknown as Finding, [first, ...others])
    .levelByLoadMps2;

// Unbalance grows with the square of speed: 0.10 m/s² at 30 m/s is 0.044 at 20, whatever the load.
describe('levels under other loads', () => {
  it('are compared at one speed', () => {
    expect(levels(run('pull', 30, 0.1), run('coast', 30.5, 0.05))).toEqual({ pull: 0.1, coast: 0.05 });
  });

  it('at another speed say nothing of the load', () => {
    expect(levels(run('pull', 30, 0.1), run('coast', 20, 0.05))).toEqual({ pull: 0.1 });
  });
});
