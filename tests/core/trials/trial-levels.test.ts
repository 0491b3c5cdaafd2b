import { describe, expect, it } from 'vitest';
import type { RecordedJob } from '../../../src/core/job/recorded-job.ts';
import { balanceByAmplitudes } from '../../../src/core/driveline/balance/balance-amplitude.ts';
import { balanceByPhasors } from '../../../src/core/driveline/balance/balance-influence.ts';
import type { Recording } from '../../../src/core/reading/recording.ts';
import { orderLevel } from '../../../src/core/signal/speed/order-level.ts';
import { randomSource } from '../../../src/core/simulate/random.ts';
import type { RandomSource } from '../../../src/core/simulate/random.ts';
import type { PlacedLevel } from '../../../src/core/trials/trial-levels.ts';
import { trialAmplitudes, trialLevels } from '../../../src/core/trials/trial-levels.ts';
import type { SpeedSource } from '../../../src/core/vehicle/vehicle.ts';
import { plainRecording } from '../../accuracy/plain-recording.ts';
import { madeJob } from '../../support/made-job.ts';
import { must } from '../../support/must.ts';

/** A log of half a minute at 60 and half a minute at 90 km/h. */
const twoSpeeds = (): Recording => {
  const timeS = Float64Array.from({ length: 61 }, (_, i) => i);
  const axis = Float64Array.from({ length: 60 * 125 }, (_, i) => Math.sin(1.9 * i));
  const value = timeS.map((t) => (t < 30 ? 17 : 25));
  return plainRecording([axis], 125, {
    timeS,
    value,
    columnName: 'v',
    unit: 'm/s',
    unitBecause: '',
    step: 1,
    intervalS: 1,
  });
};

const RATE = 125;
const LENGTH_S = 60;
const STEADY = { timeS: Float64Array.of(0), relative: Float64Array.of(1) };
const TRIAL = 500;
const ANGLES = [0, 120, 240];

/** A rotor as it is, and what a unit weight does to it, as lengths and angles in degrees at the sensor. */
interface Rotor {
  readonly amplitude: number;
  readonly phaseDeg: number;
  readonly perWeight: number;
  readonly lagDeg: number;
}

const drawRotor = (random: RandomSource): Rotor => {
  const amplitude = random.logBetween(0.08, 0.4);
  return {
    amplitude,
    phaseDeg: random.between(0, 360),
    perWeight: (amplitude * random.between(0.6, 1.3)) / TRIAL,
    lagDeg: random.between(0, 360),
  };
};

const vector = (length: number, deg: number): [number, number] => [
  length * Math.cos((deg * Math.PI) / 180),
  length * Math.sin((deg * Math.PI) / 180),
];
const sum = (a: [number, number], b: [number, number]): [number, number] => [a[0] + b[0], a[1] + b[1]];

const response = (rotor: Rotor, weight: number, atDeg: number): { amplitude: number; phaseDeg: number } => {
  const [x, y] = sum(vector(rotor.amplitude, rotor.phaseDeg), vector(rotor.perWeight * weight, atDeg + rotor.lagDeg));
  return { amplitude: Math.hypot(x, y), phaseDeg: (Math.atan2(y, x) * 180) / Math.PI };
};

/** What takes the rotor's own vector away: its length over the effect of a unit, opposite. */
const correctionOf = (rotor: Rotor): { weight: number; angleDeg: number } => ({
  weight: rotor.amplitude / rotor.perWeight,
  angleDeg: rotor.phaseDeg - rotor.lagDeg + 180,
});

/** A run: amplitude with a slow wander and the square of the speed, and noise. */
const readRun = (random: RandomSource, amplitude: number): PlacedLevel => {
  const faster = 1 + 0.003 * random.normal();
  const frequencyHz = 30.3 * faster;
  const keep = Math.exp(-1 / (RATE * random.between(3, 12)));
  const fresh = Math.sqrt(1 - keep * keep);
  let [first, second] = [random.normal(), random.normal() / Math.SQRT2];
  const samples = Float64Array.from({ length: LENGTH_S * RATE }, (_, i) => {
    second = keep * second + (1 - keep) * first;
    first = keep * first + fresh * random.normal();
    const size = amplitude * faster ** 2 * (1 + 0.08 * Math.SQRT2 * second);
    return size * Math.sin((2 * Math.PI * frequencyHz * i) / RATE) + 0.05 * random.normal();
  });
  const prepared = { samplingRateHz: RATE, durationS: LENGTH_S, up: null, pieces: [{ startS: 0, axes: [samples] }] };
  return { frequencyHz, level: orderLevel(prepared, frequencyHz, STEADY)! };
};

const turned = (deg: number): number => ((((deg + 180) % 360) + 360) % 360) - 180;

interface Errors {
  /** In standard uncertainties as stated. */
  readonly size: number[];
  readonly angle: number[];
}

const within = (errors: readonly number[], sds: number): number =>
  errors.filter((error) => Math.abs(error) < sds).length / errors.length;

describe('a correction from recordings of trial runs', () => {
  const CASES = 60;
  const readings = Array.from({ length: CASES }, (_, k) => {
    const random = randomSource(k, 'trial runs');
    const rotor = drawRotor(random);
    const weights = [0, ...ANGLES.map(() => TRIAL)];
    const runs = weights.map((weight, i) => response(rotor, weight, ANGLES[i - 1] ?? 0));
    const amplitudes = trialAmplitudes(runs.map(({ amplitude }) => readRun(random, amplitude)));
    const phases = runs.map(({ phaseDeg }) => phaseDeg + 3 * random.normal());
    return { rotor, runs, amplitudes, phases };
  });

  it('reads each amplitude at the speed of the first run, within its stated uncertainty', () => {
    const errors = readings.flatMap(({ runs, amplitudes }) =>
      amplitudes.map(({ amplitudeMps2, amplitudeSdMps2 }, i) => {
        // The first run's own speed scatters about the reference as well; all are told at that speed.
        const faster = amplitudes[0]!.frequencyHz / 30.3;
        return (amplitudeMps2 - runs[i]!.amplitude * faster ** 2) / amplitudeSdMps2;
      }),
    );
    expect(within(errors, 2)).toBeGreaterThan(0.91);
    expect(within(errors, 1)).toBeLessThan(0.85);
  });

  it('is found without phase within its stated uncertainty, weight and angle', () => {
    const errors: Errors = { size: [], angle: [] };
    let told = 0;
    for (const { rotor, amplitudes } of readings) {
      const [baseline, ...rest] = amplitudes.map(({ amplitudeMps2, amplitudeSdMps2 }) => ({
        amplitude: amplitudeMps2,
        amplitudeSd: amplitudeSdMps2,
      }));
      const solved = balanceByAmplitudes({
        baseline: baseline!,
        trialWeight: TRIAL,
        positions: rest.map((reading, i) => ({ ...reading, angleDeg: ANGLES[i]! })),
      });
      if (!solved.ok) continue;
      told += 1;
      const { correction } = solved.value;
      const truth = correctionOf(rotor);
      errors.size.push((correction.size - truth.weight) / correction.sizeSd!);
      errors.angle.push(turned(correction.angleDeg - truth.angleDeg) / correction.angleSdDeg!);
    }
    expect(told).toBe(CASES);
    for (const all of [errors.size, errors.angle]) {
      expect(within(all, 2)).toBeGreaterThan(0.87);
      expect(within(all, 1)).toBeLessThan(0.9);
    }
  });

  it('is found with phase as well, phases read to 3°', () => {
    const errors: Errors = { size: [], angle: [] };
    for (const { rotor, amplitudes, phases } of readings) {
      const [baseline, trial] = [0, 1].map((i) => [
        {
          amplitude: amplitudes[i]!.amplitudeMps2,
          amplitudeSd: amplitudes[i]!.amplitudeSdMps2,
          phaseDeg: phases[i]!,
          phaseSdDeg: 3,
        },
      ]);
      const solved = must(
        balanceByPhasors({
          baseline: baseline!,
          trials: [{ plane: 0, weight: TRIAL, angleDeg: ANGLES[0]!, readings: trial! }],
        }),
      );
      const correction = solved.corrections[0]!;
      const truth = correctionOf(rotor);
      errors.size.push((correction.size - truth.weight) / correction.sizeSd!);
      errors.angle.push(turned(correction.angleDeg - truth.angleDeg) / correction.angleSdDeg!);
    }
    for (const all of [errors.size, errors.angle]) {
      expect(within(all, 2)).toBeGreaterThan(0.87);
      expect(within(all, 1)).toBeLessThan(0.9);
    }
  });

  it('tells an order that noise hides by what could hide, not as nothing', () => {
    const random = randomSource(1, 'hidden');
    const [clear, hidden] = trialAmplitudes([readRun(random, 0.2), readRun(random, 0)]);
    expect(clear!.amplitudeMps2).toBeCloseTo(0.2, 1);
    expect(hidden!.amplitudeMps2).toBeLessThan(0.01);
    expect(hidden!.amplitudeSdMps2).toBeGreaterThan(0.0005);
  });

  it('of a recording that holds nothing at all is nothing, surely, and no missing number', () => {
    const samples = new Float64Array(20 * RATE);
    const silent = { samplingRateHz: RATE, durationS: 20, up: null, pieces: [{ startS: 0, axes: [samples] }] };
    const placed = { frequencyHz: 30, level: orderLevel(silent, 30, STEADY)! };
    expect(trialAmplitudes([placed])[0]).toMatchObject({ amplitudeMps2: 0, amplitudeSdMps2: 0 });
  });
});

/** A recording of lines that stand perfectly still: Hz and amplitude, told on three axes, in noise of 0.02 m/s². */
const stillRecording = (seed: number, lines: readonly (readonly [number, number])[], lengthS = 20): Recording => {
  const random = randomSource(seed, 'still');
  const rate = 200;
  const axes = [0.3, 0.8, 0.5].map((share, a) =>
    Float64Array.from({ length: lengthS * rate }, (_, i) =>
      lines.reduce(
        (sum, [hz, amplitude]) => sum + share * amplitude * Math.sin((2 * Math.PI * hz * i) / rate + a),
        0.02 * random.normal(),
      ),
    ),
  );
  return plainRecording(axes, rate);
};

describe('the order in runs of 20 s that stand perfectly still', () => {
  // 100 km/h on 205/55R16 (3.05 times its diameter) and 3.73: driveshaft 1× at 53.76 Hz.
  const recordedJob = (recordings: readonly Recording[], speedSource: SpeedSource = 'gps'): RecordedJob => ({
    job: {
      schemaVersion: 1,
      vehicle: { layout: 'rear-drive', tire: { kind: 'size', size: '205/55R16' }, axleRatio: 3.73 },
      work: [],
      measurements: [],
      runs: recordings.map((_, k) => ({
        file: `${k}.csv`,
        name: `run ${k}`,
        speedMps: 100 / 3.6,
        speedSource,
        gearRatio: 0.69,
        load: 'cruise',
      })),
    },
    recordings,
  });
  const found = stillRecording(1, [[53.9, 0.2]]);

  it('is taken to be the only line where it can be, with what that leaves open', () => {
    for (const source of ['gps', 'dial'] as const) {
      const told = must(trialLevels(recordedJob([found, stillRecording(2, [[53.9, 0.1]])], source), 'driveshaft 1×'));
      const { axis, levels, notes } = told;
      expect(axis).toBe('y');
      expect(levels[0]!.amplitudeMps2).toBeCloseTo(0.8 * 0.2, 2);
      expect(levels[1]!.amplitudeMps2).toBeCloseTo(0.8 * 0.1, 2);
      expect(notes.map(({ code }) => code)).toEqual(['order-taken']);
      expect(notes[0]!.text).toMatch(/53\.9 Hz in run 0, the only clear one between .* a few in a hundred faster/);
    }
  });

  it('is read on one axis by its name, whatever axes and order a logger writes', () => {
    const withAxes = (recording: Recording, places: readonly number[]): Recording => ({
      ...recording,
      channels: places.map((k) => recording.channels[k]!),
      segments: recording.segments.map((segment) => ({
        ...segment,
        accelerationMps2: places.map((k) => segment.accelerationMps2[k]!),
      })),
    });
    const half = stillRecording(2, [[53.9, 0.1]]);
    for (const [first, second] of [
      [
        [0, 1, 2],
        [2, 1, 0],
      ],
      [
        [0, 1, 2],
        [1, 2],
      ],
      [
        [1, 2],
        [0, 1, 2],
      ],
    ] as const) {
      const told = must(trialLevels(recordedJob([withAxes(found, first), withAxes(half, second)]), 'driveshaft 1×'));
      expect(told.axis).toBe('y');
      expect(told.levels.map(({ amplitudeMps2 }) => amplitudeMps2 / 0.8)).toEqual([
        expect.closeTo(0.2, 2),
        expect.closeTo(0.1, 2),
      ]);
    }
    const apart = trialLevels(recordedJob([withAxes(found, [0]), withAxes(half, [1])]), 'driveshaft 1×');
    expect(apart).toMatchObject({ ok: false, problem: { code: 'no-shared-axis' } });
  });

  it('is read on all axes together where the sensor was turned between the runs', () => {
    // Gravity along z, then along x, the axes' shakes going with it: 0.2 and 0.1 times √(0.3² + 0.8² + 0.5²) in all.
    const lying = (recording: Recording, up: readonly number[], order: readonly number[]): Recording => ({
      ...recording,
      gravity: { direction: up, mps2: 9.81 },
      segments: recording.segments.map((segment) => ({
        ...segment,
        accelerationMps2: order.map((axis) => segment.accelerationMps2[axis]!),
      })),
    });
    const half = stillRecording(2, [[53.9, 0.1]]);
    const upright = lying(found, [0, 0, 1], [0, 1, 2]);
    const turned = must(trialLevels(recordedJob([upright, lying(half, [1, 0, 0], [2, 0, 1])]), 'driveshaft 1×'));
    const whole = Math.hypot(0.3, 0.8, 0.5);
    expect(turned.axis).toBe('all');
    expect(turned.levels[0]!.amplitudeMps2).toBeCloseTo(0.2 * whole, 2);
    expect(turned.levels[1]!.amplitudeMps2).toBeCloseTo(0.1 * whole, 2);
    expect(turned.notes.find(({ code }) => code === 'sensor-turned')!.text).toContain('by 90°');
    const nodded = lying(half, [0, Math.sin(0.07), Math.cos(0.07)], [0, 1, 2]);
    const still = trialLevels(recordedJob([upright, nodded]), 'driveshaft 1×');
    expect(still.ok && still.value.axis).toBe('y');
  });

  it('is taken to be by far the strongest of several, and not guessed where two are alike', () => {
    const strong = stillRecording(3, [
      [53.9, 0.2],
      [52.6, 0.03],
    ]);
    const told = trialLevels(recordedJob([strong]), 'driveshaft 1×');
    expect(told.ok && told.value.levels[0]!.frequencyHz).toBeCloseTo(53.9, 1);
    const alike = stillRecording(4, [
      [53.9, 0.2],
      [52.6, 0.1],
    ]);
    const refused = trialLevels(recordedJob([alike]), 'driveshaft 1×');
    if (refused.ok) throw new Error('two lines were parted');
    expect(refused.problem.code).toBe('order-not-parted');
    expect(refused.problem.message).toContain('52.6 and 53.9 Hz');
    expect(refused.problem.remedy).toContain('record 60 s');
  });

  it('is refused where no line stands in its reach, and where its reach is not known, saying what to do', () => {
    const elsewhere = trialLevels(recordedJob([stillRecording(5, [[70, 0.2]])]), 'driveshaft 1×');
    if (elsewhere.ok) throw new Error('a line far away was taken');
    expect(elsewhere.problem.message).toMatch(/^run 0 shows no clear line between 5\d\.\d and 5\d\.\d Hz/);
    expect(elsewhere.problem.remedy).toMatch(/^Record 60 s/);
    const unknown = trialLevels(recordedJob([found]), 'driveshaft 9×');
    expect(unknown).toMatchObject({ ok: false, problem: { code: 'order-not-found' } });
    expect(trialLevels(recordedJob([]), 'driveshaft 1×')).toMatchObject({
      ok: false,
      problem: { code: 'runs-missing' },
    });
  });
});

describe('a trial run driven at several speeds', () => {
  it('is refused: its levels would be taken for those of the next weight', () => {
    const recorded: RecordedJob = {
      job: madeJob(
        { layout: 'rear-drive', tire: { kind: 'size', size: 'P235/75R15' }, axleRatio: 3.55 },
        { file: 'a.csv' },
      ),
      recordings: [twoSpeeds()],
    };
    const levels = trialLevels(recorded, 'driveshaft 1×');
    expect(!levels.ok && levels.problem.code).toBe('trial-run-several-speeds');
  });
});
