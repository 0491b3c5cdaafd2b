import { describe, expect, test } from 'vitest';
import type { CaseContext } from '../../../../src/core/diagnosis/evidence/case.ts';
import { doubtsOf } from '../../../../src/core/diagnosis/ranking/doubts.ts';
import { entropyBits, expectedBits } from '../../../../src/core/diagnosis/ranking/entropy.ts';
import { chooseChecks } from '../../../../src/core/diagnosis/ranking/next-check.ts';
import { rankCauses } from '../../../../src/core/diagnosis/ranking/rank-causes.ts';
import { checkWeights, wrongProbability } from '../../../../src/core/diagnosis/checks/all-checks.ts';
import type { ProposedCheck, RankedCause, RankedFinding } from '../../../../src/core/diagnosis/ranking/ranked.ts';
import type { CheckId } from '../../../../src/core/diagnosis/weights.ts';
import { caseOf, finding, found, ranked } from '../causes/case-fixtures.ts';

describe('Entropy by hand', () => {
  test('One of two equals is one bit, one of four is two, a certainty none', () => {
    expect(entropyBits([0.5, 0.5])).toBe(1);
    expect(entropyBits([0.25, 0.25, 0.25, 0.25])).toBe(2);
    expect(entropyBits([1, 0])).toBe(0);
  });

  test('A perfect check of two equals removes the whole bit, a coin toss nothing', () => {
    expect(expectedBits([0.5, 0.5], [1, 0])).toBe(1);
    expect(expectedBits([0.5, 0.5], [0.3, 0.3])).toBeCloseTo(0, 12);
  });

  // Binary symmetric channel, capacity 1 − H(0.1) = 1 − 0.468996 = 0.531004 (Cover and Thomas, Elements of Information
  // Theory, section 7.1.4, worked here with H(0.1) = 0.1·log2 10 + 0.9·log2(10/9)).
  test('A check right nine times in ten removes 0.531 bits of one', () => {
    expect(expectedBits([0.5, 0.5], [0.9, 0.1])).toBeCloseTo(0.531004, 6);
  });

  // By hand: P(wrong) = 0.5·0.8 + 0.3·0.2 + 0.2·0.1 = 0.48; after wrong 0.40/0.48, 0.06/0.48, 0.02/0.48 (0.785 bits);
  // after fine 0.10/0.52, 0.24/0.52, 0.18/0.52 (1.502 bits); before 1.485 bits. Difference 0.3275.
  test('Three possibilities worked by hand', () => {
    const h = (...p: number[]) => p.reduce((sum, x) => sum - x * Math.log2(x), 0);
    const after = 0.48 * h(40 / 48, 6 / 48, 2 / 48) + 0.52 * h(10 / 52, 24 / 52, 18 / 52);
    expect(expectedBits([0.5, 0.3, 0.2], [0.8, 0.2, 0.1])).toBeCloseTo(h(0.5, 0.3, 0.2) - after, 12);
    expect(expectedBits([0.5, 0.3, 0.2], [0.8, 0.2, 0.1])).toBeCloseTo(0.327, 2);
  });
});

const rankedFinding = (basis: ReturnType<typeof finding>, context: CaseContext, more: Partial<RankedFinding> = {}) =>
  ranked(basis, rankCauses(basis, context), more);

const accessMinutes = ({ id }: ProposedCheck): number =>
  ({ 'shaft-out': 10, 'joint-open': 25, none: 0 })[checkWeights(id as CheckId).access ?? 'none'];

const engineOnce = { part: 'engine', order: 1, label: 'engine 1×' } as const;

describe('The next check', () => {
  test('Checks stand by expected bits a minute, and each is the exact enumeration of its outcomes', () => {
    const one = rankedFinding(finding('driveshaft', 1), caseOf());
    const checks = chooseChecks([one], caseOf());
    // With the shaft out (10 minutes) or a joint apart (25) once, what needs that too costs so much less.
    checks.forEach((check, index) => {
      const reached = Math.max(0, ...checks.slice(0, index).map(accessMinutes));
      const gain = (one: ProposedCheck): number =>
        one.expectedBits / (one.minutes - Math.min(reached, accessMinutes(one)));
      for (const later of checks.slice(index + 1)) expect(gain(later)).toBeLessThanOrEqual(gain(check) + 1e-15);
    });
    const [doubt] = doubtsOf([one]);
    for (const { id, expectedBits: bits } of checks) {
      const wrong = doubt!.possibilities.map(({ causeId, part }) =>
        trusted(wrongProbability(id as CheckId, causeId, part)),
      );
      expect(bits).toBeCloseTo(
        expectedBits(
          doubt!.possibilities.map(({ probability }) => probability),
          wrong,
        ),
        12,
      );
    }
  });

  test('What a check is expected to do is what its outcome then does', () => {
    // Expectation and update are one mechanism: averaging the updates over the outcomes gives the prior back.
    const basis = finding('driveshaft', 1);
    const before = rankCauses(basis, caseOf());
    const after = (outcome: 'fine' | 'wrong') =>
      rankCauses(basis, caseOf({ measurements: [found('tube-runout', outcome)] }));
    const chance = before.reduce(
      (sum, { id, probability }) => sum + probability * trusted(wrongProbability('tube-runout', id, 'driveshaft')),
      0,
    );
    for (const { id, probability } of before) {
      const p = (causes: readonly RankedCause[]) => causes.find((cause) => cause.id === id)!.probability;
      expect(chance * p(after('wrong')) + (1 - chance) * p(after('fine'))).toBeCloseTo(probability, 10);
    }
  });

  test('Where driveshaft and engine share a frequency, a run that parts them comes first', () => {
    const shared = rankedFinding(finding('driveshaft', 1, { probability: 0.52 }), caseOf(), {
      sharesFrequencyWith: [{ ...engineOnce, probability: 0.45 }],
    });
    const [first] = chooseChecks([shared], caseOf());
    expect(first!.id).toBe('run-other-gear');
    expect(first!.tellsApart).toContain('engine 1×');
    expect(first!.expectedBits).toBeGreaterThan(0.5);
    const sure = rankedFinding(finding('driveshaft', 1, { probability: 0.97 }), caseOf());
    expect(chooseChecks([sure], caseOf())[0]!.kind).not.toBe('run');
  });

  test('The weak cylinder is found before anything is swapped on it', () => {
    const misfire = finding('engine', 0.5, { frequencyHz: 14 });
    const place = (checks: readonly ProposedCheck[], id: string): number =>
      checks.findIndex((check) => check.id === id);
    const first = chooseChecks([rankedFinding(misfire, caseOf())], caseOf());
    expect(place(first, 'ignition-swap')).toBeGreaterThan(place(first, 'cylinder-contribution'));
    expect(place(first, 'cylinder-contribution')).toBeGreaterThanOrEqual(0);
    const known = caseOf({ measurements: [found('cylinder-contribution', 'wrong')] });
    const next = chooseChecks([rankedFinding(misfire, known)], known);
    expect(place(next, 'cylinder-contribution')).toBe(-1);
    expect(place(next, 'ignition-swap')).toBe(0);
  });

  test('Two findings at one place are one doubt, not two', () => {
    const shaft = rankedFinding(finding('driveshaft', 1, { probability: 0.5 }), caseOf(), {
      sharesFrequencyWith: [{ ...engineOnce, probability: 0.45 }],
    });
    const engine = rankedFinding(finding('engine', 1, { probability: 0.45 }), caseOf(), {
      sharesFrequencyWith: [{ part: 'driveshaft', order: 1, label: 'driveshaft 1×', probability: 0.5 }],
    });
    const doubts = doubtsOf([shaft, engine]);
    expect(doubts).toHaveLength(1);
    const { possibilities } = doubts[0]!;
    expect(possibilities.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 12);
    expect(possibilities.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['shaft-unbalance', 'flexplate-or-converter']),
    );
    expect(possibilities.map(({ name }) => name)).not.toContain('engine 1×');
  });

  test('The finding that shakes most leads', () => {
    const strong = rankedFinding(finding('tire', 1, { feltLevel: 9 }), caseOf());
    const weak = rankedFinding(finding('engine', 0.5, { feltLevel: 1, frequencyHz: 18 }), caseOf());
    const [first] = chooseChecks([weak, strong], caseOf());
    expect(first!.tellsApart.some((name) => strong.causes.some(({ id }) => id === name))).toBe(true);
  });

  test('The order of the findings does not matter', () => {
    const a = rankedFinding(finding('tire', 1, { feltLevel: 3 }), caseOf());
    const b = rankedFinding(finding('driveshaft', 2, { feltLevel: 2, frequencyHz: 61 }), caseOf());
    const strip = (checks: readonly ProposedCheck[]) =>
      checks.map(({ id, expectedBits: bits }) => [id, bits.toFixed(9)]);
    expect(strip(chooseChecks([a, b], caseOf()))).toEqual(strip(chooseChecks([b, a], caseOf())));
  });

  test('What was measured or driven already is not proposed again', () => {
    const measured = caseOf({ measurements: [found('tube-runout', 'fine'), found('no-such-check', 'wrong')] });
    const ids = (context: CaseContext) =>
      chooseChecks([rankedFinding(finding('driveshaft', 1), context)], context).map(({ id }) => id);
    expect(ids(caseOf())).toContain('tube-runout');
    expect(ids(measured)).not.toContain('tube-runout');
    const cruise = { name: 'cruise', load: 'cruise', usedSpeedMps: 28, gearRatio: 1 } as const;
    const shared = rankedFinding(finding('driveshaft', 1, { probability: 0.5 }), caseOf(), {
      sharesFrequencyWith: [{ ...engineOnce, probability: 0.45 }],
    });
    const proposed = (...runs: CaseContext['runs'][number][]) =>
      chooseChecks([shared], caseOf({ runs })).map(({ id }) => id);
    expect(proposed(cruise)).toContain('run-other-gear');
    expect(proposed(cruise, { ...cruise, name: 'third', gearRatio: 1.4 })).not.toContain('run-other-gear');
    expect(proposed(cruise, { ...cruise, name: 'same again' })).toContain('run-other-gear');
    expect(proposed(cruise, { ...cruise, name: 'coasting', load: 'neutral' })).not.toContain('run-neutral');
  });

  test('After an answer the choice is made anew', () => {
    const basis = finding('driveshaft', 2);
    const before = caseOf();
    const first = chooseChecks([rankedFinding(basis, before)], before)[0]!;
    const after = caseOf({ measurements: [found(first.id, 'fine')] });
    const next = chooseChecks([rankedFinding(basis, after)], after);
    expect(next.map(({ id }) => id)).not.toContain(first.id);
    expect(next.length).toBeGreaterThan(3);
  });

  test('An unnamed tone calls for another run first', () => {
    const [first] = chooseChecks([rankedFinding(finding('unknown', null), caseOf())], caseOf());
    expect(first!.kind).toBe('run');
  });

  test('A lesser unnamed tone does not push the checks of the named finding aside', () => {
    const main = rankedFinding(finding('driveshaft', 1, { feltLevel: 2.7 }), caseOf());
    const lesser = rankedFinding(
      finding('unknown', null, { feltLevel: 2.4, probability: 0.5, frequencyHz: 12 }),
      caseOf(),
    );
    const [first] = chooseChecks([main, lesser], caseOf());
    expect(first!.id).toBe(chooseChecks([main], caseOf())[0]!.id);
  });

  // Loose fasteners drop a shaft and a separated belt bursts: they are looked at before anything is measured. After a
  // lift the angles are measured, not the height that is known to be changed (common practice, no source).
  test('What could kill, and what the work done calls for, goes before all others', () => {
    const first = (basis: ReturnType<typeof finding>, ...work: CaseContext['work'][number][]) =>
      chooseChecks([rankedFinding(basis, caseOf({ work }))], caseOf({ work }))[0]!.id;
    expect(first(finding('driveshaft', 1), 'joint-replaced-front', 'shaft-removed')).toBe('joint-fasteners');
    expect(first(finding('driveshaft', 2), 'joint-replaced-rear')).toBe('joint-fasteners');
    expect(first(finding('tire', 1))).toBe('tire-inspection');
    expect(first(finding('driveshaft', 2), 'ride-height-changed')).toBe('working-angles');
    expect(first(finding('driveshaft', 1))).not.toBe('joint-fasteners');
  });

  test('After a lift the ride height is not asked for: that it was changed is known', () => {
    const lifted = caseOf({ work: ['ride-height-changed'] });
    const checks = chooseChecks([rankedFinding(finding('driveshaft', 2), lifted)], lifted);
    expect(checks.map(({ id }) => id)).not.toContain('ride-height');
  });

  // After a joint was replaced: look, then dials on the vehicle, then the shaft out, then the joint opened (common
  // practice, no source): opening the joint takes away what is to be seen.
  test('After a joint was replaced the rings come last: they need the joint apart', () => {
    const context = caseOf({ work: ['joint-replaced-front', 'shaft-removed'] });
    const ids = chooseChecks([rankedFinding(finding('driveshaft', 1), context)], context).map(({ id }) => id);
    expect(ids.slice(0, 2)).toEqual(['joint-fasteners', 'shaft-inspection']);
    const rings = ids.indexOf('ring-thickness');
    for (const before of ['tube-runout', 'joint-end-play', 'joint-free-movement'])
      expect(ids.indexOf(before), before).toBeLessThan(rings === -1 ? Infinity : rings);
  });

  // The motor of an electric vehicle is geared to the wheels: no gear to change, no idle, nothing to hold standing.
  test('No check is proposed that the vehicle cannot make', () => {
    const electric = caseOf({ vehicle: { layout: 'electric' } });
    const shared = rankedFinding(finding('tire', 1, { probability: 0.5 }), electric, {
      sharesFrequencyWith: [{ part: 'engine', order: 1, label: 'motor 1×', probability: 0.45 }],
    });
    const ids = chooseChecks([shared], electric).map(({ id }) => id);
    for (const id of [
      'run-other-gear',
      'run-neutral',
      'run-standing',
      'lower-gear',
      'lockup-off',
      'run-front-shaft-rests',
    ])
      expect(ids).not.toContain(id);
    const told = shared.causes.flatMap(({ checks, missing }) => [...checks, ...missing]).join(' ');
    expect(told).not.toMatch(
      /another gear|in neutral|run-other-gear|run-neutral|run-standing|front driveshaft at rest/,
    );
    const manual = caseOf({ vehicle: { layout: 'rear-drive', cylinders: 4, converter: false } });
    const firing = rankedFinding(finding('engine', 2, { role: 'firing' }), manual);
    expect(chooseChecks([firing], manual).map(({ id }) => id)).not.toContain('lockup-off');
  });

  test('No finding, no check', () => {
    expect(chooseChecks([], caseOf())).toEqual([]);
  });

  test('Proposals carry minutes, steps, limit and cautions', () => {
    const checks = chooseChecks([rankedFinding(finding('driveshaft', 2), caseOf())], caseOf());
    for (const check of checks) {
      expect(check.minutes).toBe(checkWeights(check.id as CheckId).minutes);
      expect(check.how.length).toBeGreaterThan(0);
      expect(check.outcomes.fine).not.toBe(check.outcomes.wrong);
      expect(check.cautions.every((text) => text.endsWith('.'))).toBe(true);
    }
    expect(checks.find(({ id }) => id === 'working-angles')!.cautions.join(' ')).toContain('ride height');
  });
});

/** An outcome is believed to 95 in 100. */
const trusted = (p: number): number => 0.95 * p + 0.05 * (1 - p);
