import { scaleLinear } from 'd3';
import { describe, expect, it } from 'vitest';
import { mapTracks, withSharedNames } from '../../src/app/charts/map-tracks.ts';
import { orderRows, runScale, turningHz } from '../../src/app/charts/run-rows.ts';
import { speedSlices, waterfallLevels } from '../../src/app/charts/waterfall.ts';
import type { RunPicture } from '../../src/core/report/analysis.ts';
import { finding, lines, makePeak, makePicture, WHEEL_HZ } from './fixture.ts';

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
    const scale = runScale([makePicture()], finding);
    // 200 Hz over 43.268 Hz
    expect(scale.top).toBeCloseTo(200 / (WHEEL_HZ * 3.73), 6);
    expect(runScale([makePicture()], { ...finding, order: 1 }).top).toBe(3);
  });
});

describe('runs of a tone that follows no part', () => {
  it('stand over frequency, the tone in one column', () => {
    const scale = runScale([makePicture(), { ...makePicture(), run: 'slower' }], {
      ...finding,
      part: 'fixed',
      order: null,
      frequencyHz: 31.4,
    });
    expect(scale.rows.map(({ stepHz }) => stepHz)).toEqual([1, 1]);
    expect(scale.place).toBeCloseTo(31.4, 9);
    expect(scale.top).toBeCloseTo(62.8, 9);
  });
});

describe('names over the map', () => {
  const x = scaleLinear([0, 100], [0, 1000]);
  const time = scaleLinear([0, 60], [200, 0]);
  const tracksOf = (picture: RunPicture, matched: string[] = []) =>
    mapTracks(picture, [makePeak(31.4, 0.2, 'fixed tone', 'fixed', 0)], new Set(matched), { x, time, right: 1000 });

  it('stand where the track meets the upper edge', () => {
    const shaft = tracksOf(slowing()).find(({ key }) => key === 'driveshaft 1×');
    // Half of 11.6 Hz × 3.73 at the end, ten pixels a hertz.
    expect(shaft?.endPx).toBeCloseTo(5 * WHEEL_HZ * 3.73, 6);
    expect(shaft?.path.split('L').at(-1)).toMatch(new RegExp(`^${shaft!.endPx.toFixed(1).slice(0, 4)}`, 'u'));
  });

  it('name a tone that stands still', () => {
    expect(tracksOf(makePicture()).find(({ text }) => text === 'fixed tone')?.endPx).toBeCloseTo(314, 9);
  });

  it('are one for matched tracks that end in one place', () => {
    const both = ['driveshaft 2×', 'engine 2×'].map((text) => {
      const [track] = tracksOf(makePicture());
      return { ...track!, key: text, text, isMatched: true, endPx: 500 };
    });
    expect(withSharedNames(both).map(({ text }) => text)).toEqual(['driveshaft 2× or engine 2×', '']);
    expect(withSharedNames(both, 20).map(({ text }) => text)).toEqual(['driveshaft 2×', '']);
  });
});
