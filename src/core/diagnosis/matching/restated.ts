/** Usual slips in what is typed of a drive, each as the vehicle and the conditions that would then be the true ones. */
import { kmhFromMps, mphFromMps, mpsFromKmh, mpsFromMph } from '../../units.ts';
import { hasDriveshaft } from '../../vehicle/ratios.ts';
import type { LoggedCondition, Vehicle } from '../../vehicle/vehicle.ts';

export interface Restatement {
  readonly kind: 'speed-unit' | 'speeds-exchanged' | 'axle-ratio';
  /** Probability before the recordings are looked at. Judgment. */
  readonly prior: number;
  readonly vehicle: Vehicle;
  readonly conditions: readonly LoggedCondition[];
  /** What then was so, and what was given in its place where one has a name: '62 mph', '62 km/h'. */
  readonly fits: string;
  readonly given: string | null;
}

const UNIT_PRIOR = 0.01;
const EXCHANGED_PRIOR = 0.005;
/** Over all ratios of the list. */
const AXLE_PRIOR = 0.02;
/** No road test is faster; the other unit was not meant. */
const FASTEST_MPS = mpsFromMph(130);
/** Speeds this near to each other, relative, may as well be exchanged. */
const ONE_SPEED = 0.03;
/** Usual axle ratios of cars and light trucks (common practice, no source). */
const USUAL_RATIOS = [2.73, 3.08, 3.15, 3.21, 3.31, 3.36, 3.42, 3.55, 3.64, 3.73, 3.92, 4.1, 4.3, 4.56, 4.88, 5.13];
/** A ratio further off, relative, is not mistaken for the one given. */
const MISTAKEN_WITHIN = 0.35;
/** One ratio and the next are one where they differ by less. */
const ONE_RATIO = 0.01;

const numberText = (value: number): string => (Math.round(10 * value) / 10).toString();

const isStated = ({ speedMps, speedSource }: LoggedCondition): boolean =>
  speedMps !== undefined && speedMps > 0 && speedSource !== 'logged';

const otherUnit = (
  vehicle: Vehicle,
  conditions: readonly LoggedCondition[],
  toMps: (value: number) => number,
  fromMps: (mps: number) => number,
  [meant, given]: readonly [string, string],
): Restatement[] => {
  const restated = conditions.map((one) =>
    isStated(one) ? { ...one, speedMps: toMps(fromMps(one.speedMps ?? 0)) } : one,
  );
  if (restated.some((one) => (one.speedMps ?? 0) > FASTEST_MPS)) return [];
  const values = conditions.filter(isStated).map((one) => numberText(fromMps(one.speedMps ?? 0)));
  const named = [...new Set(values)].join(' and ');
  return [
    {
      kind: 'speed-unit',
      prior: UNIT_PRIOR,
      vehicle,
      conditions: restated,
      fits: `${named} ${meant}`,
      given: `${named} ${given}`,
    },
  ];
};

/** Two runs, each given the other's speed. */
const exchanged = (vehicle: Vehicle, conditions: readonly LoggedCondition[]): Restatement[] => {
  const [first, second] = conditions;
  if (conditions.length !== 2 || !first || !second || !isStated(first) || !isStated(second)) return [];
  const a = first.speedMps ?? 0;
  const b = second.speedMps ?? 0;
  if (Math.abs(Math.log(a / b)) < ONE_SPEED) return [];
  return [
    {
      kind: 'speeds-exchanged',
      prior: EXCHANGED_PRIOR,
      vehicle,
      conditions: [
        { ...first, speedMps: b },
        { ...second, speedMps: a },
      ],
      fits: 'the speeds of the two runs exchanged',
      given: null,
    },
  ];
};

/** The usual axle ratios near the one that was given; none where teeth were counted. */
export const otherAxles = (vehicle: Vehicle, conditions: readonly LoggedCondition[]): readonly Restatement[] => {
  const { axleRatio, ringTeeth } = vehicle;
  // Counted teeth leave no doubt.
  if (axleRatio === undefined || ringTeeth !== undefined || !hasDriveshaft(vehicle)) return [];
  const ratios = USUAL_RATIOS.filter((ratio) => {
    const off = Math.abs(Math.log(ratio / axleRatio));
    return off > ONE_RATIO && off < MISTAKEN_WITHIN;
  });
  return ratios.map((ratio) => ({
    kind: 'axle-ratio',
    prior: AXLE_PRIOR / USUAL_RATIOS.length,
    vehicle: { ...vehicle, axleRatio: ratio },
    conditions,
    fits: `an axle ratio of ${ratio.toFixed(2)}`,
    given: axleRatio.toFixed(2),
  }));
};

/**
 * Speeds as they may have been meant: km/h and mph taken for each other, two runs' speeds exchanged. Logged speeds are
 * not doubted.
 * @param conditions of the runs, as they were used
 */
export const otherSpeeds = (vehicle: Vehicle, conditions: readonly LoggedCondition[]): readonly Restatement[] => [
  ...(conditions.some(isStated)
    ? [
        ...otherUnit(vehicle, conditions, mpsFromMph, kmhFromMps, ['mph', 'km/h']),
        ...otherUnit(vehicle, conditions, mpsFromKmh, mphFromMps, ['km/h', 'mph']),
      ]
    : []),
  ...exchanged(vehicle, conditions),
];
