import { describe, expect, it } from 'vitest';
import { add, polar, size } from '../../src/core/complex.ts';
import { readJob, writeJob } from '../../src/core/job/job-file.ts';
import { foldPoints, sampledSine } from '../../src/app/lessons/aliasing.ts';
import { greatestPullN, linesIn, pullAt, pullSpectrum } from '../../src/app/lessons/order-birth.ts';
import { leadsAt, outcomeOf, speedTraces, swingOf } from '../../src/app/lessons/joints.ts';
import { LESSON_IDS, lessonOf, neighbours } from '../../src/app/lessons/lesson-list.ts';
import { closePairs, linesOf } from '../../src/app/lessons/moving-lines.ts';
import { areApart, dipDb, nearSpectrum } from '../../src/app/lessons/near-lines.ts';
import { plotGeometry, roundUp, seriesPath, tableRows } from '../../src/app/plot/plot.ts';
import { arrowPath, boxAround, MIDDLE, pixelOf } from '../../src/app/plot/round-picture.ts';
import { drawnShafts } from '../../src/app/lessons/shaft-line.ts';
import { turned } from '../../src/app/lessons/turn.ts';
import { fourRuns, hiddenShaft, levelOf } from '../../src/app/lessons/weights.ts';
import { jobOf, MODELS } from '../../src/app/lessons/class-case.ts';

describe('the list of lessons', () => {
  it('finds a lesson by its address and its neighbours', () => {
    expect(lessonOf('one-joint-and-two')).toBe('one-joint-and-two');
    expect(lessonOf('')).toBeNull();
    expect(neighbours('how-an-order-is-born')).toEqual({ previous: null, next: 'lines-that-move' });
    expect(neighbours(LESSON_IDS.at(-1) ?? 'build-a-fault').next).toBeNull();
  });
});

describe('how an order is born', () => {
  const pull = { rpm: 3000, unbalanceGmm: 100, pushN: 4 };

  it('pulls with 9.8696 N per 100 g·mm at 3000 rev/min, upward when the spot is up', () => {
    expect(pullAt(pull, 0).spotN).toBeCloseTo(9.8696044, 6);
    expect(pullAt(pull, 180).spotN).toBeCloseTo(-9.8696044, 6);
    expect(pullAt(pull, 90).pushN).toBeCloseTo(-4, 9);
    expect(greatestPullN(pull)).toBeCloseTo(13.8696044, 6);
  });

  it('stays at orders 1 and 2 whatever the speed', () => {
    for (const rpm of [620, 1780, 3580]) {
      const found = linesIn(pullSpectrum({ ...pull, rpm }), rpm);
      expect(found.map((line) => +line.order.toFixed(2))).toEqual([1, 2]);
      expect(found[1]?.forceN).toBeCloseTo(4, 1);
    }
  });

  it('shows one line where only one pull is there', () => {
    const found = linesIn(pullSpectrum({ ...pull, unbalanceGmm: 0 }), pull.rpm);
    expect(found.map((line) => Math.round(line.order))).toEqual([2]);
  });
});

describe('lines that move', () => {
  const drive = { speedMps: 27.7168, gear: 5, axleRatio: 3.73, tire: '265/70R17' };
  const at = (label: string, change: Partial<typeof drive> = {}): number =>
    linesOf({ ...drive, ...change }).lines.find((line) => line.label === label)?.frequencyHz ?? NaN;

  it('leaves tire and driveshaft alone when the gear changes, and moves the engine by the ratio', () => {
    expect(at('driveshaft 1×', { gear: 3 })).toBe(at('driveshaft 1×'));
    expect(at('tire 1×', { gear: 3 })).toBe(at('tire 1×'));
    expect(at('engine 1×', { gear: 3 }) / at('engine 1×')).toBeCloseTo(1.14 / 0.69, 9);
  });

  it('says that driveshaft 1× and tire 3× cannot be parted at an axle ratio of 3.00', () => {
    const pairs = closePairs(linesOf({ ...drive, axleRatio: 3 }).lines);
    const pair = pairs.find(({ first, second }) => `${first.label}+${second.label}` === 'tire 3×+driveshaft 1×');
    expect(pair?.recordLengthS).toBeNull();
    expect(closePairs(linesOf(drive).lines)).toEqual([]);
  });
});

describe('one joint and two', () => {
  const two = { count: 2, firstDeg: 12, secondDeg: 12, twistDeg: 0 } as const;

  it('swings by sin β·tan β behind one joint', () => {
    const [driven] = speedTraces({ ...two, count: 1 });
    const beta = (12 * Math.PI) / 180;
    expect(swingOf(driven ?? [])).toBeCloseTo(100 * Math.sin(beta) * Math.tan(beta), 6);
    expect(outcomeOf({ ...two, count: 1 }, 2000)).toMatchObject({ verdict: 'alone' });
    expect(outcomeOf({ ...two, count: 1 }, 2000).leftDeg).toBeCloseTo(12, 9);
  });

  it('cancels with equal angles and forks in line, adds with the forks a quarter turn out', () => {
    expect(swingOf(speedTraces(two)[1] ?? [])).toBeLessThan(1e-9);
    expect(outcomeOf(two, 2000)).toMatchObject({ verdict: 'cancels' });
    expect(outcomeOf({ ...two, twistDeg: 90 }, 2000).verdict).toBe('adds');
    // Two ripples in step are those of one joint of about √2 times the angle.
    expect(outcomeOf({ ...two, twistDeg: 90 }, 2000).leftDeg).toBeCloseTo(12 * Math.SQRT2, 0);
  });

  it('leaves √(4² − 3²) of 3° and 4°, not their difference', () => {
    const left = outcomeOf({ count: 2, firstDeg: 3, secondDeg: 4, twistDeg: 0 }, 2000);
    expect(left.leftDeg).toBeCloseTo(Math.sqrt(7), 2);
    expect(left.verdict).toBe('partly');
  });

  it('is ahead by arcsin tan²(β/2) at the most, and not at all where the motion is even', () => {
    const leads = Array.from({ length: 180 }, (_, index) => leadsAt({ ...two, count: 1 }, 2 * index)[0] ?? 0);
    const most = (Math.asin(Math.tan((6 * Math.PI) / 180) ** 2) * 180) / Math.PI;
    expect(Math.max(...leads)).toBeCloseTo(most, 3);
    expect(leadsAt(two, 45)[1]).toBeCloseTo(0, 9);
  });

  it('draws the last shaft level again where the angles are equal', () => {
    expect(drawnShafts(two).map((shaft) => shaft.slopeDeg)).toEqual([0, 12, 0]);
    const [front, rear] = drawnShafts({ ...two, count: 1 });
    expect([rear?.fromX, rear?.fromY]).toEqual([front?.toX, front?.toY]);
  });

  it('turns round and round', () => {
    expect(turned(350, 15)).toBe(5);
    expect(turned(5, -15)).toBe(350);
  });
});

describe('two near lines', () => {
  const lines = { lengthS: 4, gapHz: 0.4, weakerDb: 0, window: 'hann' } as const;
  const apart = (
    change: Partial<{
      lengthS: number;
      weakerDb: number;
      gapHz: number;
      window: 'rectangular' | 'hann' | 'blackman-harris';
    }>,
  ): boolean => {
    const all = { ...lines, ...change };
    return areApart(dipDb(nearSpectrum(all), all));
  };

  it('part when the run is long enough', () => {
    expect(apart({})).toBe(false);
    expect(apart({ lengthS: 20 })).toBe(true);
  });

  it('drown beside a strong one without a window, and show with low skirts', () => {
    const weak = { weakerDb: 60, gapHz: 2, lengthS: 6 };
    expect(apart({ ...weak, window: 'rectangular' })).toBe(false);
    expect(apart({ ...weak, window: 'blackman-harris' })).toBe(true);
  });
});

describe('sampled too slowly', () => {
  it('leaves the dots of the image', () => {
    const { dots, shownHz, isFalse } = sampledSine({ frequencyHz: 87, rateHz: 100 });
    expect(shownHz).toBeCloseTo(13, 9);
    expect(isFalse).toBe(true);
    for (const [timeS, value] of dots) expect(value).toBeCloseTo(Math.cos(2 * Math.PI * 13 * timeS), 9);
    expect(sampledSine({ frequencyHz: 49, rateHz: 100 }).isFalse).toBe(false);
  });

  it('folds at half the rate and its multiples', () => {
    expect(foldPoints(60, 150)).toEqual([
      [0, 0],
      [30, 30],
      [60, 0],
      [90, 30],
      [120, 0],
      [150, 30],
    ]);
  });
});

describe('weights as vectors', () => {
  const shaft = hiddenShaft(7);

  it('are found by four runs, and put right', () => {
    const { answer } = fourRuns(shaft, 10, 0);
    if (!answer.ok) throw new Error(answer.problem.message);
    const { correction, consistency } = answer.value;
    expect(consistency).toBeCloseTo(1, 9);
    expect(correction.size).toBeCloseTo(shaft.weightG, 6);
    expect(size(add(polar(correction.size, correction.angleDeg), polar(shaft.weightG, shaft.angleDeg)))).toBeLessThan(
      1e-6,
    );
    expect(levelOf(shaft, { weightG: correction.size, angleDeg: correction.angleDeg })).toBeLessThan(1e-6);
  });

  it('meet nearly in one point where readings err, and say how consistent they are', () => {
    const { answer } = fourRuns(shaft, 10, 0.05);
    expect(answer.ok && answer.value.consistency).not.toBe(1);
    expect(answer.ok && answer.value.correction.angleSdDeg).toBeGreaterThan(0);
  });

  it('are drawn with 0° up and angles clockwise', () => {
    expect(pixelOf(polar(1, 0), 1)).toEqual([MIDDLE, MIDDLE - 96]);
    const [x, y] = pixelOf(polar(1, 90), 1);
    expect([Math.round(x), Math.round(y)]).toEqual([MIDDLE + 96, MIDDLE]);
    expect(arrowPath([0, 0], [5, 0])).toBe('M0.0 0.0L5.0 0.0');
    expect(arrowPath([0, 0], [50, 0]).match(/L/gu)).toHaveLength(3);
    expect(
      boxAround([
        { at: [0, 0], radius: 10 },
        { at: [10, 0], radius: 20 },
      ]),
    ).toEqual([-12, -22, 44, 44]);
  });
});

describe('the pictures', () => {
  const axis = { label: 'x', domain: [0, 10] as const };

  it('keep lines inside, and grow their axis in steps', () => {
    const g = plotGeometry(400, 100, axis, { label: 'y', domain: [0, 1] });
    const path = seriesPath(
      {
        name: 'a',
        look: 'main',
        points: [
          [0, 0],
          [5, 9],
          [10, 1],
        ],
      },
      g,
    );
    expect(path).toBe(`M48,${g.bottom}L217,${g.top}L386,${g.top}`);
    expect([0, 0.9, 1, 7.1, 10.1, 101].map(roundUp)).toEqual([1, 1, 1, 8, 15, 150]);
  });

  it('have at most 25 rows of numbers, with gaps where a line has no value', () => {
    const rows = tableRows([
      { name: 'a', look: 'main', points: Array.from({ length: 100 }, (_, index) => [index, index] as const) },
      { name: 'b', look: 'second', points: [[0, 7]] },
    ]);
    expect(rows).toHaveLength(25);
    expect(rows[0]).toEqual([0, 0, 7]);
    expect(rows[1]).toEqual([4, 4, null]);
  });
});

describe('the job file of a case', () => {
  it('reads back and does not tell the fault', () => {
    const text = writeJob(
      jobOf({
        vehicle: 'truck',
        fault: 'driveshaft-angle',
        levelMps2: 0.3,
        speedMps: 27,
        durationS: 30,
        rateHz: 200,
        seed: 5,
      }),
    );
    expect(readJob(text, 'class.job.json').ok).toBe(true);
    expect(text).not.toMatch(/angle|fault/iu);
    for (const { vehicle, faults } of Object.values(MODELS)) {
      expect(faults.some((fault) => fault.startsWith('driveshaft'))).toBe(vehicle.layout === 'rear-drive');
    }
  });
});
