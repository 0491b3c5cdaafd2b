/** The judge of the accuracy suite, judged: its weighting, its noise, its rules. */
import { describe, expect, it } from 'vitest';
import type { FindingReport, Report } from '../../src/core/report/report.ts';
import { rotationFromAngles } from '../../src/core/simulate/sensor.ts';
import type { Scenario } from '../../src/core/simulate/scenario.ts';
import { overall, tenths } from '../accuracy/calibration.ts';
import type { AccuracyCase, Rule, TrueFault, TrueLine } from '../accuracy/case.ts';
import { NO_LEAN } from '../accuracy/case.ts';
import { detectability, noiseDensity } from '../accuracy/detectability.ts';
import { makeCase } from '../accuracy/families.ts';
import { feltOf, horizontalWeight, verticalWeight } from '../accuracy/felt-truth.ts';
import { scoreCase } from '../accuracy/score.ts';
import { linesOf, normalPeak } from '../accuracy/true-fault.ts';

describe('what a person feels', () => {
  it.each([
    [1, 482, 1011],
    [4, 967, 512],
    [8, 1036, 253],
    [16, 768, 125],
    [31.5, 405, 63.2],
    [80, 132, 21.1],
  ])('weighs %d Hz as Table 3 of ISO 2631-1:1997 does', (hz, vertical, horizontal) => {
    expect((1000 * verticalWeight(hz)) / vertical).toBeCloseTo(1, 2);
    expect((1000 * horizontalWeight(hz)) / horizontal).toBeCloseTo(1, 2);
  });

  it('is one at the threshold of perception, straight up at 8 Hz', () => {
    expect(feltOf(8, [0, 0, 0.015 / 1.03637])).toBeCloseTo(1, 4);
  });
});

describe('what can be seen', () => {
  const still: Scenario = {
    seed: 4,
    vehicle: { layout: 'rear-drive', axleRatio: 3.73 },
    rollingCircumferenceM: 2.2,
    drive: {
      durationS: 20,
      speed: { kind: 'steady', meanMps: 20, driftSd: 0, driftTimeS: 5 },
      load: 'cruise',
      gearRatio: 0.8,
    },
    roadM3: 0,
    faults: [],
    sensor: { rateHz: 200, mounting: rotationFromAngles(0, 0, 0), noiseDensity: 0.02, stepMps2: 0, jitterS: 0 },
  };

  it('measures the noise of the sensor as it was described', () => {
    // Wind and texture remain at a road of density 0; far below this sensor's noise.
    const [x, y, z] = noiseDensity(still)(60);
    for (const s of [x, y, z]) {
      expect(s / 0.02 ** 2).toBeGreaterThan(0.6);
      expect(s / 0.02 ** 2).toBeLessThan(1.5);
    }
  });

  it('is the matched filter’s ratio: amplitude 0.1 in density 1e-4 for 25 s gives 50', () => {
    expect(detectability([0.1, 0, 0], 30, 25, () => [1e-4, 1e-4, 1e-4])).toBeCloseTo(50, 9);
  });
});

const line = (part: TrueLine['part'], order: number): TrueLine => ({ part, order, hz: 30, levelMps2: 0.2, felt: 3 });
const fault = (lines: readonly TrueLine[], detect = 100, coinciding: readonly TrueLine[] = []): TrueFault => ({
  kind: 'invented',
  lines,
  named: lines,
  coinciding,
  detectability: detect,
});
const finding = (
  part: string,
  order: number | null,
  probability = 0.9,
  shares: readonly [string, number, number][] = [],
): FindingReport =>
  ({
    part,
    order,
    label: `${part} ${order}×`,
    probability,
    run: 'Run 1',
    frequencyHz: 30,
    frequencySdHz: 0.01,
    amplitudeMps2: 0.2,
    feltLevel: 3,
    sharesFrequencyWith: shares.map(([p, o, probability]) => ({ part: p, order: o, label: `${p} ${o}×`, probability })),
  }) as unknown as FindingReport;
const judge = (
  rule: Rule,
  faults: readonly TrueFault[],
  findings: readonly FindingReport[],
  verdict = 'found',
): boolean => {
  const speed = { kind: 'steady' };
  const one = { rule, faults, runs: [{ scenario: { drive: { speed } } }] } as unknown as AccuracyCase;
  return scoreCase(one, { verdict, findings, peaks: [] } as unknown as Report, []).right;
};

describe('the rules', () => {
  const shaft = fault([line('driveshaft', 2)]);

  it('want the fault named first', () => {
    expect(judge('first', [shaft], [finding('driveshaft', 2)])).toBe(true);
    expect(judge('first', [shaft], [finding('driveshaft', 1)])).toBe(false);
    expect(judge('first', [shaft], [finding('tire', 1), finding('driveshaft', 2)])).toBe(false);
    expect(judge('first', [shaft], [])).toBe(false);
  });

  it('take “cannot tell” for right only where the line could not be seen', () => {
    expect(judge('first', [fault([line('tire', 1)], 4)], [], 'cannot-tell')).toBe(true);
    expect(judge('first', [fault([line('tire', 1)], 4)], [], 'nothing-felt')).toBe(false);
    expect(judge('first', [fault([line('tire', 1)], 20)], [], 'cannot-tell')).toBe(false);
    expect(judge('first', [fault([line('tire', 1)], 4)], [finding('engine', 1)])).toBe(false);
  });

  it('let the true order stand among those sharing its frequency only where none could part them, or for images', () => {
    const shared = [finding('half-shaft', 3, 0.6, [['tire', 3, 0.4]])];
    expect(judge('first', [fault([line('tire', 3)])], shared)).toBe(false);
    expect(judge('first', [fault([line('tire', 3)], 100, [line('half-shaft', 3)])], shared)).toBe(true);
    expect(judge('shared', [fault([line('tire', 3)])], shared)).toBe(true);
  });

  it('want two faults before anything else', () => {
    const tire = fault([line('tire', 1), line('tire', 2)]);
    expect(judge('both', [shaft, tire], [finding('tire', 1), finding('driveshaft', 2)])).toBe(true);
    expect(judge('both', [shaft, tire], [finding('tire', 1), finding('tire', 2), finding('driveshaft', 2)])).toBe(true);
    expect(judge('both', [shaft, tire], [finding('tire', 1), finding('engine', 1), finding('driveshaft', 2)])).toBe(
      false,
    );
    expect(judge('both', [shaft, tire], [finding('tire', 1)])).toBe(false);
  });

  it('want twins named together and neither above 0.8', () => {
    const twin = fault([line('driveshaft', 1)], 100, [line('engine', 1)]);
    expect(judge('together', [twin], [finding('engine', 1, 0.55, [['driveshaft', 1, 0.45]])])).toBe(true);
    expect(judge('together', [twin], [finding('driveshaft', 1, 0.9, [['engine', 1, 0.1]])])).toBe(false);
    expect(judge('together', [twin], [finding('driveshaft', 1, 0.7)])).toBe(false);
  });

  it('want nothing found where nothing is wrong, and no turning part named for a tone of its own', () => {
    expect(judge('none', [], [], 'nothing-felt')).toBe(true);
    expect(judge('none', [], [finding('unknown', null, 0.4)], 'cannot-tell')).toBe(false);
    expect(judge('not-turning', [shaft], [finding('fixed', null, 0.6)])).toBe(true);
    expect(judge('not-turning', [shaft], [finding('tire', 2, 0.6)])).toBe(false);
  });
});

describe('calibration', () => {
  it('compares mean stated probability with the share of hits, in tenths that hold enough', () => {
    const said = [
      ...Array.from({ length: 20 }, (_, i) => ({ p: 0.85, hit: i < 17 })),
      ...Array.from({ length: 5 }, () => ({ p: 0.3, hit: true })),
    ];
    const bins = tenths(said);
    expect(bins).toHaveLength(1);
    expect(bins[0]).toMatchObject({ from: 0.8, count: 20 });
    expect(bins[0]!.shareHit).toBeCloseTo(0.85, 12);
    expect(overall(said)!.shareHit).toBeCloseTo(22 / 25, 12);
  });
});

describe('the cases', () => {
  it('are the same for the same family, number and seed', () => {
    expect(makeCase('single', 3, 9, NO_LEAN)).toEqual(makeCase('single', 3, 9, NO_LEAN));
    expect(makeCase('single', 3, 9, NO_LEAN)).not.toEqual(makeCase('single', 3, 10, NO_LEAN));
  });

  it('have faults a person feels or hears, and normal orders no person does', () => {
    for (const family of ['single', 'rough-weak', 'logged-ramp'] as const) {
      const { faults, runs } = makeCase(family, 1, 9, NO_LEAN);
      const { scenario } = runs[0]!;
      const strongest = linesOf(scenario, scenario.faults[0]!)[0]!;
      expect(strongest.felt >= 1.4 || (strongest.hz >= 80 && strongest.levelMps2 >= 0.18)).toBe(true);
      expect(faults[0]!.named[0]!.hz).toBeCloseTo(strongest.hz, 9);
      expect(normalPeak(scenario).felt).toBeLessThanOrEqual(0.7 + 1e-9);
    }
  });

  it('fold the fault of an alias case and show that of a plain one', () => {
    const rate = (family: 'alias' | 'shaft'): readonly [number, number] => {
      const one = makeCase(family, 2, 9, NO_LEAN);
      return [one.faults[0]!.named[0]!.hz, one.runs[0]!.scenario.sensor.rateHz];
    };
    const [foldedHz, slow] = rate('alias');
    expect(foldedHz).toBeGreaterThan(slow / 2);
    const [seenHz, fast] = rate('shaft');
    expect(seenHz).toBeLessThan(0.4 * fast);
  });
});
