import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { thin } from '../../src/app/charts/decimate.ts';
import { belowLinesHz } from '../../src/app/charts/below-lines.ts';
import { findingOf } from '../../src/app/charts/finding-peak.ts';
import { leftMargin, levelTicks, levelTickText, spectrumGeometry } from '../../src/app/charts/geometry.ts';
import { wordEnd } from '../../src/app/charts/just-felt.ts';
import { laneName, lanesOf, orderWord, wordsWithRoom } from '../../src/app/charts/lanes.ts';
import { levelExtent, levelOf, shareOfPeaks } from '../../src/app/charts/level.ts';
import { inkAt, mapPixels, toneRange } from '../../src/app/charts/map-image.ts';
import { peakBoxes, placePeaks } from '../../src/app/charts/peak-places.ts';
import { matchedMarks } from '../../src/app/charts/matched.ts';
import { readoutText } from '../../src/app/charts/readout-words.ts';
import { levelAt } from '../../src/app/charts/shown-trace.ts';
import { readoutAt } from '../../src/app/charts/readout.ts';
import { relativeAt } from '../../src/app/charts/tracks.ts';
import { pan, reveal, zoomAt } from '../../src/app/charts/viewport.ts';
import { finding, lines, makePeak, RATE_HZ, makePicture, peaks } from './fixture.ts';

describe('thinning a series to the pixels', () => {
  it('keeps the least and greatest value of every pixel column', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 }), {
          minLength: 1,
          maxLength: 2000,
        }),
        fc.integer({ min: 1, max: 60 }),
        (values, columns) => {
          const kept = thin(values, 0, values.length - 1, columns);
          expect(kept.length).toBeLessThanOrEqual(4 * columns);
          const shown = new Set(kept.map(({ value }) => value));
          for (let column = 0; column < columns; column++) {
            const [start, end] = [column, column + 1].map((at) => Math.floor((at * values.length) / columns));
            const mine = values.slice(start, end);
            if (mine.length === 0) continue;
            expect(shown.has(Math.max(...mine))).toBe(true);
            expect(shown.has(Math.min(...mine))).toBe(true);
          }
          expect(kept.every(({ index }, at) => at === 0 || index > (kept[at - 1]?.index ?? -1))).toBe(true);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('keeps a single spike among 2.4 million samples', () => {
    const values = new Float64Array(2_400_000);
    values[1_234_567] = 9;
    const kept = thin(values, 0, values.length - 1, 800);
    expect(kept.length).toBeLessThanOrEqual(3200);
    expect(kept.find(({ index }) => index === 1_234_567)?.value).toBe(9);
  });

  it('leaves out what is not a number', () => {
    expect(thin([NaN, 1, Infinity, 2], 0, 3, 10)).toEqual([
      { index: 1, value: 1 },
      { index: 3, value: 2 },
    ]);
  });
});

describe('zoom and pan', () => {
  it('keep the place under the pointer where it is', () => {
    const shown = zoomAt([0, 100], [0, 200], 30, 2);
    expect(shown).toEqual([15, 65]);
    expect((30 - shown[0]) / (shown[1] - shown[0])).toBeCloseTo(0.3, 12);
  });

  it('never leave the whole', () => {
    expect(pan([0, 50], [0, 200], -10)).toEqual([0, 50]);
    expect(pan([160, 200], [0, 200], 30)).toEqual([160, 200]);
    expect(zoomAt([0, 100], [0, 200], 10, 0.01)).toEqual([0, 200]);
  });

  it('bring the cursor back into sight', () => {
    expect(reveal([0, 50], [0, 200], 60)).toEqual([15, 65]);
    expect(reveal([0, 50], [0, 200], 25)).toEqual([0, 50]);
  });
});

describe('levels', () => {
  it('are acceleration, velocity A/(2πf), or multiples of what is just felt', () => {
    expect(levelOf('acceleration', 50, 0.5, null)).toBe(0.5);
    // 0.5 m/s² at 14 Hz is 5.684105 mm/s: V = A/(2πf).
    expect(levelOf('velocity', 14, 0.5, null)).toBeCloseTo(5.684105, 5);
    expect(levelOf('velocity-inches', 14, 0.5, null)).toBeCloseTo(5.684105 / 25.4, 6);
    // ISO 2631-1 Wk at 8 Hz is 1.036 (Table 3); the threshold taken is 0.015 m/s² peak.
    expect(levelOf('felt', 8, 0.015, 1)).toBeCloseTo(1.036, 3);
  });

  it('take the vertical share of the strongest peak, nearly', () => {
    expect(shareOfPeaks(peaks)).toBeCloseTo(0.75, 10);
    expect(shareOfPeaks([])).toBeNull();
  });

  it('span round figures with just felt among them', () => {
    expect(levelExtent([0.02, 0.5], 0.02, 1)).toEqual([0.01, 2]);
    expect(levelExtent([0.02, 30], 0.02, null)).toEqual([0.01, 50]);
  });

  it('are marked at whole decades on a long axis and at 1-2-5 on a short one', () => {
    const geometry = (low: number, high: number) =>
      spectrumGeometry({ width: 800, shown: [0, 100], left: 92, levels: [low, high], lanes: 2, plotHeight: 200 });
    expect(levelTicks(geometry(0.01, 10).y)).toEqual([0.01, 0.1, 1, 10]);
    expect(levelTicks(geometry(0.1, 5).y)).toEqual([0.1, 0.2, 0.5, 1, 2, 5]);
    expect([0.05, 0.1, 1, 200].map(levelTickText)).toEqual(['0.05', '0.1', '1', '200']);
  });
});

describe('lanes', () => {
  it('stand in a fixed order of parts, with images where a line cannot be seen', () => {
    const lanes = lanesOf(lines);
    expect(lanes.map(({ part }) => part)).toEqual(['tire', 'driveshaft', 'engine']);
    const image = lanes[1]?.marks.find(({ isImage }) => isImage);
    expect(image).toMatchObject({ atHz: 120, text: 'image of 4×' });
  });

  it('have the room their longest name needs, also in the large type of a projector', () => {
    const names = ['Tire', 'Rear driveshaft'];
    expect(leftMargin(900, ['Tire', 'Driveshaft'])).toBeLessThan(110);
    expect(leftMargin(900, names)).toBeGreaterThan(15 * 7 + 10);
    expect(leftMargin(900, names, 1.33)).toBeGreaterThan(15 * 7 * 1.33 + 10);
    // Narrow, the names stand above their lanes.
    expect(leftMargin(360, names)).toBe(46);
    expect(laneName({ part: 'accessory', name: 'water pump' })).toBe('Water pump');
  });

  it('write the words of images last', () => {
    const marks = [
      { xPx: 100, text: 'image of 4×', important: false, isImage: true },
      { xPx: 108, text: '2×', important: false },
    ];
    expect([...wordsWithRoom(marks, 400)]).toEqual([1]);
  });

  it('begin above what belongs to road and body', () => {
    // Seven tenths of the slowest line, tire 1× at 11.6 Hz.
    expect(belowLinesHz(lines)).toBeCloseTo(8.12, 6);
    expect(belowLinesHz([])).toBe(0);
  });

  it('write the order without the part', () => {
    expect(lines.map(orderWord)).toContain('4× firing');
    expect(lines.map(orderWord)).toContain('½×');
  });

  it('write no two words over each other, and the important first', () => {
    const marks = [
      { xPx: 100, text: '1×', important: false },
      { xPx: 108, text: '2×', important: true },
      { xPx: 200, text: '3×', important: false },
    ];
    expect([...wordsWithRoom(marks, 400)].sort()).toEqual([1, 2]);
  });
});

describe('the cursor', () => {
  it('reads each part as its order, with the part turning at its own rate', () => {
    const readout = readoutAt(86.536, lines);
    const driveshaft = readout.parts.find(({ part }) => part === 'driveshaft');
    expect(readout.cyclesPerMinute).toBeCloseTo(5192.16, 2);
    expect(driveshaft?.order).toBeCloseTo(2, 3);
  });

  it('is read aloud with the level that stands there', () => {
    expect(readoutText(86.536, { kind: 'felt', value: 9.42 }, lines)).toMatch(
      /^86\.5\sHz, felt level 9\.4, 5190\srpm, tire 7\.46×, driveshaft 2\.00×/u,
    );
    expect(readoutText(86.536, { kind: 'acceleration', value: 1.1 }, [])).toContain('acceleration 1.1 m/s²');
  });

  it('reads the greatest level within a pixel, as the picture shows it', () => {
    const trace = { amplitudes: Float64Array.of(0, 0, 0.1, 0.7, 0.1, 0), stepHz: 1, kind: 'acceleration' } as const;
    expect(levelAt({ ...trace, verticalShare: null }, 2, 0.4)).toBe(0.1);
    expect(levelAt({ ...trace, verticalShare: null }, 2, 1)).toBe(0.7);
  });
});

describe('peaks in the picture', () => {
  const geometry = spectrumGeometry({
    width: 800,
    left: 92,
    shown: [0, 100],
    levels: [0.01, 10],
    lanes: 3,
    plotHeight: 200,
  });
  const options = {
    geometry,
    lanes: lanesOf(lines),
    kind: 'felt',
    share: null,
    findings: [finding],
    samplingRateHz: RATE_HZ,
    chosen: null,
  } as const;

  it('drop to the lane of the part they are matched to', () => {
    const places = placePeaks(peaks, options);
    const shaft = places.find(({ peak }) => peak.frequencyHz > 80);
    expect(shaft).toMatchObject({ weight: 'finding', text: ['86.5\u00a0Hz'] });
    expect(shaft?.drops.map(({ laneY }) => laneY)).toEqual([geometry.laneY[1]]);
    expect(shaft?.x).toBeCloseTo(geometry.x(86.536), 6);
  });

  it('keep words off their drops, all the way to the lane', () => {
    const shaft = placePeaks(peaks, options).filter(({ peak }) => peak.frequencyHz > 80);
    const [mark, drop] = peakBoxes(shaft, geometry);
    expect(mark).toMatchObject({ top: shaft[0]!.y - 12 });
    expect(drop).toMatchObject({ top: shaft[0]!.y, bottom: geometry.laneY[1] });
    expect(drop!.right - drop!.left).toBeLessThan(6);
  });

  it('drop on to the lane of a second suspect of what was found, and of nothing else', () => {
    const second = { part: 'engine', order: 3, label: 'engine 3×', probability: 0.3 } as const;
    const doubtful = peaks.map((peak) => ({
      ...peak,
      matches: [{ ...peak.matches[0]!, probability: 0.66 }, second, ...peak.matches.slice(1)],
    }));
    const drops = placePeaks(doubtful, options).map(({ peak, drops }) => [
      Math.round(peak.frequencyHz),
      drops.map(({ laneY }) => laneY),
    ]);
    expect(drops).toEqual([
      [87, [geometry.laneY[1], geometry.laneY[2]]],
      [12, [geometry.laneY[0]]],
      [43, [geometry.laneY[1]]],
    ]);
    expect([...matchedMarks(doubtful, [finding], RATE_HZ)]).toEqual([
      'driveshaft 2×',
      'engine 3×',
      'tire 1×',
      'driveshaft 1×',
    ]);
  });

  it('are known as what was found where they are its image, and say so', () => {
    // Sampled at 120 a second, 86.536 Hz stands at 120 − 86.536 = 33.464 Hz.
    const image = makePeak(33.464, 1.1, 'driveshaft 2×', 'driveshaft', 2);
    expect(findingOf(image, [finding], 120)).toBe(finding);
    expect(findingOf(image, [finding], RATE_HZ)).toBeNull();
    const [place] = placePeaks([image], { ...options, samplingRateHz: 120 });
    expect(place).toMatchObject({ weight: 'finding', text: ['33.5\u00a0Hz', 'image of 86.5\u00a0Hz'] });
  });

  it('are left out where they are not in the shown stretch', () => {
    const zoomed = spectrumGeometry({
      width: 800,
      left: 92,
      shown: [0, 50],
      levels: [0.01, 10],
      lanes: 3,
      plotHeight: 200,
    });
    expect(placePeaks(peaks, { ...options, geometry: zoomed }).map(({ peak }) => Math.round(peak.frequencyHz))).toEqual(
      [12, 43],
    );
  });
});

describe('the time-frequency map', () => {
  const picture = makePicture();

  it('runs its ink from the floor to the strongest lines', () => {
    const range = toneRange(picture.timeFrequency.amplitudeMps2);
    expect(inkAt(range.faintMps2, range)).toBe(0);
    expect(inkAt(range.fullMps2 * 2, range)).toBe(1);
    expect(inkAt(Math.sqrt(range.faintMps2 * range.fullMps2), range)).toBeCloseTo(0.5, 6);
  });

  it('keeps a line one bin wide when there are fewer pixels than bins', () => {
    const width = 40;
    const tone = { ink: [0, 0, 0], ...toneRange(picture.timeFrequency.amplitudeMps2) } as const;
    const pixels = mapPixels(picture.timeFrequency, [0, 200], width, 4, tone);
    const column = Math.floor((86.536 / 200) * width);
    expect(pixels[column * 4 + 3]).toBeGreaterThan(230);
  });

  it('has time upward: the first column of the map is the lowest row', () => {
    const map = {
      ...picture.timeFrequency,
      timeS: Float64Array.of(0, 1),
      bins: 1,
      stepHz: 1,
      amplitudeMps2: Float32Array.of(1, 0),
    };
    const pixels = mapPixels(map, [0, 1], 1, 2, { ink: [1, 2, 3], faintMps2: 0.1, fullMps2: 1 });
    expect([pixels[3], pixels[7]]).toEqual([0, 255]);
  });

  it('draws tracks along the speed, level beyond its ends', () => {
    const track = { timeS: Float64Array.of(0, 10), relative: Float64Array.of(1, 0.5) };
    expect([-1, 0, 5, 10, 20].map((time) => relativeAt(track, time))).toEqual([1, 1, 0.75, 0.5, 0.5]);
  });
});

describe('the word on the line of what is just felt', () => {
  const picture = { left: 0, right: 300 };
  const end = (taken: Parameters<typeof wordEnd>[3]): number => wordEnd(picture, 60, () => 100, taken);

  it('stands at the right end, unless a peak or its word is there', () => {
    expect(end([])).toBe(298);
    expect(end([{ left: 250, right: 290, top: 90, bottom: 110 }])).toBeLessThanOrEqual(250);
    expect(end([{ left: 250, right: 290, top: 90, bottom: 110 }])).toBeGreaterThan(240);
  });

  it('does not make way for what stands above or below it, and gives up where all is taken', () => {
    expect(end([{ left: 250, right: 290, top: 20, bottom: 60 }])).toBe(298);
    expect(end([{ left: 250, right: 290, top: 104, bottom: 130 }])).toBe(298);
    expect(end([{ left: 0, right: 300, top: 90, bottom: 110 }])).toBe(298);
  });

  it('is written where the line is inside the picture', () => {
    expect(wordEnd(picture, 60, (px) => (px > 150 ? null : 100), [])).toBeLessThanOrEqual(180);
  });
});
