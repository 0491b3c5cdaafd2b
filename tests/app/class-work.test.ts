import { describe, expect, it } from 'vitest';
import type { ClassCase } from '../../src/app/lessons/class-case.ts';
import { ClassWork } from '../../src/app/lessons/class-work.svelte.ts';
import type { MadeRecording } from '../../src/app/lessons/make-recording.ts';

const one: ClassCase = {
  vehicle: 'truck',
  fault: 'misfire',
  levelMps2: 0.3,
  speedMps: 28,
  durationS: 40,
  rateHz: 250,
  seed: 1,
};
const recording: MadeRecording = {
  csv: 't,x\n',
  samples: 1,
  answer: {
    recording: 'class-00001.csv',
    fault: 'misfire',
    levelMps2: 0.3,
    orders: [],
    meanSpeedMps: 28,
    circumferenceM: 2.4,
  },
};

describe('the case for the class', () => {
  it('knows when the form has left what was made behind, and when it is back', async () => {
    const work = new ClassWork(() => Promise.resolve(recording));
    await work.make(one, 'ripple');
    expect([work.made?.recording, work.isFormer, work.isMaking]).toEqual([recording, false, false]);
    work.settings.durationS = 60;
    expect(work.isFormer).toBe(true);
    work.settings.durationS = 40;
    expect(work.isFormer).toBe(false);
    work.changeWord();
    expect(work.isFormer).toBe(true);
  });

  it('leaves no trace of the fault chosen in the form, for the class looks on', async () => {
    const work = new ClassWork(() => Promise.resolve(recording));
    work.settings.fault = 'misfire';
    await work.make(one, 'ripple');
    expect([work.settings.fault, work.made?.one.fault, work.isFormer]).toEqual(['chance', 'misfire', false]);
  });

  it('keeps what was made until another one is, also where that is given up or fails', async () => {
    const answers = [
      () => Promise.resolve(recording),
      (signal: AbortSignal) =>
        new Promise<MadeRecording>((_, reject) =>
          signal.addEventListener('abort', () => reject(new Error('given up'))),
        ),
      () => Promise.reject(new Error('died')),
    ];
    const work = new ClassWork((_, signal) => answers.shift()!(signal));
    await work.make(one, 'ripple');
    const { made } = work;
    const givenUp = work.make(one, 'ripple');
    expect(work.isMaking).toBe(true);
    work.cancel();
    await givenUp;
    expect([work.made, work.isMaking, work.hasFailed]).toEqual([made, false, false]);
    await work.make(one, 'ripple');
    expect([work.made, work.isMaking, work.hasFailed]).toEqual([made, false, true]);
  });
});
