/**
 * How well orders are read while the speed moves: `npx tsx tests/accuracy/speed-study.ts [trials] [--list]`.
 * Orders of one amplitude throughout, in noise that falls with frequency, at a speed that drifts by ±2 %, pulls up or
 * coasts down over 40 %; given by nothing, or by a log of 1 km/h steps once a second, up to a second late. Held against
 * what was put in: each order's amplitude within 5 %, its number (frequency over the wheels' true mean rate) within
 * 0.2 %. Crossings: a fixed tone in the middle of a shaft's sweep; an engine out of gear swept through the shaft's.
 */
import { analyse } from '../../src/core/analyse.ts';
import type { Track } from '../../src/core/reading/recording.ts';
import { randomSource, type RandomSource } from '../../src/core/simulate/random.ts';
import { plainRecording } from './plain-recording.ts';
import { madeJob } from '../support/made-job.ts';

const RATE_HZ = 400;
const SIZE = '265/70R17';
const CIRCUMFERENCE_M = (3.05 * (25.4 * 17 + (2 * 265 * 70) / 100)) / 1000;
const AXLE = 3.73;
const GEAR = 0.74;

const KINDS = [
  'drift',
  'pull',
  'coast',
  'logged pull',
  'logged coast',
  'fixed tone crossed',
  'engine crosses',
] as const;
export type Kind = (typeof KINDS)[number];

interface Wanted {
  readonly name: string;
  readonly hz: number;
  readonly amplitudeMps2: number;
}

/** One order: its turns per wheel turn (or null for a tone of its own with its frequency), axis shares, amplitude. */
interface Part {
  readonly name: string;
  readonly rateHz: (timeS: number) => number;
  readonly amplitudeMps2: number;
}

const smooth = (x: number): number => x * x * (3 - 2 * x);

/** Speed over its mean of about 1. */
const speedOf = (kind: Kind, durationS: number, random: RandomSource): ((t: number) => number) => {
  const turns = random.between(0.6, 2);
  const phase = random.between(0, 6.28);
  if (kind === 'drift' || kind === 'engine crosses') {
    const depth = kind === 'drift' ? 0.02 : 0.004;
    return (t) => 1 + depth * Math.sin((2 * Math.PI * turns * t) / durationS + phase);
  }
  const up = kind === 'coast' || kind === 'logged coast' ? -1 : 1;
  const shape = random.pick(['linear', 'ease'] as const);
  const at = (x: number): number => (shape === 'linear' ? x : 0.5 * x + 0.5 * smooth(x));
  return (t) => 1 + up * 0.4 * (at(t / durationS) - 0.5) + 0.003 * Math.sin((2 * Math.PI * turns * t) / durationS);
};

const partsOf = (kind: Kind, wheelHz: (t: number) => number, meanHz: number, durationS: number): readonly Part[] => {
  const road = (name: string, multiple: number, amplitudeMps2: number): Part => ({
    name,
    rateHz: (t) => multiple * wheelHz(t),
    amplitudeMps2,
  });
  const driveline = [
    road('tire 1×', 1, 0.05),
    road('driveshaft 1×', AXLE, 0.08),
    road('driveshaft 2×', 2 * AXLE, 0.06),
  ];
  if (kind === 'engine crosses') {
    const shaftHz = AXLE * meanHz;
    const rateHz = (t: number): number => shaftHz * (1.3 - 0.6 * smooth(t / durationS));
    return [...driveline, { name: 'engine 1×', rateHz, amplitudeMps2: 0.08 }];
  }
  const engine = [road('engine 1×', AXLE * GEAR, 0.05), road('engine 4×', 4 * AXLE * GEAR, 0.05)];
  const fixed: Part = { name: 'fixed tone', rateHz: () => 1.02 * AXLE * meanHz, amplitudeMps2: 0.06 };
  return [...driveline, ...engine, ...(kind === 'fixed tone crossed' ? [fixed] : [])];
};

export interface SpeedTrial {
  readonly wanted: Wanted;
  /** Relative errors; null where nothing was found within 2 %. */
  readonly frequency: number | null;
  readonly amplitude: number | null;
}

const logOf = (kmh: (t: number) => number, durationS: number, random: RandomSource): Track => {
  const lagS = random.between(0, 1);
  const count = Math.floor(durationS);
  return {
    timeS: Float64Array.from({ length: count }, (_, i) => i),
    value: Float64Array.from({ length: count }, (_, i) => Math.round(kmh(Math.max(0, i - lagS))) / 3.6),
    columnName: 'speed',
    unit: 'km/h',
    unitBecause: 'made by a study',
    step: 1 / 3.6,
    intervalS: 1,
  };
};

const speedTrial = (kind: Kind, seed: number): readonly SpeedTrial[] => {
  const random = randomSource(seed, `speed study ${kind}`);
  const durationS = Math.round(random.between(30, 75));
  const relative = speedOf(kind, durationS, random);
  const speedMps = random.between(22, 30);
  const circumferenceM = CIRCUMFERENCE_M * (1 + 0.006 * random.normal());
  const wheelHz = (t: number): number => (speedMps * relative(t)) / circumferenceM;
  const count = durationS * RATE_HZ;
  const axes = [0, 1, 2].map(() => new Float64Array(count));
  const meanHz = speedMps / circumferenceM;
  const wanted = partsOf(kind, wheelHz, meanHz, durationS).map((part): Wanted => {
    const shares = [random.normal(), random.normal(), random.normal()];
    const norm = Math.hypot(...shares);
    let turned = random.uniform();
    const first = turned;
    for (let i = 0; i < count; i++) {
      const value = part.amplitudeMps2 * Math.cos(2 * Math.PI * turned);
      axes.forEach((axis, a) => (axis[i]! += (value * shares[a]!) / norm));
      turned += part.rateHz((i + 0.5) / RATE_HZ) / RATE_HZ;
    }
    return { name: part.name, hz: (turned - first) / durationS, amplitudeMps2: part.amplitudeMps2 };
  });
  // Red below some 5 Hz and white above, 0.004 m/s² per √Hz.
  for (const axis of axes) {
    let slow = 0;
    for (let i = 0; i < count; i++) {
      slow = 0.93 * slow + 0.25 * random.normal();
      axis[i]! += 0.004 * Math.sqrt(RATE_HZ / 2) * (random.normal() + slow);
    }
  }
  const logged = kind.startsWith('logged');
  const kmh = (t: number): number => 3.6 * speedMps * relative(t);
  const track = logged ? logOf(kmh, durationS, random) : undefined;
  const job = madeJob(
    { tire: { kind: 'size', size: SIZE }, layout: 'rear-drive', axleRatio: AXLE, cylinders: 8 },
    {
      file: 'study.csv',
      ...(kind === 'engine crosses' ? { load: 'neutral' } : { gearRatio: GEAR, load: 'cruise' }),
      ...(logged ? { speedSource: 'logged' } : { speedMps: Math.round(speedMps), speedSource: 'gps' }),
    },
  );
  const analysis = analyse(job, [plainRecording(axes, RATE_HZ, track)]);
  const peaks = analysis.ok ? analysis.value.report.peaks : [];
  return wanted.map((one) => {
    const near = peaks
      .filter((peak) => Math.abs(peak.frequencyHz / one.hz - 1) < 0.015)
      .sort((a, b) => Math.abs(a.frequencyHz - one.hz) - Math.abs(b.frequencyHz - one.hz))[0];
    return {
      wanted: one,
      frequency: near ? near.frequencyHz / one.hz - 1 : null,
      amplitude: near ? near.amplitudeMps2 / one.amplitudeMps2 - 1 : null,
    };
  });
};

const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;
const sorted = (values: readonly number[]): readonly number[] => [...values].sort((a, b) => a - b);
const at = (values: readonly number[], share: number): number =>
  values[Math.min(values.length - 1, Math.floor(share * values.length))] ?? NaN;

if (process.argv[1]?.endsWith('speed-study.ts')) {
  const trials = Number(process.argv[2] ?? 20);
  const list = process.argv.includes('--list');
  console.log('kind: orders found; errors of number and amplitude, median and 95 of 100; within 0.2 % and 5 %');
  for (const kind of KINDS) {
    const all = Array.from({ length: trials }, (_, seed) => speedTrial(kind, seed)).flat();
    const frequency = sorted(all.flatMap((o) => (o.frequency === null ? [] : [Math.abs(o.frequency)])));
    const amplitude = sorted(all.flatMap((o) => (o.amplitude === null ? [] : [Math.abs(o.amplitude)])));
    const good = all.filter((o) => Math.abs(o.frequency ?? 1) < 0.002 && Math.abs(o.amplitude ?? 1) < 0.05).length;
    console.log(
      `${kind}: ${frequency.length} of ${all.length}; number ${percent(at(frequency, 0.5))}, ${percent(at(frequency, 0.95))}; ` +
        `amplitude ${percent(at(amplitude, 0.5))}, ${percent(at(amplitude, 0.95))}; both within ${percent(good / all.length)}`,
    );
    if (list) {
      for (const [i, o] of all.entries()) {
        if (Math.abs(o.frequency ?? 1) < 0.002 && Math.abs(o.amplitude ?? 1) < 0.05) continue;
        console.log(
          `   trial ${Math.floor((i * trials) / all.length)} ${o.wanted.name} ${o.wanted.hz.toFixed(2)} Hz: ` +
            `number ${o.frequency === null ? 'not found' : percent(o.frequency)}, amplitude ${o.amplitude === null ? '–' : percent(o.amplitude)}`,
        );
      }
    }
  }
}
