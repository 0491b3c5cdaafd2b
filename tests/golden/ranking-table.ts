/**
 * What the ranking of causes and the choice of checks give on average over random cases, place by place. The weights
 * behind them are judgment, so no outside source can tell that a figure is right; the table tells when one has changed.
 */
import type { CaseContext, Companion, FindingBasis } from '../../src/core/diagnosis/evidence/case.ts';
import { ALL_CHECKS } from '../../src/core/diagnosis/checks/all-checks.ts';
import { chooseChecks } from '../../src/core/diagnosis/ranking/next-check.ts';
import { rankCauses } from '../../src/core/diagnosis/ranking/rank-causes.ts';
import { WORK_DONE } from '../../src/core/job/work-done.ts';
import { randomSource, type RandomSource } from '../../src/core/simulate/random.ts';
import type { Load, ShaftPiece } from '../../src/core/vehicle/vehicle.ts';
import { caseOf, companion, everyPlace, found, ranked } from '../core/diagnosis/causes/case-fixtures.ts';

/** By place, then by cause: mean probability; by check: mean bits it would remove. */
export type RankingTable = Readonly<
  Record<string, { readonly causes: Record<string, number>; readonly checks: Record<string, number> }>
>;

const CASES = 60;
const LOADS: readonly Load[] = ['cruise', 'pull', 'coast', 'neutral', 'brake', 'standing'];

/** Near its critical speed at road speeds, near half of it, far from it, in two pieces, and with a double-Cardan joint. */
const SHAFTS: readonly (readonly ShaftPiece[])[] = [
  [],
  [{ lengthMm: 2100, tubeOuterMm: 63.5, wallMm: 1.65 }],
  [{ lengthMm: 1700, tubeOuterMm: 63.5, wallMm: 1.65 }],
  [{ lengthMm: 900, tubeOuterMm: 90, wallMm: 1.65, frontJoint: 'double-cardan' }],
  [
    { lengthMm: 800, tubeOuterMm: 76.2, wallMm: 1.65 },
    { lengthMm: 900, tubeOuterMm: 76.2, wallMm: 1.65 },
  ],
];

const some = <T>(random: RandomSource, items: readonly T[], chance: number): T[] =>
  items.filter(() => random.chance(chance));

const drawBasis = (random: RandomSource, basis: FindingBasis): FindingBasis => {
  const companions: Companion[] = some(random, [0.5, 1, 1.5, 2, 3, 4], 0.4)
    .filter((order) => order !== basis.order)
    .map((order) => companion(basis.part, order, random.logBetween(0.003, 0.3), random.chance(0.7)));
  const levels = some(random, LOADS, 0.3).map((load) => [load, random.logBetween(0.01, 0.5)] as const);
  return {
    ...basis,
    frequencyHz: random.logBetween(8, 130),
    feltLevel: random.logBetween(1, 8),
    perceived: random.chance(0.3) ? 'heard' : 'felt',
    verticalShare: random.chance(0.3) ? null : random.between(0, 1),
    companions,
    speedExponent: random.chance(0.4) ? null : { value: random.between(-2, 5), sd: random.between(0.1, 1) },
    levelByLoadMps2: Object.fromEntries(levels),
    beats: random.chance(0.3),
  };
};

const drawContext = (random: RandomSource, { vehicle }: CaseContext): CaseContext => {
  const checks = some(random, ALL_CHECKS, 0.04).map(({ id }) => found(id, random.chance(0.5) ? 'wrong' : 'fine'));
  const speedMps = random.between(6, 35);
  return caseOf({
    vehicle: {
      ...vehicle,
      ...(vehicle.converter === undefined && random.chance(0.5) && { converter: random.chance(0.7) }),
      driveshaftPieces: random.pick(SHAFTS),
    },
    work: some(random, WORK_DONE, 0.1),
    measurements: checks,
    runs: [{ name: 'cruise', load: random.pick(LOADS), speedMps, usedSpeedMps: speedMps }],
  });
};

const added = (sums: Record<string, number>, key: string, value: number): void => {
  sums[key] = (sums[key] ?? 0) + value / CASES;
};

export const rankingTable = (): RankingTable =>
  Object.fromEntries(
    everyPlace.map(({ basis, context }, place) => {
      const causes: Record<string, number> = {};
      const checks: Record<string, number> = {};
      for (let seed = 1; seed <= CASES; seed += 1) {
        const random = randomSource(1000 * place + seed, 'ranking table');
        const drawn = drawBasis(random, basis);
        const given = drawContext(random, context);
        const all = rankCauses(drawn, given);
        for (const { id, probability } of all) added(causes, id, probability);
        for (const { id, expectedBits } of chooseChecks([ranked(drawn, all)], given)) added(checks, id, expectedBits);
      }
      const role = basis.role ? ` ${basis.role}` : '';
      return [`${basis.label}${role}, ${context.vehicle.layout}`, { causes, checks }];
    }),
  );
