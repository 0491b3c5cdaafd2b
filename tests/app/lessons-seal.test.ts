import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/core/signal/prepare/prepare.ts';
import { findPeaks } from '../../src/core/signal/peaks/detect.ts';
import { readRecording } from '../../src/core/reading/read-recording.ts';
import { csvLayout } from '../../src/core/simulate/csv-layouts.ts';
import { csvText } from '../../src/core/simulate/csv-write.ts';
import { simulate } from '../../src/core/simulate/simulate.ts';
import { answerOf } from '../../src/app/lessons/class-answer.ts';
import type { ClassCase } from '../../src/app/lessons/class-case.ts';
import { caseName, drawnFault, MODELS, scenarioOf } from '../../src/app/lessons/class-case.ts';
import { makeRecording } from '../../src/app/lessons/make-recording.ts';
import { openAnswer, sealAnswer } from '../../src/app/lessons/seal.ts';
import { must } from '../support/must.ts';

const one: ClassCase = {
  vehicle: 'truck',
  fault: 'driveshaft-unbalance',
  levelMps2: 0.4,
  speedMps: 27,
  durationS: 20,
  rateHz: 200,
  seed: 4711,
};
const run = simulate(scenarioOf(one));
const answer = answerOf(one, run.truth);

describe('a case for the class', () => {
  it('has the fault it was given, at the level it was given', () => {
    const once = answer.orders.find((order) => order.label === 'driveshaft 1×');
    expect(once?.levelMps2).toBeCloseTo(0.4, 2);
    expect(Math.abs(answer.meanSpeedMps / 27 - 1)).toBeLessThan(0.02);
    expect(answer.recording).toBe('class-04711.csv');
  });

  it('gives a recording that is read back and shows the line', async () => {
    const text = csvText(run, csvLayout('plain'), one.seed);
    const read = must(await readRecording({ name: answer.recording, bytes: new TextEncoder().encode(text) }, {}));
    const [strongest] = [...findPeaks(prepare(read), {})].sort((a, b) => b.amplitudeMps2 - a.amplitudeMps2);
    const once = answer.orders.find((order) => order.label === 'driveshaft 1×');
    expect(strongest?.frequencyHz).toBeCloseTo(once?.meanHz ?? 0, 0);
  });

  it('draws only faults the vehicle can have, the same for the same seed', () => {
    for (let seed = 1; seed < 40; seed++) {
      expect(MODELS.hatch.faults).toContain(drawnFault('hatch', seed));
      expect(drawnFault('truck', seed)).toBe(drawnFault('truck', seed));
    }
    expect(new Set(Array.from({ length: 40 }, (_, seed) => drawnFault('truck', seed))).size).toBe(5);
    expect(caseName(3)).toBe('class-00003');
  });
});

describe('a sealed answer', () => {
  it('opens with its word, and tells nothing before', async () => {
    const text = await sealAnswer(answer, 'ripple');
    expect(text).not.toMatch(/driveshaft|unbalance|0\.4/u);
    expect(text).toContain(answer.recording);
    const opened = await openAnswer(text, ' ripple ');
    expect(opened).toEqual({ ok: true, value: answer });
  });

  it('stays shut for another word, a changed file and another recording’s name', async () => {
    const text = await sealAnswer(answer, 'ripple');
    const sealed = (JSON.parse(text) as { sealed: string }).sealed;
    const flipped = (sealed.startsWith('A') ? 'B' : 'A') + sealed.slice(1);
    for (const [changed, word] of [
      [text, 'Ripple'],
      [text.replace(sealed, flipped), 'ripple'],
      [text.replace(answer.recording, 'class-00001.csv'), 'ripple'],
      [text.replace(sealed, '%%'), 'ripple'],
    ] as const) {
      expect(await openAnswer(changed, word)).toMatchObject({ ok: false, problem: { code: 'answer-stays-shut' } });
    }
  });

  it('is told from any other file', async () => {
    for (const text of ['', 'time,x\n0,1', '{}', 'null', '[]', '{"format":"perrev-sealed-answer","version":2}']) {
      expect(await openAnswer(text, 'ripple')).toMatchObject({ ok: false, problem: { code: 'not-an-answer' } });
    }
  });
});

describe('making a recording', () => {
  it('ends the worker whether it is done, dies or is given up', async () => {
    for (const end of ['done', 'dies', 'given up'] as const) {
      let ended = 0;
      const worker = {
        onmessage: null as ((event: { data: unknown }) => void) | null,
        onerror: null as ((event: { message: string }) => void) | null,
        postMessage: () => undefined,
        terminate: () => (ended += 1),
      };
      const abort = new AbortController();
      const made = makeRecording(one, abort.signal, () => worker as unknown as Worker);
      if (end === 'done') worker.onmessage?.({ data: { csv: 'a', samples: 1, answer } });
      if (end === 'dies') worker.onerror?.({ message: 'out of memory' });
      if (end === 'given up') abort.abort();
      if (end === 'done') expect((await made).csv).toBe('a');
      else await expect(made).rejects.toThrow();
      expect(ended).toBe(1);
    }
  });
});
