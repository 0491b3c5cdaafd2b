/** What really turned and shook, for judging an analysis by. */
import type { Part } from '../vehicle/line.ts';
import { size } from '../complex.ts';
import type { Excitation } from './excitation.ts';
import { forceFactor, levelOf } from './excitation.ts';
import type { SetUp } from './set-up.ts';
import type { Turning, TurningId } from './turning.ts';
import { turningHz } from './turning.ts';

/** One order as it really was, over the whole run. */
export interface TrueOrder {
  readonly origin: 'normal' | 'fault';
  readonly part: Part;
  readonly name?: string;
  readonly order: number;
  /** Mean frequency over the run, Hz. */
  readonly meanHz: number;
  /** 0-to-peak at the mean condition, root-sum-square over axes, and each body axis (x, y, z), m/s². */
  readonly levelMps2: number;
  readonly axisMps2: readonly [number, number, number];
}

/**
 * All orders at a road speed.
 * @param meanHz True mean turning speed of a part where it is known; else what the ratios make it.
 */
export const trueOrdersAt = (
  set: SetUp,
  speedMps: number,
  innerHz: number,
  meanHz?: (id: TurningId) => number,
): readonly TrueOrder[] =>
  set.excitations.map((e) => {
    const turn = turningHz(partOf(e, set.parts), speedMps);
    const { levelMps2, axes } = levelOf(e.forces, set.body, turn * e.order, innerHz);
    const factor = forceFactor(e, turn, set.torque);
    return {
      origin: e.origin,
      part: e.part,
      ...(e.name !== undefined && { name: e.name }),
      order: e.order,
      meanHz: (meanHz?.(e.turning) ?? turn) * e.order,
      levelMps2: levelMps2 * factor,
      axisMps2: [size(axes[0]) * factor, size(axes[1]) * factor, size(axes[2]) * factor],
    };
  });

const partOf = (e: Excitation, parts: readonly Turning[]): Turning => {
  const part = parts.find((p) => p.id === e.turning);
  if (part === undefined) throw new Error(`nothing turns for ${e.turning}`);
  return part;
};
