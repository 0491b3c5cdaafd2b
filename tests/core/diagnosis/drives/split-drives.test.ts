import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import { splitDrives } from '../../../../src/core/diagnosis/drives/split-drives.ts';
import { driveOf } from '../../../../src/core/diagnosis/drives/stretches.ts';
import type { Job, Run } from '../../../../src/core/job/job.ts';
import type { Recording, Track } from '../../../../src/core/reading/recording.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { normals } from '../../signal/made.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

type Corner = readonly [timeS: number, speedMps: number];

/** Speed of a drive given by its corners. */
const speedAt = (corners: readonly Corner[], t: number): number => {
  const next = corners.findIndex(([at]) => at >= t);
  if (next <= 0) return corners[Math.max(0, next)]![1];
  const [[t0, v0], [t1, v1]] = [corners[next - 1]!, corners[next]!];
  return v0 + ((v1 - v0) * (t - t0)) / (t1 - t0);
};

const logOf = (corners: readonly Corner[], everyS = 1): Track => {
  const timeS = Float64Array.from({ length: Math.floor(corners.at(-1)![0] / everyS) + 1 }, (_, i) => i * everyS);
  const value = timeS.map((t) => speedAt(corners, t));
  return { timeS, value, columnName: 'speed', unit: 'm/s', unitBecause: '', step: 0.1, intervalS: everyS };
};

/** Standing, 40 s at 10 m/s, standing, 60 s at 25 m/s, 30 s at 14 m/s, standing. */
const TOWN_AND_ROAD: readonly Corner[] = [
  [0, 0],
  [10, 0],
  [20, 10],
  [60, 10],
  [70, 0],
  [80, 0],
  [95, 25],
  [155, 25],
  [165, 14],
  [195, 14],
  [200, 0],
];

describe('a drive by its logged speed', () => {
  it('is told by its steady stretches, its standstills and its range of speeds', () => {
    const drive = driveOf(logOf(TOWN_AND_ROAD))!;
    expect(drive.holds.map(({ speedMps }) => Math.round(speedMps))).toEqual([25, 10, 14]);
    // Each within the corners, short of them by the lag of a log: a second.
    const [road, town, last] = drive.holds;
    for (const [hold, fromS, toS] of [
      [road!, 95, 155],
      [town!, 20, 60],
      [last!, 165, 195],
    ] as const) {
      expect(Math.abs(hold.fromS - fromS)).toBeLessThanOrEqual(1.01);
      expect(Math.abs(hold.toS - toS)).toBeLessThanOrEqual(2.01);
    }
    // Under 2 m/s: 0 to 12 s, 68 to 81.2 s and from 199.3 s on.
    expect(drive.stoodS).toBeGreaterThanOrEqual(24);
    expect(drive.stoodS).toBeLessThanOrEqual(28);
    expect(drive.moving).toHaveLength(2);
    // At 12 s the log says that it moves; it set off before.
    expect(drive.moving[0]!.fromS).toBe(10);
  });

  it('has no steady stretch in a coast-down, and none that is short', () => {
    expect(
      driveOf(
        logOf([
          [0, 30],
          [60, 15],
        ]),
      )!.holds,
    ).toEqual([]);
    expect(
      driveOf(
        logOf([
          [0, 10],
          [20, 10],
          [40, 20],
        ]),
      )!.holds,
    ).toEqual([]);
    // A foot that moves the speed by 3 % to either side holds it all the same.
    const foot: Corner[] = Array.from({ length: 13 }, (_, i) => [5 * i, i % 2 === 0 ? 24.3 : 25.7]);
    expect(driveOf(logOf(foot))!.holds).toHaveLength(1);
  });

  it('is told at once of five hours, and not at all where its log spans days', () => {
    const hours = logOf([
      [0, 20],
      [9000, 20],
      [9100, 30],
      [18_000, 30],
    ]);
    const before = performance.now();
    expect(
      driveOf(hours)!
        .holds.slice(0, 2)
        .map(({ speedMps }) => Math.round(speedMps)),
    ).toEqual([20, 30]);
    expect(performance.now() - before).toBeLessThan(2000);
    const days = { ...hours, timeS: hours.timeS.map((t, i) => (i > 9000 ? t + 1e9 : t)) };
    expect(driveOf(days)).toBeNull();
  });

  it('cannot be told from three values', () => {
    expect(
      driveOf({ ...logOf(TOWN_AND_ROAD), timeS: Float64Array.of(0, 1, 2), value: Float64Array.of(1, 2, 3) }),
    ).toBeNull();
  });
});

const RATE = 200;
/** 3.05 times the outer diameter of P235/75R15, 733.5 mm. */
const CIRCUMFERENCE_M = 3.05 * 0.7335;
const AXLE = 3.55;

/** Driveshaft 1×, whose level grows with the square of the speed to the given one at 25 m/s, in noise that grows with it. */
const recordingOf = (corners: readonly Corner[], logged: boolean, levelMps2 = 0.2): Recording => {
  const normal = normals(3);
  let turns = 0;
  const samples = Float64Array.from({ length: Math.round(corners.at(-1)![0] * RATE) }, (_, i) => {
    const v = speedAt(corners, i / RATE);
    turns += (AXLE * v) / CIRCUMFERENCE_M / RATE;
    return levelMps2 * (v / 25) ** 2 * Math.cos(2 * Math.PI * turns) + (0.01 + 0.002 * v) * normal();
  });
  return plainRecording([samples], RATE, logged ? logOf(corners) : undefined);
};

const jobOf = (run: Partial<Run> = {}): Job =>
  madeJob(
    { tire: { kind: 'size', size: 'P235/75R15' }, layout: 'rear-drive', axleRatio: AXLE, cylinders: 8 },
    { file: 'drive.csv', gearRatio: 0.75, load: 'cruise', ...run },
  );

const runsOf = (job: Job, recording: Recording) => must(splitDrives({ job, recordings: [recording] }));

describe('a whole road test', () => {
  const logged = recordingOf(TOWN_AND_ROAD, true);

  it('is judged by its steady stretches, in order, each with what was stated of it', () => {
    const { job, recordings } = runsOf(jobOf({ speedMps: 25.5 }), logged);
    expect(job.runs.map(({ name }) => name?.replace(/\d+ to \d+ s/u, '…'))).toEqual(Array(3).fill('drive.csv, …'));
    // The stated speed and gear are those of the stretch at 25 m/s.
    expect(job.runs.map(({ speedMps, gearRatio }) => [speedMps, gearRatio])).toEqual([
      [undefined, undefined],
      [25.5, 0.75],
      [undefined, undefined],
    ]);
    expect(recordings.map(({ durationS }) => Math.round(durationS / 5) * 5)).toEqual([40, 60, 30]);
    expect(recordings.map(({ notes }) => notes.at(-1)!.text).join(' ')).toMatch(/Gear or engine speed as stated/u);
    // Without a stated speed the gear is taken for the fastest stretch, which is where one drives in the gear stated.
    expect(runsOf(jobOf(), logged).job.runs.map(({ gearRatio }) => gearRatio)).toEqual([undefined, 0.75, undefined]);
  });

  it('finds what shakes at one of its speeds, and how it grows with the speed', () => {
    const analysis = must(analyse(jobOf(), [logged]));
    const { verdict, findings, runs } = analysis.report;
    expect(runs).toHaveLength(3);
    expect(verdict).toBe('found');
    expect(findings[0]!.label).toBe('driveshaft 1×');
    expect(findings[0]!.amplitudeMps2).toBeGreaterThan(0.18);
    expect(findings[0]!.amplitudeMps2).toBeLessThan(0.22);
  });

  it('is not cleared where no log tells its speeds', () => {
    const corners: Corner[] = [
      [0, 0],
      [8, 0],
      [20, 25],
      [40, 25],
      [50, 9],
      [70, 9],
      [76, 0],
    ];
    const analysis = must(analyse(jobOf({ speedMps: 25 }), [recordingOf(corners, false, 0)]));
    const { verdict, sentence, why } = analysis.report;
    expect(verdict).toBe('cannot-tell');
    expect(sentence).toContain('nothing stands out, but this was no drive at one speed on one road');
    expect(why).toContain('Use the part that was driven steadily, or record with a speed log.');
  });

  it('that came back to its speeds again and again is judged once at each, where it was held longest', () => {
    const again: Corner[] = [0, 1, 2, 3, 4].flatMap((k): Corner[] => [
      [120 * k, 12],
      [120 * k + 30 + k, 12],
      [120 * k + 45, 25],
      [120 * k + 110 - 2 * k, 25],
      [120 * k + 119, 12],
    ]);
    const { job, recordings } = runsOf(jobOf(), recordingOf(again, true));
    expect(job.runs).toHaveLength(2);
    const speeds = recordings.map(({ roadSpeedMps }) => Math.round(roadSpeedMps!.value[10]!));
    // 25 m/s longest at first, for 65 s; 12 m/s at last, for 34 s.
    expect(speeds).toEqual([25, 12]);
    expect(recordings[0]!.segments[0]!.startS).toBeLessThan(50);
    expect(recordings[1]!.segments[0]!.startS).toBeGreaterThan(470);
  });

  it('driven with changing speed on purpose is judged in all of it that moved', () => {
    const { job, recordings } = runsOf(jobOf({ load: 'pull' }), logged);
    expect(job.runs.map(({ name }) => name)).toEqual([undefined]);
    expect(recordings[0]!.durationS).toBeGreaterThan(160);
    expect(recordings[0]!.durationS).toBeLessThan(180);
  });

  it('is used in the part that was asked for, on its own clock', () => {
    const { job, recordings } = runsOf(jobOf({ fromS: 100, toS: 150 }), recordingOf(TOWN_AND_ROAD, false));
    expect(job.runs).toHaveLength(1);
    expect(recordings[0]!.durationS).toBeCloseTo(50, 9);
    expect(recordings[0]!.segments[0]!.startS).toBeCloseTo(100, 9);
    expect(recordings[0]!.notes.at(-1)!.text).toBe('Only 100 to 150 s of it is used, as asked.');
    expect(runsOf(jobOf({ fromS: 100 }), logged).recordings[0]!.notes.map(({ text }) => text)).toContain(
      'Only what follows 100 s of it is used, as asked.',
    );
  });

  it('is refused where too little of it was asked for, with another remedy than a short recording', () => {
    const short = splitDrives({ job: jobOf({ fromS: 100, toS: 103 }), recordings: [logged] });
    expect(!short.ok && short.problem).toMatchObject({
      code: 'recording-too-short',
      message: expect.stringContaining('holds 3.0 s that can be used') as string,
      remedy: 'Use a longer part of it, or all of it.',
    });
    const nothing = splitDrives({ job: jobOf({ fromS: 150, toS: 100 }), recordings: [logged] });
    expect(nothing.ok).toBe(false);
  });

  it('without steady stretches loses its standstills and no more', () => {
    const stops: Corner[] = [0, 1, 2, 3].flatMap((k): Corner[] => [
      [30 * k, 0],
      [30 * k + 6, 0],
      [30 * k + 18, 18],
      [30 * k + 29, 0],
    ]);
    const { job, recordings } = runsOf(jobOf(), recordingOf(stops, true));
    expect(job.runs).toEqual(jobOf().runs);
    expect(recordings[0]!.segments).toHaveLength(4);
    expect(recordings[0]!.notes.at(-1)!.text).toMatch(/^\d+ s of standing are left out, by the logged speed\.$/u);
  });
});

describe('other recordings stay whole', () => {
  it.each([
    [
      'a cruise',
      [
        [0, 25],
        [30, 25.5],
        [60, 24.8],
      ],
    ],
    [
      'a coast-down without steady stretches',
      [
        [0, 30],
        [60, 15],
      ],
    ],
    [
      'a stand',
      [
        [0, 0],
        [60, 0],
      ],
    ],
    [
      'a drive at two speeds near each other',
      [
        [0, 22],
        [40, 22],
        [50, 28],
        [90, 28],
      ],
    ],
  ] as readonly (readonly [string, readonly Corner[]])[])('%s', (_, corners) => {
    const recording = recordingOf(corners, true);
    const { job, recordings } = runsOf(jobOf(), recording);
    expect(recordings).toEqual([recording]);
    expect(job.runs).toEqual(jobOf().runs);
  });
});
