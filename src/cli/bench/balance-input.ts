/** Words of `perrev balance` → runs with and without phase, weights, and where weights can go. */
import type { PhasorReading, TrialRun, WeightUnit } from '../../core/driveline/measurement.ts';
import type { AmplitudeBalanceInput, TrialPosition } from '../../core/driveline/balance/amplitude-trials.ts';
import type { PhasorBalanceInput } from '../../core/driveline/balance/balance-influence.ts';
import { TRIAL_WEIGHT_G, TRIAL_WEIGHT_GMM } from '../../core/quantity/plausible.ts';
import { parseQuantity, parseRatio } from '../../core/quantity/quantity.ts';
import type { Arguments } from '../arguments.ts';
import { valueOf } from '../arguments.ts';
import { UsageError } from '../io.ts';
import type { OptionRow } from '../option-table.ts';

export const RUN_ROWS: readonly OptionRow[] = [
  {
    name: 'found',
    value: '0.40',
    many: true,
    help: 'amplitude as found, also "0.40±0.01"; with phase "0.42@65"; or its recording; more sensors parted by /',
  },
  { name: 'trial', value: '500g·mm', help: 'trial weight used at every --at position (g·mm, oz·in, g or oz)' },
  {
    name: 'at',
    value: '120=0.64',
    many: true,
    help: 'without phase: position of the trial weight in degrees, and the amplitude or recording',
  },
  {
    name: 'run',
    value: '1:600g·mm@30=0.31@122',
    many: true,
    help: 'with phase: plane, trial weight, its angle, and the reading (more sensors parted by /)',
  },
  { name: 'left-on', help: 'the trial weight of the last --run stays on' },
];

export const PLACING_ROWS: readonly OptionRow[] = [
  { name: 'clamp', value: '600g·mm', help: 'split the correction between two equal clamps of this' },
  { name: 'holes', value: '72/144', help: 'split it between two holes at these angles' },
  { name: 'sites', value: '0/60/120', help: 'or place weights at hand at these angles' },
  { name: 'weights', value: '10/20/35', help: 'weights at hand, in the unit of the trial weight' },
];

/** A weight with its unit; ounces become grams, ounce-inches gram-millimetres. */
export interface Weight {
  readonly amount: number;
  readonly unit: WeightUnit;
}

/** '500 g·mm', '25 g', '0.9 oz', '0.7 oz·in'. */
export function weightOf(option: string, text: string): Weight {
  const isMass = parseQuantity(text, { ...TRIAL_WEIGHT_G, range: [-Infinity, Infinity] }).ok;
  const weight = {
    amount: valueOf(option, parseQuantity(text, isMass ? TRIAL_WEIGHT_G : TRIAL_WEIGHT_GMM)),
    unit: isMass ? ('g' as const) : ('g·mm' as const),
  };
  if (!(weight.amount > 0)) throw new UsageError(`--${option}: a weight must be greater than zero.`);
  return weight;
}

const numberIn = (option: string, text: string, name: string, least = -1e6): number =>
  valueOf(
    option,
    parseRatio(text.trim().replace(/°$/u, ''), {
      range: [least, 1e6],
      name,
      example: name === 'angle' ? '120' : '0.40',
    }),
  );

/** True for what reads as an amplitude; anything else is taken for the name of a recording. */
export const isAmplitude = (text: string): boolean => /^\s*[-−]?[\d.,]+\s*([±@]|\+-|$)/u.test(text);

/** '0.40', '0.40±0.01', '0.42±0.01@65±2'. */
function readingOf(
  option: string,
  text: string,
): { amplitude: number; amplitudeSd?: number; phaseDeg?: number; phaseSdDeg?: number } {
  const withSd = (part: string, least?: number): [number, number | undefined] => {
    const [value = '', sd] = part.replace('+-', '±').split('±');
    return [
      numberIn(option, value, 'reading', least),
      sd === undefined ? undefined : Math.abs(numberIn(option, sd, 'uncertainty')),
    ];
  };
  const [size = '', phase] = text.split('@');
  const [amplitude, amplitudeSd] = withSd(size, 0);
  const [phaseDeg, phaseSdDeg] = phase === undefined ? [undefined, undefined] : withSd(phase);
  return {
    amplitude,
    ...(amplitudeSd === undefined ? {} : { amplitudeSd }),
    ...(phaseDeg === undefined ? {} : { phaseDeg }),
    ...(phaseSdDeg === undefined ? {} : { phaseSdDeg }),
  };
}

const phasorOf = (option: string, text: string): PhasorReading => {
  const { phaseDeg, ...rest } = readingOf(option, text);
  if (phaseDeg !== undefined) return { ...rest, phaseDeg };
  throw new UsageError(`--${option} "${text}" has no phase; write amplitude@phase, as in 0.42@65.`);
};

/** '1:600g·mm@30=0.31@122/0.20@15' */
const RUN = /^\s*(\d+)\s*:\s*([^@=]+)@([^=]+)=(.+)$/u;

/** Runs with phase, and the unit of their weights. */
export function phasorInput(given: Arguments): { input: PhasorBalanceInput; unit: WeightUnit } {
  const baseline = given.texts('found').flatMap((text) => text.split('/').map((reading) => phasorOf('found', reading)));
  const texts = given.texts('run');
  let unit: WeightUnit = 'g·mm';
  const trials = texts.map((text, index): TrialRun => {
    const [, plane = '', weight = '', angle = '', readings = ''] = RUN.exec(text) ?? [];
    if (plane === '' || plane === '0') {
      throw new UsageError(`--run "${text}": write plane:weight@angle=amplitude@phase, as in 1:600g·mm@30=0.31@122.`);
    }
    const trial = weightOf('run', weight);
    if (index > 0 && trial.unit !== unit) throw new UsageError('--run: give all trial weights in one unit.');
    unit = trial.unit;
    return {
      plane: Number(plane) - 1,
      weight: trial.amount,
      angleDeg: numberIn('run', angle, 'angle'),
      readings: readings.split('/').map((reading) => phasorOf('run', reading)),
      ...(given.flag('left-on') && index === texts.length - 1 ? { leftOn: true } : {}),
    };
  });
  return { input: { baseline, trials }, unit };
}

/** Positions of the trial weight: angle and what was read or recorded there. */
export const positionsOf = (given: Arguments): { readonly angleDeg: number; readonly shown: string }[] =>
  given.texts('at').map((text) => {
    const cut = text.indexOf('=');
    if (cut < 1) throw new UsageError(`--at "${text}": write angle=amplitude, as in --at 120=0.64.`);
    return { angleDeg: numberIn('at', text.slice(0, cut), 'angle'), shown: text.slice(cut + 1).trim() };
  });

/** Runs without phase, from numbers. */
export function amplitudeInput(
  found: string,
  trialWeight: number,
  positions: ReturnType<typeof positionsOf>,
): AmplitudeBalanceInput {
  const amplitudeOf = (option: string, text: string) => {
    const { phaseDeg, amplitude, amplitudeSd } = readingOf(option, text);
    if (phaseDeg !== undefined) throw new UsageError(`--${option} "${text}" has a phase; with phase use --run.`);
    return amplitudeSd === undefined ? { amplitude } : { amplitude, amplitudeSd };
  };
  return {
    baseline: amplitudeOf('found', found),
    trialWeight,
    positions: positions.map(({ angleDeg, shown }): TrialPosition => ({ angleDeg, ...amplitudeOf('at', shown) })),
  };
}
