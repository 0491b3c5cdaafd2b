/** The runs of a job file. */
import type { Run } from './job.ts';
import { nonEmptyText, oneOf, text } from './guards.ts';
import { engineRpm, ratio, samplingRateHz, speedMps } from './number-guards.ts';
import { shape } from './shape.ts';

export const runGuard = shape<Run>(
  {
    file: nonEmptyText,
    name: text,
    samplingRateHz,
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
    withUnit: { samplingRate: 'samplingRateHz', speed: 'speedMps', engineSpeed: 'engineRpm' },
  },
);
