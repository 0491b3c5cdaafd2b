/** The measurements of a job file that come from trial weights, re-indexing and the wheel balancer. */
import type * as m from '../driveline/measurement.ts';
import { listOf, oneOf, trueOrFalse } from './guards.ts';
import type { Guard } from './guards.ts';
import { ACCELERATION_MPS2, MASS_KG } from '../quantity/quantity-kinds.ts';
import { gramFromOunce } from '../units.ts';
import type { QuantityKind } from '../quantity/quantity-kinds.ts';
import { angleDeg, count, lengthMm, quantity, ratio } from './number-guards.ts';
import { shape } from './shape.ts';

/** Amplitudes and weights whose unit stands in another key, or cancels out: plain numbers. */
const plain: Guard<number> = ratio(0, 1e9);
const accelerationMps2 = quantity(ACCELERATION_MPS2, 0, 1e4);

const kgPerG = 1000;
/** Weights are in grams here, while the general mass is in kilograms. */
const MASS_G: QuantityKind = {
  ...MASS_KG,
  units: { g: (g) => g, kg: (kg) => kg * kgPerG, oz: gramFromOunce },
  example: '25 g or 0.9 oz',
};

type Level = m.FlangeReindexMeasurement['levels'][number];
const level = shape<Level>(
  { steps: count(0, 60), amplitudeMps2: accelerationMps2, amplitudeSdMps2: accelerationMps2 },
  {
    required: ['steps', 'amplitudeMps2'],
    withUnit: { amplitude: 'amplitudeMps2', amplitudeSd: 'amplitudeSdMps2' },
  },
);
export const flangeReindex = shape<m.FlangeReindexMeasurement>(
  { kind: oneOf('flange-reindex'), boltCount: count(2, 60), levels: listOf(level) },
  { required: ['kind', 'boltCount', 'levels'] },
);

const part = oneOf('driveshaft', 'tire');
const weightUnit = oneOf('g', 'g·mm');

type Position = m.BalanceAmplitudesMeasurement['positions'][number];
export const balanceAmplitudes = shape<m.BalanceAmplitudesMeasurement>(
  {
    kind: oneOf('balance-amplitudes'),
    part,
    baseline: shape<m.AmplitudeReading>({ amplitude: plain, amplitudeSd: plain }, { required: ['amplitude'] }),
    trialWeight: plain,
    weightUnit,
    positions: listOf(
      shape<Position>(
        { amplitude: plain, amplitudeSd: plain, angleDeg: angleDeg(360) },
        { required: ['amplitude', 'angleDeg'], withUnit: { angle: 'angleDeg' } },
      ),
    ),
  },
  { required: ['kind', 'part', 'baseline', 'trialWeight', 'weightUnit', 'positions'] },
);

const phasor = shape<m.PhasorReading>(
  { amplitude: plain, amplitudeSd: plain, phaseDeg: angleDeg(360), phaseSdDeg: angleDeg(360) },
  { required: ['amplitude', 'phaseDeg'], withUnit: { phase: 'phaseDeg', phaseSd: 'phaseSdDeg' } },
);
const trial = shape<m.TrialRun>(
  { plane: count(0, 20), weight: plain, angleDeg: angleDeg(360), readings: listOf(phasor), leftOn: trueOrFalse },
  { required: ['plane', 'weight', 'angleDeg', 'readings'], withUnit: { angle: 'angleDeg' } },
);
export const balancePhasors = shape<m.BalancePhasorsMeasurement>(
  { kind: oneOf('balance-phasors'), part, weightUnit, baseline: listOf(phasor), trials: listOf(trial) },
  { required: ['kind', 'part', 'weightUnit', 'baseline', 'trials'] },
);

const weightG = quantity(MASS_G, 0, 10_000);
export const wheelUnbalance = shape<m.WheelUnbalanceMeasurement>(
  { kind: oneOf('wheel-unbalance'), innerG: weightG, outerG: weightG, radiusMm: lengthMm(50, 1000) },
  {
    required: ['kind', 'innerG', 'outerG', 'radiusMm'],
    withUnit: { inner: 'innerG', outer: 'outerG', radius: 'radiusMm' },
  },
);
