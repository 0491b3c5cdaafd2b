import { describe, expect, it } from 'vitest';
import type { Track } from '../../../src/core/reading/recording.ts';
import { speedLogOf } from '../../../src/core/reading/speed-log.ts';

const log = (...mps: number[]): Track => ({
  timeS: Float64Array.from(mps, (_, i) => i),
  value: Float64Array.from(mps),
  columnName: 'speed',
  unit: 'm/s',
  unitBecause: '',
  step: 1,
  intervalS: 1,
});

describe('the speed log of a recording', () => {
  it('is that of the wheels, where both were logged: orders hang on it', () => {
    const wheelSpeedMps = log(20, 21);
    expect(speedLogOf({ wheelSpeedMps, roadSpeedMps: log(19, 20) })).toBe(wheelSpeedMps);
  });

  it('is the road’s where the wheels’ holds nothing, and none where neither does', () => {
    const roadSpeedMps = log(19);
    expect(speedLogOf({ wheelSpeedMps: log(), roadSpeedMps })).toBe(roadSpeedMps);
    expect(speedLogOf({ roadSpeedMps: log() })).toBeNull();
  });
});
