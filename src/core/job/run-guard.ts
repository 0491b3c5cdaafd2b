/** The runs of a job file. */
import type { Run } from './job.ts';
import { success } from '../note.ts';
import { GIVEN_UNITS, givenUnitOf } from '../reading/given.ts';
import type { GivenUnit } from '../reading/given.ts';
import { nonEmptyText, oneOf, text } from './guards.ts';
import type { Guard } from './guards.ts';
import { engineRpm, ratio, samplingRateHz, speedMps, timeS } from './number-guards.ts';
import { shape } from './shape.ts';

const accelerationUnit: Guard<GivenUnit> = (value, key) => {
  const unit = typeof value === 'string' ? givenUnitOf(value) : null;
  return unit ? success(unit) : oneOf(...GIVEN_UNITS)(value, key);
};

export const runGuard = shape<Run>(
  {
    file: nonEmptyText,
    name: text,
    samplingRateHz,
    accelerationUnit,
    fromS: timeS,
    toS: timeS,
    stage: oneOf('complaint', 'proof'),
    speedMps,
    speedSource: oneOf('dial', 'gps', 'obd', 'logged'),
    gearRatio: ratio(0.2, 40),
    engineRpm,
    load: oneOf('cruise', 'pull', 'coast', 'neutral', 'brake', 'standing'),
    note: text,
  },
  {
    required: ['file'],
    withUnit: { from: 'fromS', to: 'toS', samplingRate: 'samplingRateHz', speed: 'speedMps', engineSpeed: 'engineRpm' },
  },
);
