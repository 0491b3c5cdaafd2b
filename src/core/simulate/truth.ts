/** What really turned and shook, for judging an analysis by. */
import type { Part } from '../vehicle/line.ts';
import type { Body } from './body.ts';
import { magnitude } from './complex.ts';
import type { Excitation } from './excitation.ts';
import { forceFactor, levelOf } from './excitation.ts';
import type { Turning } from './turning.ts';
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

export const trueOrder = (
  e: Excitation,
  parts: readonly Turning[],
  meanSpeed: number,
  torque: number,
  body: Body,
  rateHz: number,
): TrueOrder => {
  const turn = turningHz(
    parts.find((p) => p.id === e.turning)!,
    meanSpeed,
  );
  const { levelMps2, axes } = levelOf(e.forces, body, turn * e.order, rateHz);
  const factor = forceFactor(e, turn, torque);
  return {
    origin: e.origin,
    part: e.part,
    ...(e.name !== undefined && { name: e.name }),
    order: e.order,
    meanHz: turn * e.order,
    levelMps2: levelMps2 * factor,
    axisMps2: [magnitude(axes[0]) * factor, magnitude(axes[1]) * factor, magnitude(axes[2]) * factor],
  };
};
