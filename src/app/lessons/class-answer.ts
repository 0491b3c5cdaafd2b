/** What was really wrong: the answer to a case, and its check when it comes back from a file. */
import type { Simulation } from '../../core/simulate/simulate.ts';
import { lineLabel } from '../../core/vehicle/labels.ts';
import type { ClassCase, FaultKind } from './class-case.ts';
import { caseName, scenarioOf } from './class-case.ts';
import { lessonTexts } from '../texts/lessons.ts';

export interface ClassAnswer {
  readonly recording: string;
  readonly fault: FaultKind;
  readonly levelMps2: number;
  readonly orders: readonly { readonly label: string; readonly meanHz: number; readonly levelMps2: number }[];
  readonly meanSpeedMps: number;
  readonly circumferenceM: number;
}

export function answerOf(one: ClassCase, { orders, meanSpeedMps }: Simulation['truth']): ClassAnswer {
  const byLabel = new Map<string, { label: string; meanHz: number; levelMps2: number }>();
  for (const { origin, part, order, meanHz, levelMps2 } of orders) {
    if (origin !== 'fault') continue;
    const label = lineLabel(part, order);
    const level = (byLabel.get(label)?.levelMps2 ?? 0) + levelMps2;
    byLabel.set(label, { label, meanHz, levelMps2: level });
  }
  return {
    recording: `${caseName(one.seed)}.csv`,
    fault: one.fault,
    levelMps2: one.levelMps2,
    orders: [...byLabel.values()],
    meanSpeedMps,
    circumferenceM: scenarioOf(one).rollingCircumferenceM,
  };
}

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

/** Whether a value read from a file is an answer. */
export function isAnswer(value: unknown): value is ClassAnswer {
  if (typeof value !== 'object' || value === null) return false;
  const answer = value as Partial<Record<keyof ClassAnswer, unknown>>;
  return (
    typeof answer.recording === 'string' &&
    typeof answer.fault === 'string' &&
    answer.fault in lessonTexts.build.faults &&
    isNumber(answer.levelMps2) &&
    isNumber(answer.meanSpeedMps) &&
    isNumber(answer.circumferenceM) &&
    Array.isArray(answer.orders) &&
    answer.orders.every(
      (order: Partial<ClassAnswer['orders'][number]> | null) =>
        typeof order?.label === 'string' && isNumber(order.meanHz) && isNumber(order.levelMps2),
    )
  );
}
