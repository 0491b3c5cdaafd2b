/** Where a correction can go: two clamps, two holes, or weights at hand. */
import type { BestPlacing, Placed } from '../../core/driveline/balance/balance-split.ts';
import { placeAvailable, splitBetweenClamps, splitBetweenHoles } from '../../core/driveline/balance/balance-split.ts';
import type { WeightUnit } from '../../core/driveline/measurement.ts';
import type { Result } from '../../core/note.ts';
import { failure, success } from '../../core/note.ts';
import { angleText, weightText } from '../../core/report/bench-text.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { ANGLE_DEG, RATIO } from '../../core/quantity/quantity-kinds.ts';
import type { Arguments } from '../arguments.ts';
import { UsageError } from '../io.ts';
import { weightOf } from './balance-input.ts';
import { listOf } from './number-lists.ts';

export interface Placing {
  readonly way: 'clamps' | 'holes' | 'sites';
  readonly placed: readonly Placed[];
  /** What stays uncorrected; 0 for an exact split. */
  readonly left: number;
}

/** Every way of placing that was asked for; the first problem ends it. */
export function placingsOf(given: Arguments, target: Placed, unit: WeightUnit): Result<readonly Placing[]> {
  const placings: Placing[] = [];
  const clamp = given.text('clamp');
  if (clamp !== undefined) {
    const weight = weightOf('clamp', clamp);
    if (weight.unit !== unit) throw new UsageError(`--clamp: give it in the unit of the trial weight (${unit}).`);
    const split = splitBetweenClamps(target, weight.amount);
    if (!split.ok) return failure(split.problem);
    placings.push({ way: 'clamps', placed: split.value.clamps, left: 0 });
  }
  const holes = given.text('holes');
  if (holes !== undefined) {
    const [one, two, more] = listOf('holes', holes, ANGLE_DEG, '°');
    if (one === undefined || two === undefined || more !== undefined)
      throw new UsageError('--holes needs two angles, as in --holes 72/144.');
    const split = splitBetweenHoles(target, one, two);
    if (!split.ok) return failure(split.problem);
    placings.push({ way: 'holes', placed: split.value, left: 0 });
  }
  const sites = given.text('sites');
  const weights = given.text('weights');
  if ((sites === undefined) !== (weights === undefined)) throw new UsageError('--sites and --weights go together.');
  if (sites !== undefined && weights !== undefined) {
    const kinds = listOf('weights', weights, { ...RATIO, name: 'weight', range: [0, 1e6] }, '');
    const best = placeAvailable(target, listOf('sites', sites, ANGLE_DEG, '°'), kinds);
    if (!best.ok) return failure(best.problem);
    placings.push(siteWay(best.value));
  }
  return success(placings);
}

const siteWay = ({ placed, left }: BestPlacing): Placing => ({ way: 'sites', placed, left });

const WAYS = { clamps: 'Two clamps, by their screws', holes: 'Two holes', sites: 'Weights at hand' } as const;

export function placingText({ way, placed, left }: Placing, unit: WeightUnit, units: UnitSystem): string {
  if (placed.length === 0) return `${WAYS[way]}: leaving things as they are is best.`;
  const list = placed.map(({ weight, angleDeg }) => `${weightText(weight, unit, units)} at ${angleText(angleDeg)}`);
  const rest = left > 0 ? `, which leaves ${weightText(left, unit, units)}` : '';
  return `${WAYS[way]}: ${list.join(' and ')}${rest}.`;
}
