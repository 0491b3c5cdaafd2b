/** The measurements of a job file: what was read on the bench and under the vehicle. */
import * as m from '../driveline/measurement.ts';
import { balanceAmplitudes, balancePhasors, flangeReindex, wheelUnbalance } from './balance-guard.ts';
import { listOf, nonEmptyText, oneOf, pairOf, text, trueOrFalse } from './guards.ts';
import { angleDeg, lengthMm } from './number-guards.ts';
import { byKind, shape } from './shape.ts';

const joint = oneOf('front', 'center', 'rear');
const driveshaft = oneOf('rear-driveshaft', 'front-driveshaft');
/** A dial gauge's or feeler's reading. */
const smallMm = lengthMm(-50, 50);

const shaftReading = shape<m.ShaftReading>(
  {
    part: oneOf('transmission', 'transfer-case', 'shaft', 'pinion'),
    slopeDeg: angleDeg(89),
    planDeg: angleDeg(89),
  },
  { required: ['part', 'slopeDeg'], withUnit: { slope: 'slopeDeg', plan: 'planDeg' } },
);

const workingAngles = shape<m.WorkingAnglesMeasurement>(
  {
    kind: oneOf('working-angles'),
    shafts: listOf(shaftReading),
    phasingDeg: listOf(angleDeg(360)),
    joints: listOf(oneOf('cross', 'double-cardan', 'constant-velocity', 'flexible-disc')),
    splitErrorDeg: listOf(angleDeg(45)),
    driveshaft,
    atRideHeight: trueOrFalse,
  },
  { required: ['kind', 'shafts'], withUnit: { phasing: 'phasingDeg', splitError: 'splitErrorDeg' } },
);

const doubleCardan = shape<m.DoubleCardanMeasurement>(
  { kind: oneOf('double-cardan'), joint, halfAnglesDeg: pairOf(angleDeg(89)) },
  { required: ['kind', 'joint', 'halfAnglesDeg'], withUnit: { halfAngles: 'halfAnglesDeg' } },
);

const rideHeight = shape<m.RideHeightMeasurement>(
  {
    kind: oneOf('ride-height'),
    axle: oneOf('front', 'rear'),
    measuredMm: lengthMm(-2000, 2000),
    specifiedMm: lengthMm(-2000, 2000),
  },
  {
    required: ['kind', 'axle', 'measuredMm', 'specifiedMm'],
    withUnit: { measured: 'measuredMm', specified: 'specifiedMm' },
  },
);

const endPlay = shape<m.EndPlayMeasurement>(
  { kind: oneOf('end-play'), joint, axisPlayMm: pairOf(lengthMm(0, 50)) },
  { required: ['kind', 'joint', 'axisPlayMm'], withUnit: { axisPlay: 'axisPlayMm' } },
);

const ringAxis = shape<m.RingAxis>(
  {
    grooveSpanMm: lengthMm(1, 1000),
    crossAndCupsMm: lengthMm(1, 1000),
    ring1Mm: lengthMm(0.05, 50),
    ring2Mm: lengthMm(0.05, 50),
    grooveOffsetMm: smallMm,
  },
  {
    required: ['grooveSpanMm', 'crossAndCupsMm', 'ring1Mm', 'ring2Mm'],
    withUnit: {
      grooveSpan: 'grooveSpanMm',
      crossAndCups: 'crossAndCupsMm',
      ring1: 'ring1Mm',
      ring2: 'ring2Mm',
      grooveOffset: 'grooveOffsetMm',
    },
  },
);

const rings = shape<m.RingsMeasurement>(
  { kind: oneOf('rings'), joint, axes: listOf(ringAxis) },
  { required: ['kind', 'joint', 'axes'] },
);

const radialPlay = shape<m.PlayMeasurement>(
  { kind: oneOf('radial-play'), place: oneOf('slip-yoke', 'center-bearing'), playMm: lengthMm(0, 50) },
  { required: ['kind', 'place', 'playMm'], withUnit: { play: 'playMm' } },
);

const runout = shape<m.RunoutMeasurement>(
  {
    kind: oneOf('runout'),
    place: oneOf(...m.RUNOUT_PLACES),
    tirMm: lengthMm(0, 100),
    readingsMm: listOf(lengthMm(-100, 100)),
    driveshaft,
    wheelMaterial: oneOf('steel', 'alloy'),
  },
  { required: ['kind', 'place'], withUnit: { tir: 'tirMm', readings: 'readingsMm' } },
);

const observation = shape<m.ObservationMeasurement>(
  { kind: oneOf('observation'), checkId: nonEmptyText, outcome: oneOf('fine', 'wrong'), note: text },
  { required: ['kind', 'checkId', 'outcome'] },
);

export const measurementGuard = byKind<m.Measurement>({
  'working-angles': workingAngles,
  'double-cardan': doubleCardan,
  'ride-height': rideHeight,
  'end-play': endPlay,
  rings,
  'radial-play': radialPlay,
  runout,
  'flange-reindex': flangeReindex,
  'balance-amplitudes': balanceAmplitudes,
  'balance-phasors': balancePhasors,
  'wheel-unbalance': wheelUnbalance,
  observation,
});
