import type { Dice } from './dice.ts';

/** One thing that reads input: how to make an input, and what must hold of what came of it. */
export interface Target<Input = unknown> {
  readonly name: string;
  /** Cases run in one turn; turns go around. */
  readonly cases: number;
  readonly make: (dice: Dice, index: number) => Input;
  /** Throws where something does not hold; any other throw is a crash of what is tested. */
  readonly check: (input: Input) => void | Promise<void>;
  /** The input as it can be looked at. */
  readonly show: (input: Input) => string | Uint8Array;
}

/** Keeps a target's own types together and hides them from the list. */
export const target = <Input>(made: Target<Input>): Target => made as unknown as Target;

/** What was tested answered, and wrongly. */
class WrongAnswer extends Error {
  override readonly name = 'WrongAnswer';
}

export function must(holds: boolean, what: string): asserts holds {
  if (!holds) throw new WrongAnswer(what);
}
