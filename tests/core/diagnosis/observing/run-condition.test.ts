import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import { usedCondition } from '../../../../src/core/diagnosis/observing/run-condition.ts';
import type { Recording, Track } from '../../../../src/core/reading/recording.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { recordingOfOrders } from '../../../support/orders.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

const still = (seconds = 10): Recording => plainRecording([new Float64Array(seconds * 100)], 100);
const logOf = (mps: number): Track => ({
  timeS: Float64Array.from([0, 5, 10]),
  value: Float64Array.from([mps, mps, mps]),
  columnName: 'speed',
  unit: 'm/s',
  unitBecause: '',
  step: 0.1,
  intervalS: 5,
});

describe('a speed that is stated as nothing', () => {
  it('says that the vehicle stood, and is no speed', () => {
    const { condition } = usedCondition({ speedMps: 0, speedSource: 'dial' }, still());
    expect(condition).toMatchObject({ load: 'standing' });
    expect(condition.speedMps).toBeUndefined();
  });

  it('leaves the load as it was stated', () => {
    expect(usedCondition({ speedMps: 0, load: 'neutral' }, still()).condition).toEqual({ load: 'neutral' });
  });

  it('gives way to a log that says otherwise', () => {
    const { condition } = usedCondition({ speedMps: 0 }, { ...still(), roadSpeedMps: logOf(20) });
    expect(condition).toMatchObject({ speedMps: 20, speedSource: 'logged' });
    expect(condition.load).toBeUndefined();
  });

  it('of two standing runs leads to the answer that no speed leads to', () => {
    // 1500 rpm: once a turn of the crankshaft at 25 Hz, and half of it.
    const recordings = [1, 2].map((seed) =>
      recordingOfOrders({
        wheelHz: 25,
        rateHz: 200,
        seconds: 30,
        orders: [
          [0.5, 0.3],
          [1, 0.02],
        ],
        seed,
      }),
    );
    const answers = [{ speedMps: 0 }, {}].map((speed) => {
      const job = madeJob(
        { tire: { kind: 'rolling-circumference', circumferenceM: 2.1 }, layout: 'front-drive', cylinders: 6 },
        ...recordings.map((_, i) => ({ file: `${i}.csv`, load: 'standing' as const, engineRpm: 1500, ...speed })),
      );
      return must(analyse(job, recordings)).report;
    });
    expect(answers[0]!.findings[0]).toMatchObject({ part: 'engine', order: 0.5 });
    expect(answers[0]!.findings).toEqual(answers[1]!.findings);
  });
});
