/** What the results of balancing share: where a correction can go, what the standard allows, places in pictures. */
import {
  forceOfUnbalanceN,
  gradeOfUnbalance,
  permissibleUnbalanceGmm,
  trialUnbalanceGmm,
} from '../../../core/driveline/balance/balance-grade.ts';
import type { Placed } from '../../../core/driveline/balance/balance-split.ts';
import {
  placeAvailable,
  splitBetweenClamps,
  splitBetweenHoles,
} from '../../../core/driveline/balance/balance-split.ts';
import { polar, scale } from '../../../core/complex.ts';
import type { AmplitudeBalanceInput } from '../../../core/driveline/balance/amplitude-trials.ts';
import type { AmplitudeBalance } from '../../../core/driveline/balance/balance-amplitude.ts';
import type { WeightUnit } from '../../../core/driveline/measurement.ts';
import type { UncertainVector } from '../../../core/driveline/balance/propagate.ts';
import { angleText, forceText, weightText } from '../../../core/report/bench-text.ts';
import type { UnitSystem } from '../../../core/report/format.ts';
import { rpmText, significant } from '../../../core/report/format.ts';
import type { Pixel } from '../../plot/round-picture.ts';
import { boxAround, pixelOf, pixels } from '../../plot/round-picture.ts';
import { benchResults } from '../../texts/bench-results.ts';
import type { TermId } from '../../texts/glossary.ts';
import type { Entry } from '../measure-form.ts';
import type { BenchSetting } from './joint.ts';

const words = benchResults.balance;

/** '667 g·mm at 253° (give or take 12 g·mm and 2°)'. */
export function correctionText(vector: UncertainVector, unit: WeightUnit, units: UnitSystem): string {
  const { size, angleDeg, sizeSd, angleSdDeg } = vector;
  const text = words.add(weightText(size, unit, units), degreesText(angleDeg));
  if (sizeSd === null || angleSdDeg === null) return text;
  return text + words.sd(weightText(sizeSd, unit, units, 2), `${significant(angleSdDeg, 2)}°`);
}

export const degreesText = (degrees: number): string => `${Math.round(degrees) % 360}°`;

export interface Placing {
  readonly way: 'clamps' | 'holes' | 'sites';
  readonly placed: readonly Placed[];
  /** What stays uncorrected; 0 for an exact split. */
  readonly left: number;
  /** Why it cannot be done; then nothing is placed. */
  readonly problem?: string;
}

/** Every way of placing a correction that was asked for. */
export function placingsOf(target: Placed, entry: Entry): readonly Placing[] {
  const placings: Placing[] = [];
  const refused = (way: Placing['way'], problem: string): void => {
    placings.push({ way, placed: [], left: 0, problem });
  };
  const clamp = entry.number('clamp');
  if (clamp !== undefined) {
    const split = splitBetweenClamps(target, clamp);
    if (split.ok) placings.push({ way: 'clamps', placed: split.value.clamps, left: 0 });
    else refused('clamps', `${rounded(split.problem.message)} ${split.problem.remedy}`);
  }
  const holes = entry.list('holes')?.map(({ value }) => value);
  if (holes !== undefined) {
    const [one, two, more] = holes;
    const split =
      one === undefined || two === undefined || more !== undefined ? null : splitBetweenHoles(target, one, two);
    if (split?.ok) placings.push({ way: 'holes', placed: split.value, left: 0 });
    else refused('holes', split ? `${rounded(split.problem.message)} ${split.problem.remedy}` : words.twoHoles);
  }
  const sites = entry.list('sites')?.map(({ value }) => value);
  const weights = entry.list('weights')?.map(({ value }) => value);
  if (sites && weights) {
    const best = placeAvailable(target, sites, weights);
    if (best.ok) placings.push({ way: 'sites', placed: best.value.placed, left: best.value.left });
    else refused('sites', `${best.problem.message} ${best.problem.remedy}`);
  } else if (sites ?? weights) refused('sites', words.sitesTogether);
  return placings;
}

/** Figures of a computed target come with all their digits. */
const rounded = (message: string): string =>
  message.replaceAll(/\d+\.\d{3,}/gu, (figure) => significant(Number(figure), 3));

export function placingText({ placed, left, problem }: Placing, unit: WeightUnit, units: UnitSystem): string {
  if (problem !== undefined) return problem;
  if (placed.length === 0) return words.nothingBest;
  const list = placed.map(({ weight, angleDeg }) => `${weightText(weight, unit, units)} at ${angleText(angleDeg)}`);
  return list.join(' and ') + (left > 0 ? words.leaves(weightText(left, unit, units)) : '');
}

/** Allowance of the standard, and the unbalances found beside it (g·mm). */
export function allowanceFigures(
  { massKg, rpm, gradeMmps }: BenchSetting,
  foundGmm: readonly number[],
  triedGmm: readonly number[],
  units: UnitSystem,
): (readonly [string, string, TermId?])[] {
  const allowed = permissibleUnbalanceGmm(gradeMmps, massKg, rpm);
  const gmm = (value: number): string => weightText(value, 'g·mm', units);
  const name = (text: string, plane: number): string =>
    foundGmm.length > 1 ? `${text}, ${words.plane(plane + 1).toLowerCase()}` : text;
  return [
    [words.allowed, gmm(allowed), 'allowance'],
    [words.allowedPlane, gmm(allowed / 2)],
    ...foundGmm.flatMap((found, plane): (readonly [string, string])[] => [
      [name(words.force, plane), forceText(forceOfUnbalanceN(found, rpm), units)],
      [name(words.grade, plane), `G\u00a0${significant(gradeOfUnbalance(found, massKg, rpm), 2)}`],
    ]),
    ...[...new Set(triedGmm)].map(
      (tried) => [words.trialForce(gmm(tried)), forceText(forceOfUnbalanceN(tried, rpm), units)] as const,
    ),
    [words.trialHint, gmm(trialUnbalanceGmm(massKg, rpm))],
  ];
}

export const allowanceSource = ({ gradeMmps, rpm }: BenchSetting): string =>
  words.allowanceSource(gradeMmps, rpmText(rpm));

export interface CirclePicture {
  readonly circles: readonly { readonly at: Pixel; readonly radius: number; readonly angleDeg: number }[];
  /** Where the circles come nearest to meeting: the trial's effect, in the direction in which the correction goes. */
  readonly meeting: Pixel;
  readonly baselineRadius: number;
  readonly box: readonly [left: number, top: number, width: number, height: number];
}

/** Circles around the trial positions, on the circle of the level as found, as large as the level read with each. */
export function circlePicture(
  { baseline, positions }: AmplitudeBalanceInput,
  balance: AmplitudeBalance,
): CirclePicture {
  const full = baseline.amplitude;
  const circles = positions.map(({ angleDeg, amplitude }) => ({
    at: pixelOf(polar(full, angleDeg), full),
    radius: pixels(amplitude, full),
    angleDeg,
  }));
  const meeting = pixelOf(scale(polar(balance.trialEffect, balance.trialAngleDeg), -1), full);
  return { circles, meeting, baselineRadius: pixels(full, full), box: boxAround(circles) };
}
