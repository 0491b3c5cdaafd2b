/** One case: made from seed, target and number; run; judged. */
import { caseSeed, diceOf } from './dice.ts';
import type { Target } from './target.ts';

/** A case that keeps the processor longer than this hangs, s. */
export const HANG_S = 2;

export interface Finding {
  readonly target: string;
  readonly index: number;
  readonly kind: 'crash' | 'wrong answer' | 'hang' | 'died';
  readonly text: string;
  readonly input: Uint8Array;
}

/** @returns what was found, or null */
export async function runCase(target: Target, seed: number, index: number): Promise<Finding | null> {
  const input = target.make(diceOf(caseSeed(seed, target.name, index)), index);
  const found = (kind: Finding['kind'], text: string): Finding => ({
    target: target.name,
    index,
    kind,
    text,
    input: Uint8Array.from(Buffer.from(target.show(input) as string)),
  });
  // Processor time, not the clock's: a busy machine is no hang.
  const before = process.cpuUsage();
  try {
    await target.check(input);
  } catch (error) {
    const fault = error instanceof Error ? error : new Error(String(error));
    return fault.name === 'WrongAnswer'
      ? found('wrong answer', fault.message)
      : found('crash', (fault.stack ?? fault.message).split('\n').slice(0, 4).join('\n'));
  }
  const seconds = process.cpuUsage(before).user / 1e6;
  return seconds > HANG_S ? found('hang', `${seconds.toFixed(1)} s`) : null;
}
