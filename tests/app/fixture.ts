/** An answer made by hand: a rear-drive truck with a driveshaft 2×, as the pictures and words of the app are given it. */
import type { Analysis, RunPicture } from '../../src/core/report/analysis.ts';
import type { FindingReport, OrderReport, PeakReport, Report } from '../../src/core/report/report.ts';
import { STEADY } from '../../src/core/signal/speed/equal-angle.ts';
import type { Line, Part } from '../../src/core/vehicle/line.ts';

export const WHEEL_HZ = 11.6;
export const RATE_HZ = 400;
const DRIVESHAFT_HZ = WHEEL_HZ * 3.73;
const ENGINE_HZ = DRIVESHAFT_HZ * 0.7;

function makeLine(part: Part, order: number, turningHz: number, label: string, change: Partial<Line> = {}): Line {
  return {
    part,
    order,
    label,
    group: part === 'engine' ? 'engine' : 'road',
    perTurn: order,
    frequencyHz: order * turningHz,
    frequencySdHz: order * turningHz * 0.003,
    uncertainty: { speed: 0.002, circumference: 0.002, slip: 0.001, engine: 0 },
    visibility: 'below-half-rate',
    ...change,
  };
}

export const lines: readonly Line[] = [
  makeLine('tire', 1, WHEEL_HZ, 'tire 1×'),
  makeLine('tire', 2, WHEEL_HZ, 'tire 2×'),
  makeLine('tire', 3, WHEEL_HZ, 'tire 3×'),
  makeLine('driveshaft', 1, DRIVESHAFT_HZ, 'driveshaft 1×'),
  makeLine('driveshaft', 2, DRIVESHAFT_HZ, 'driveshaft 2×'),
  makeLine('engine', 0.5, ENGINE_HZ, 'engine ½×'),
  makeLine('engine', 1, ENGINE_HZ, 'engine 1×'),
  makeLine('engine', 4, ENGINE_HZ, 'engine 4× (firing)', { role: 'firing' }),
  makeLine('driveshaft', 4, DRIVESHAFT_HZ, 'driveshaft 4×', { visibility: 'above-half-rate', aliasHz: 120 }),
];

export function makePeak(
  frequencyHz: number,
  amplitudeMps2: number,
  label: string,
  part: Part,
  order: number,
): PeakReport {
  return {
    run: 'Cruise, 62 mph',
    frequencyHz,
    frequencySdHz: 0.01,
    amplitudeMps2,
    axisAmplitudeMps2: [amplitudeMps2 * 0.3, amplitudeMps2 * 0.4, amplitudeMps2 * 0.87],
    velocityMmps: (1000 * amplitudeMps2) / (2 * Math.PI * frequencyHz),
    feltLevel: amplitudeMps2 * 9,
    overFloorDb: 24,
    falseAlarmProbability: 1e-9,
    verticalShare: 0.75,
    matches: [
      { part, order, label, probability: 0.96, expectedHz: frequencyHz + 0.1, expectedSdHz: 0.2 },
      { part: 'unknown', order: null, label: 'unknown', probability: 0.04 },
    ],
  };
}

export const peaks: readonly PeakReport[] = [
  makePeak(2 * DRIVESHAFT_HZ, 1.1, 'driveshaft 2×', 'driveshaft', 2),
  makePeak(WHEEL_HZ, 0.05, 'tire 1×', 'tire', 1),
  makePeak(DRIVESHAFT_HZ, 0.08, 'driveshaft 1×', 'driveshaft', 1),
];

export const finding: FindingReport = {
  part: 'driveshaft',
  order: 2,
  label: 'driveshaft 2×',
  probability: 0.96,
  run: 'Cruise, 62 mph',
  frequencyHz: 2 * DRIVESHAFT_HZ,
  frequencySdHz: 0.01,
  amplitudeMps2: 1.1,
  feltLevel: 9.4,
  perceived: 'felt',
  overRoad: 3.2,
  sharesFrequencyWith: [],
  for: ['The peak is 0.1 Hz from where driveshaft 2× was expected.'],
  against: [],
  missing: ['A run at another speed would show whether it follows the road speed.'],
  causes: [
    {
      id: 'unequal-working-angles',
      title: 'Unequal working angles',
      probability: 0.6,
      for: ['2× alone, without 1×.'],
      against: [],
      missing: ['The working angles.'],
      repair: 'Bring the angles to within 1° of each other.',
      checks: ['working-angles'],
    },
    {
      id: 'something-else',
      title: 'Something else',
      probability: 0.4,
      for: [],
      against: [],
      missing: [],
      repair: '',
      checks: [],
    },
  ],
};

const orders: readonly OrderReport[] = lines.map((line) => ({
  run: 'Cruise, 62 mph',
  part: line.part,
  order: line.order,
  label: line.label,
  frequencyHz: line.frequencyHz,
  frequencySdHz: line.frequencySdHz,
  visibility: line.visibility === 'above-half-rate' ? 'above-nyquist' : line.order === 2 ? 'seen' : 'not-seen',
  ...(line.aliasHz !== undefined && { aliasHz: line.aliasHz }),
  amplitudeMps2: line.visibility === 'above-half-rate' ? null : 0.02,
  feltLevel: line.visibility === 'above-half-rate' ? null : 0.4,
}));

export const report: Report = {
  schemaVersion: 1,
  program: { name: 'perrev', version: '0' },
  verdict: 'found',
  sentence: 'Driveshaft 2× at 86.5 Hz, nine times what a person just feels. Most likely unequal working angles.',
  why: 'Expected at 86.6 ± 0.2 Hz.',
  settings: {},
  vehicle: { layout: 'rear-drive', tire: { kind: 'size', size: 'LT245/75R16' }, axleRatio: 3.73, cylinders: 8 },
  work: ['joint-replaced-rear'],
  measurements: [],
  runs: [
    {
      name: 'Cruise, 62 mph',
      file: 'cruise.csv',
      samplingRateHz: RATE_HZ,
      durationS: 60,
      axes: ['x', 'y', 'z'],
      load: 'cruise',
      gearRatio: 0.7,
      speed: {
        statedMps: 27.71648,
        usedMps: 27.4,
        scale: 0.9886,
        scaleSd: 0.0016,
        source: 'dial',
        circumferenceM: 2.36,
        impliedCircumferenceM: 2.39,
        impliedCircumferenceSdM: 0.01,
      },
      engine: { usedRpm: 1818, source: 'gear' },
      speedVaried: 'steady',
      notes: [],
    },
  ],
  orders,
  peaks,
  findings: [finding],
  checks: [
    {
      id: 'working-angles',
      title: 'Measure the working angles',
      kind: 'measurement',
      minutes: 15,
      tellsApart: ['unequal-working-angles', 'something-else'],
      expectedBits: 0.8,
      how: ['Vehicle at ride height.', 'Read the slope of each shaft.'],
      limit: 'Equal within 1° (common practice).',
      outcomes: { fine: 'Within the limit.', wrong: 'Outside the limit.' },
      cautions: ['Vehicle on a rated hoist or stands. Nothing turning.'],
    },
  ],
  cautions: [],
};

export function makePicture(): RunPicture {
  const bins = 801;
  const stepHz = RATE_HZ / 2 / (bins - 1);
  const amplitudeMps2 = Float64Array.from({ length: bins }, (_, bin) => {
    const hz = bin * stepHz;
    const tone = peaks.reduce(
      (sum, peak) => sum + peak.amplitudeMps2 * Math.exp(-(((hz - peak.frequencyHz) / stepHz) ** 2)),
      0,
    );
    return 0.004 * (1 + 0.3 * Math.sin(bin * 12.9898)) + tone;
  });
  const times = 30;
  return {
    run: 'Cruise, 62 mph',
    spectrum: {
      kind: 'amplitude',
      stepHz,
      window: 'hann',
      segmentLength: 2 * (bins - 1),
      averages: 10,
      effectiveAverages: 9,
      enbwHz: 1.5 * stepHz,
      amplitudeMps2,
    },
    samplingRateHz: RATE_HZ,
    floorMps2: new Float64Array(bins).fill(0.004),
    timeFrequency: {
      kind: 'time-frequency',
      timeS: Float64Array.from({ length: times }, (_, index) => 1 + 2 * index),
      stepHz,
      bins,
      amplitudeMps2: Float32Array.from({ length: times * bins }, (_, index) => amplitudeMps2[index % bins]!),
    },
    lines,
    histories: { road: STEADY, engine: STEADY },
    orderSpectrum: null,
  };
}

export const makeAnalysis = (): Analysis => ({ report, bases: [], pictures: [makePicture()] });
