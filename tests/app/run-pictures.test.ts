import { describe, expect, it } from 'vitest';
import { orderRows, topOrder, turningHz } from '../../src/app/charts/run-orders.ts';
import { speedSlices, waterfallLevels } from '../../src/app/charts/waterfall.ts';
import type { RunPicture } from '../../src/core/report/analysis.ts';
import { lines, makePicture, WHEEL_HZ } from './fixture.ts';

/** The fixture slowed evenly from full to half speed. */
function slowing(): RunPicture {
  const picture = makePicture();
  const { timeS } = picture.timeFrequency;
  return {
    ...picture,
    histories: {
      ...picture.histories,
      road: { timeS: Float64Array.of(timeS[0]!, timeS.at(-1)!), relative: Float64Array.of(1, 0.5) },
    },
  };
}

describe('spectra at each speed', () => {
  it('are none where the speed was steady', () => {
    expect(speedSlices(makePicture())).toEqual([]);
  });

  it('run from the slowest to the fastest and keep the level of a tone that does not move', () => {
    const picture = slowing();
    const slices = speedSlices(picture);
    expect(slices.length).toBe(14);
    expect(slices[0]!.relative).toBeCloseTo(0.5 + 0.5 / 28, 10);
    expect(slices.every(({ relative }, at) => at === 0 || relative > slices[at - 1]!.relative)).toBe(true);
    const bin = Math.round(86.536 / picture.timeFrequency.stepHz);
    for (const { amplitudesMps2 } of slices) {
      expect(amplitudesMps2[bin]).toBeCloseTo(picture.timeFrequency.amplitudeMps2[bin]!, 6);
    }
  });

  it('have an axis from the floor to above the strongest line', () => {
    const picture = slowing();
    const [low, high] = waterfallLevels(speedSlices(picture), picture.timeFrequency.stepHz, null, 120);
    expect(high / low).toBeGreaterThan(10);
  });
});

describe('runs on a scale of orders', () => {
  it('turn each run’s own part speed into the scale', () => {
    expect(turningHz(lines, 'driveshaft', undefined)).toBeCloseTo(WHEEL_HZ * 3.73, 10);
    expect(turningHz(lines, 'accessory', 'alternator')).toBeNull();
  });

  it('leave out runs in which the part’s speed is not known', () => {
    const unknown = { ...makePicture(), run: 'neutral', lines: [] };
    expect(orderRows([makePicture(), unknown], 'driveshaft', undefined).map(({ picture }) => picture.run)).toEqual([
      'Cruise, 62 mph',
    ]);
  });

  it('end where the first run has no more to show', () => {
    const rows = orderRows([makePicture()], 'driveshaft', undefined);
    // 200 Hz over 43.268 Hz
    expect(topOrder(rows, 2)).toBeCloseTo(200 / (WHEEL_HZ * 3.73), 6);
    expect(topOrder(rows, 1)).toBe(3);
  });
});
