/** The least change of one thing, or of two together, that makes the joints cancel within the limits. */
import type { Result } from '../../note.ts';
import { success } from '../../note.ts';
import type { AngleChange, AngleGeometry, CompleteGeometry } from './angle-change.ts';
import { applyChange, completeGeometry } from './angle-change.ts';
import type { Adjustment, Attempt, TryChanges, WhatIf } from './least-change.ts';
import { outOfLineDeg } from './forks.ts';
import { leastChange, leastPair } from './least-change.ts';
import type { LimitId } from '../limits/limit.ts';
import { judge, limitOf } from '../limits/limit.ts';
import type { WorkingAngles, WorkingAnglesInput } from './working-angles.ts';
import { workingAngles } from './working-angles.ts';

export interface WhatIfAnswer {
  readonly limitRadPerS2: number;
  /** True where the joints cancel within the limits: what may be outside still are angles too large, which no one change cures. */
  readonly alreadyInside: boolean;
  /**
   * For each single thing: least change that does it, or the best it can do. Easiest first. Where forks are to be put
   * back in line, that alone; none where it takes another change besides.
   */
  readonly single: readonly WhatIf[];
  /**
   * Forks put back in line and the least other change, where they stand out of line and that alone does not do; else
   * two changes in whole steps, where no single one does. Null where not needed or of no use.
   */
  readonly together: WhatIf | null;
  /** Distances assumed for want of measured ones. */
  readonly assumed: readonly string[];
}

/** A change that leaves more than this share of the residual is of no use by itself. */
const WORTH_TELLING = 0.98;

/**
 * What would bring the residual under its limit, and the difference of the angles and the twist of the forks too.
 * A change counts only if it makes nothing else worse: no inertia figure that was inside goes out (or, where it was
 * out, further out), and no joint ends up under the least angle that was not there before.
 * @param input with a driveshaft speed; without one nothing can be said and the lists are empty
 * @param options.splineTeeth teeth of the slip spline, the step in which forks can be re-phased
 */
export const angleWhatIf = (
  input: WorkingAnglesInput,
  geometry: AngleGeometry,
  options: { readonly splineTeeth?: number | undefined } = {},
): Result<WhatIfAnswer> => {
  const now = workingAngles(input);
  if (!now.ok) return now;
  const before = now.value;
  const complete = completeGeometry(geometry, input);
  const limitRadPerS2 = limitOf('residual-acceleration', input.limits).value;
  const alreadyInside = before.residual.accelerationRadPerS2 !== null && cancels(before);
  const answer = { limitRadPerS2, alreadyInside, assumed: complete.assumed };
  if (before.residual.accelerationRadPerS2 === null || alreadyInside) {
    return success({ ...answer, single: [], together: null });
  }
  const adjustments = adjustmentsOf(input, options.splineTeeth);
  const attempt = (changes: readonly AngleChange[]) => tryChanges(input, complete, before, changes);
  const straighten = forkChanges(input, before, options.splineTeeth);
  if (straighten.length > 0) return success({ ...answer, ...forksFirst(straighten, adjustments, attempt) });
  const residualNow = before.residual.accelerationRadPerS2;
  const single = adjustments
    .map((adjustment) => leastChange(adjustment, attempt))
    .filter((one) => one.steps > 0 && (one.reachesLimit || one.residualRadPerS2 < WORTH_TELLING * residualNow))
    .sort((a, b) => Number(b.reachesLimit) - Number(a.reachesLimit) || a.steps - b.steps);
  const reached = single.some((one) => one.reachesLimit);
  return success({ ...answer, single, together: reached ? null : leastPair(adjustments, attempt) });
};

/** Forks outside their limit, each turned back by its twist: in whole teeth where what that leaves is inside. */
const forkChanges = (input: WorkingAnglesInput, { judged }: WorkingAngles, splineTeeth?: number): AngleChange[] => {
  const limit = limitOf('fork-twist', input.limits);
  if (judged.every(({ limit: { id }, inside }) => inside || id !== limit.id)) return [];
  return (input.phasingDeg ?? []).flatMap((twistDeg, piece): AngleChange[] => {
    const twist = outOfLineDeg(twistDeg);
    if (judge(Math.abs(twist), limit).inside) return [];
    const toothDeg = 360 / (splineTeeth ?? 360);
    const teeth = Math.round(Math.abs(twist) / toothDeg);
    const whole = Math.sign(twist) * teeth * toothDeg;
    const fits = splineTeeth !== undefined && teeth > 0 && judge(Math.abs(twist - whole), limit).inside;
    return [{ kind: 'phasing', amount: fits ? -whole : -twist, piece, ...(fits && { teeth }) }];
  });
};

/** An assembly fault is put right first: another change would only hide it, and is named only where it is needed too. */
const forksFirst = (
  straighten: readonly AngleChange[],
  adjustments: readonly Adjustment[],
  attempt: TryChanges,
): Pick<WhatIfAnswer, 'single' | 'together'> => {
  const forks: WhatIf = {
    changes: straighten,
    units: straighten.map(() => '°'),
    steps: straighten.reduce((sum, { amount, teeth }) => sum + (teeth ?? Math.abs(amount)), 0),
    practicalAmount: null,
    ...attempt(straighten),
  };
  if (forks.reachesLimit) return { single: [forks], together: null };
  const others = adjustments.filter(({ kind }) => kind !== 'phasing');
  const besides: TryChanges = (changes) => attempt([...straighten, ...changes]);
  const [least] = others
    .map((adjustment) => leastChange(adjustment, besides))
    .filter((one) => one.reachesLimit)
    .sort((a, b) => a.steps - b.steps);
  const more = least ?? leastPair(others, besides);
  if (more === null) return { single: [forks], together: null };
  const changes = [...straighten, ...more.changes];
  const [units, steps] = [[...forks.units, ...more.units], forks.steps + more.steps];
  return { single: [], together: { ...more, changes, units, steps, practicalAmount: null } };
};

/** What a shop can change about a driveline, how far, and in what steps. */
export const adjustmentsOf = (input: WorkingAnglesInput, splineTeeth: number | undefined): Adjustment[] => {
  const pieces = Math.max(input.shafts.length - 2, 0);
  const has = (...parts: readonly string[]) => input.shafts.some((shaft) => parts.includes(shaft.part));
  const toothDeg = splineTeeth === undefined ? 1 : 360 / splineTeeth;
  const perPiece = (count: number, rest: Omit<Adjustment, 'piece'>): Adjustment[] =>
    Array.from({ length: count }, (_, piece) => ({ ...rest, piece }));
  return [
    ...(has('pinion') ? [{ kind: 'axle-shim', unit: '°', range: 6, step: 0.5 } as const] : []),
    ...(has('transmission', 'transfer-case')
      ? [{ kind: 'mount-height', unit: 'mm', range: 40, step: 3 } as const]
      : []),
    ...perPiece(Math.max(pieces - 1, 0), { kind: 'center-bearing-height', unit: 'mm', range: 40, step: 3 }),
    ...perPiece(pieces, { kind: 'phasing', unit: '°', range: 90, step: toothDeg }),
  ];
};

/** What a change is to bring inside: that the joints cancel. */
const CANCELLING: readonly LimitId[] = ['residual-acceleration', 'joint-angle-difference', 'fork-twist'];

const cancels = ({ judged }: WorkingAngles): boolean =>
  judged.every(({ limit, inside }) => inside || !CANCELLING.includes(limit.id));

const tryChanges = (
  input: WorkingAnglesInput,
  geometry: CompleteGeometry,
  before: WorkingAngles,
  changes: readonly AngleChange[],
): Attempt => {
  const setup = changes.reduce<WorkingAnglesInput>(
    (current, change) => ({ ...current, ...applyChange(current, geometry, change) }),
    input,
  );
  const result = workingAngles(setup);
  if (!result.ok)
    return { residualDeg: Infinity, residualRadPerS2: Infinity, spoils: [], stillOutside: [], reachesLimit: false };
  const after = result.value;
  const residualRadPerS2 = after.residual.accelerationRadPerS2 ?? Infinity;
  const leastDeg = limitOf('joint-angle-least', input.limits).value;
  const anglesBefore = before.joints.flatMap((joint) => joint.crossAnglesDeg);
  const needlesStop = after.joints
    .flatMap((joint) => joint.crossAnglesDeg)
    .some((angle, index) => angle < leastDeg && angle < (anglesBefore[index] ?? 0));
  const worseInertia = after.judged.some(
    ({ limit, inside, measured }, index) =>
      !CANCELLING.includes(limit.id) && !inside && measured > (before.judged[index]?.measured ?? 0),
  );
  const spoils: Attempt['spoils'] = [
    ...(worseInertia ? (['inertia'] as const) : []),
    ...(needlesStop ? (['least-angle'] as const) : []),
  ];
  return {
    residualDeg: after.residual.equivalentAngleDeg,
    residualRadPerS2,
    spoils,
    stillOutside: after.judged.filter(({ inside }) => !inside).map(({ title }) => title),
    reachesLimit: cancels(after) && spoils.length === 0,
  };
};
