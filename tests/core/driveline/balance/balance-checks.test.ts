import { describe, expect, it } from 'vitest';
import { phasorProblem } from '../../../../src/core/driveline/balance/balance-checks.ts';
import type { PhasorReading, TrialRun } from '../../../../src/core/driveline/measurement.ts';

const readings = (count: number): PhasorReading[] =>
  Array.from({ length: count }, (_, i) => ({ amplitude: 3 + i, phaseDeg: 40 * i }));
const trial = (plane: number, count: number): TrialRun => ({
  plane,
  weight: 10,
  angleDeg: 0,
  readings: readings(count),
});

describe('runs with phase', () => {
  it('are enough where each plane has a reading and a trial of its own', () => {
    expect(phasorProblem({ baseline: readings(2), trials: [trial(0, 2), trial(1, 2)] }, 2)).toBeNull();
    expect(phasorProblem({ baseline: readings(1), trials: [trial(0, 1)] }, 1)).toBeNull();
  });

  it.each([
    [2, 1, '2 planes cannot be corrected from 1 reading a run.'],
    [3, 2, '3 planes cannot be corrected from 2 readings a run.'],
  ])('that read fewer places than there are planes (%i, %i) are told so', (planes, places, message) => {
    const trials = Array.from({ length: planes }, (_, plane) => trial(plane, places));
    const problem = phasorProblem({ baseline: readings(places), trials }, planes);
    expect(problem).toMatchObject({ code: 'too-few-readings', message });
    expect(problem?.remedy).toContain('as many places');
  });

  it('without a trial in one of the planes name it, and without any say what is needed', () => {
    const one = phasorProblem({ baseline: readings(2), trials: [trial(0, 2)] }, 2);
    expect(one?.message).toBe('There is no trial run with a weight in plane 2.');
    expect(phasorProblem({ baseline: [], trials: [] }, 1)?.message).toContain('plane 1');
  });
});
