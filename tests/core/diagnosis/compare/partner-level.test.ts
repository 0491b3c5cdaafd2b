import { describe, expect, it } from 'vitest';
import { judgeJob } from '../../../../src/core/diagnosis/judge-job.ts';
import { partnerLevel } from '../../../../src/core/diagnosis/compare/partner-level.ts';
import { runLevels } from '../../../../src/core/diagnosis/compare/run-levels.ts';
import { compareRuns } from '../../../../src/core/diagnosis/compare/compare.ts';
import type { RunInference } from '../../../../src/core/diagnosis/matching/infer-run.ts';
import { randomSource } from '../../../../src/core/simulate/random.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { sideOf } from '../../../support/side.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

const RATE = 200;
const LENGTH_S = 40;
/** Driveshaft 1× of 205/55R16 (3.05 times its diameter) and 3.73 at 100 km/h. */
const SHAFT_HZ = 53.76;

/** Lines as [Hz, amplitude]; with a drift their speed swings by half a percent every 20 s. */
const inference = (seed: number, speedMps: number, drift: number, lines: readonly (readonly [number, number])[]) => {
  const random = randomSource(seed, 'partner');
  const axes = [0.3, 0.8, 0.5].map((share) =>
    Float64Array.from({ length: LENGTH_S * RATE }, (_, i) => {
      const t = i / RATE;
      const turned = t - (drift * 20 * Math.cos((2 * Math.PI * t) / 20)) / (2 * Math.PI);
      return lines.reduce(
        (sum, [hz, amplitude]) => sum + share * amplitude * Math.sin(2 * Math.PI * hz * turned),
        0.02 * random.normal(),
      );
    }),
  );
  const job = madeJob(
    { layout: 'rear-drive', tire: { kind: 'size', size: '205/55R16' }, axleRatio: 3.73, converter: false },
    { file: `${seed}.csv`, speedMps, speedSource: 'gps', gearRatio: 0.69, load: 'cruise' },
  );
  return must(judgeJob({ job, recordings: [plainRecording(axes, RATE)] })).inferences[0]!;
};

const shaftIn = (one: RunInference) => runLevels(one).get('driveshaft 1×');
const SPEED = 100 / 3.6;
/** A percent off what the tire's size says: worn. The first run moves with the speed, which tells the order. */
const before = inference(1, SPEED, 0.005, [[SHAFT_HZ * 1.01, 0.2]]);

describe('an order that one run shows and the other left open', () => {
  it('is read where the first run and the two speeds put it', () => {
    expect(shaftIn(before)?.own).toBe(true);
    // A perfectly steady run: nothing tells it from a tone of its own.
    const after = inference(2, 1.01 * SPEED, 0, [[SHAFT_HZ * 1.01 * 1.01, 0.1]]);
    expect(shaftIn(after)?.own ?? false).toBe(false);
    const change = compareRuns(sideOf(before), sideOf(after)).pairs[0]!.orders.find(
      ({ label }) => label === 'driveshaft 1×',
    )!;
    expect(change.after).toMatchObject({ seen: true, frequencyHz: expect.closeTo(SHAFT_HZ * 1.01 * 1.01, 1) });
    // Half the amplitude is −6.02 dB; one percent more speed took back some of it.
    expect(change.changeDb).toBeCloseTo(20 * Math.log10(0.5 / 1.01 ** 2), 0);
    expect(change.lowDb).not.toBeNull();
    const turned = compareRuns(sideOf(after), sideOf(before)).pairs[0]!.orders.find(
      ({ label }) => label === 'driveshaft 1×',
    )!;
    expect(turned.changeDb).toBeCloseTo(-change.changeDb, 1);
  });

  it('is not looked for far from there, nor in a tone that both runs have at one place', () => {
    const shown = { inference: before, level: shaftIn(before)! };
    const far = inference(3, SPEED, 0, [[SHAFT_HZ * 1.03, 0.1]]);
    expect(partnerLevel(shown, far, 1)).toBeNull();
    expect(partnerLevel(shown, inference(4, SPEED, 0, []), 1)).toBeNull();
    const hum = {
      ...before,
      matches: [...before.matches, ...inference(5, SPEED, 0, [[SHAFT_HZ * 1.015, 0.1]]).matches],
    };
    const humAgain = inference(6, SPEED, 0, [[SHAFT_HZ * 1.015, 0.1]]);
    expect(partnerLevel(shown, humAgain, 1)?.frequencyHz).toBeCloseTo(SHAFT_HZ * 1.015, 1);
    expect(partnerLevel({ ...shown, inference: hum }, humAgain, 1)).toBeNull();
  });

  it('is read there even where the diagnosis lists no tone, but not beside another part’s tone', () => {
    const shown = { inference: before, level: shaftIn(before)! };
    const listed = inference(7, SPEED, 0, [[SHAFT_HZ * 1.012, 0.1]]);
    const unlisted: RunInference = { ...listed, matches: [] };
    const found = partnerLevel(shown, unlisted, 1)!;
    expect(found.frequencyHz).toBeCloseTo(SHAFT_HZ * 1.012, 1);
    // All three axes together, 0.3, 0.8 and 0.5 of 0.1 m/s²; a step of the search loses at most a percent or two.
    expect(found.level.amplitudeMps2).toBeCloseTo(0.1 * Math.hypot(0.3, 0.8, 0.5), 2);
    const accessory = listed.origins.find(({ line }) => line.label === 'tire 1×')!;
    const matches = listed.matches.map((match) => ({
      ...match,
      lines: [{ origin: accessory, image: false, probability: 0.9 }],
    }));
    expect(partnerLevel(shown, { ...listed, matches }, 1)).toBeNull();
  });
});

describe('a proving run at another speed', () => {
  it('is asked for once more where it shows no change, and not where it met the speed or shows one', () => {
    // So little drift hardly tells how the level follows the speed.
    const run = (seed: number, faster: number, amplitude: number): RunInference =>
      inference(seed, faster * SPEED, 0.001, [[SHAFT_HZ * 1.01 * faster, amplitude]]);
    const noteOf = (faster: number, amplitude: number): string | undefined =>
      compareRuns(sideOf(run(1, 1, 0.1)), sideOf(run(8, faster, amplitude))).notes.find(
        ({ code }) => code === 'speed-missed',
      )?.text;
    // 100 km/h on a tire worn by a percent.
    expect(noteOf(1.03, 0.1)).toMatch(
      /^8\.csv was 3\.0 % faster than 1\.csv, .* Driven again at 62\.\d mph \(10[01]\.\d km\/h\)/,
    );
    expect(noteOf(1, 0.1)).toBeUndefined();
    expect(noteOf(1.03, 0.02)).toBeUndefined();
  });
});
