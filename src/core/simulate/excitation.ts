/** One order of one turning part as a force that turns with it, and the level it makes at the sensor. */
import type { Part } from '../vehicle/line.ts';
import type { Body } from './body.ts';
import type { Complex } from '../complex.ts';
import { add, complex, size, multiply, scale } from '../complex.ts';
import type { Entry } from './transfer.ts';
import { transferAt } from './transfer.ts';
import type { TurningId } from './turning.ts';

/** What is meant, before it is made to reach its level. */
export interface OrderPlan {
  readonly origin: 'normal' | 'fault';
  readonly part: Part;
  /** Which of several. */
  readonly name?: string;
  readonly turning: TurningId;
  /** Orders and their forces relative to each other. */
  readonly orders: readonly { readonly order: number; readonly relative: Complex }[];
  /** The order whose level is stated, and that level, m/s² (0-to-peak, root-sum-square over axes). */
  readonly levelOrder: number;
  readonly levelMps2: number;
  /** Turning speed, 1/s, and torque share the level is stated for. */
  readonly referenceHz: number;
  readonly referenceTorque: number;
  /** Entries the force acts on, with relative size and phase: [1, −j] at two right angles is a turning force. */
  readonly shape: readonly { readonly entry: Entry; readonly factor: Complex }[];
  /** Force grows with turning speed to this power. */
  readonly speedExponent: number;
  /** Share of the force that is proportional to drive torque. */
  readonly torqueShare: number;
}

export interface Excitation extends Omit<OrderPlan, 'orders' | 'levelMps2' | 'levelOrder' | 'shape'> {
  readonly order: number;
  /** Complex force at each entry at the reference, N. */
  readonly forces: readonly { readonly entry: Entry; readonly forceN: Complex }[];
}

/** Scales each plan's forces so that its stated order reaches its level at its reference. */
export const excitationsFrom = (plans: readonly OrderPlan[], body: Body, rateHz: number): readonly Excitation[] =>
  plans.flatMap((plan) => {
    const stated = plan.orders.find((o) => o.order === plan.levelOrder);
    if (stated === undefined) throw new Error(`order ${plan.levelOrder} is not among the plan's orders`);
    const raw = plan.shape.map((s) => ({ entry: s.entry, forceN: multiply(stated.relative, s.factor) }));
    const gain = levelOf(raw, body, plan.levelOrder * plan.referenceHz, rateHz).levelMps2;
    const k = gain > 0 ? plan.levelMps2 / gain : 0;
    return plan.orders.map((o) => ({
      origin: plan.origin,
      part: plan.part,
      ...(plan.name !== undefined && { name: plan.name }),
      turning: plan.turning,
      referenceHz: plan.referenceHz,
      referenceTorque: plan.referenceTorque,
      speedExponent: plan.speedExponent,
      torqueShare: plan.torqueShare,
      order: o.order,
      forces: plan.shape.map((s) => ({ entry: s.entry, forceN: scale(multiply(o.relative, s.factor), k) })),
    }));
  });

/** Acceleration at the sensor that forces at one frequency make together. */
export const levelOf = (
  forces: Excitation['forces'],
  body: Body,
  frequencyHz: number,
  rateHz: number,
): { readonly levelMps2: number; readonly axes: readonly [Complex, Complex, Complex] } => {
  const axes: [Complex, Complex, Complex] = [complex(0), complex(0), complex(0)];
  for (const { entry, forceN } of forces) {
    const gain = transferAt(body, entry, frequencyHz, rateHz);
    for (let axis = 0; axis < 3; axis++) axes[axis] = add(axes[axis]!, multiply(gain[axis]!, forceN));
  }
  return { levelMps2: Math.hypot(...axes.map(size)), axes };
};

/** How the force stands to its reference at a turning speed and torque share. */
export const forceFactor = (excitation: Excitation, turnHz: number, torque: number): number => {
  const speed =
    excitation.speedExponent === 0 || excitation.referenceHz === 0
      ? 1
      : Math.pow(Math.max(turnHz, 0) / excitation.referenceHz, excitation.speedExponent);
  if (excitation.torqueShare === 0) return speed;
  const reference = Math.max(Math.abs(excitation.referenceTorque), 0.05);
  return speed * (1 - excitation.torqueShare + (excitation.torqueShare * Math.abs(torque)) / reference);
};
