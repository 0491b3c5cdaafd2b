/** The answer of a job whose repair was put to the proof: what was found, what was put right, and what became of it. */
import { listText, uncapitalized } from '../../words.ts';
import type { Proof } from '../../diagnosis/compare/proof.ts';
import type { Answer } from '../answer.ts';

export interface Proved extends Pick<Proof, 'sentence'> {
  /** Titles of the causes that the job says were put right. */
  readonly repaired?: readonly string[];
}

/** 'With that put right, ' where the answer has just named it. */
const opening = ({ sentence }: Answer, repaired: readonly string[]): string => {
  const [first, ...others] = repaired.map(uncapitalized);
  if (first === undefined) return 'After the repair: ';
  const isJustNamed = others.length === 0 && sentence.includes(first);
  return `With ${isJustNamed ? 'that' : listText([first, ...others])} put right, `;
};

/** @param proof null where no run was made after the repair */
export function provedAnswer(answer: Answer, proof: Proved | null): Answer {
  if (proof === null) return answer;
  const { repaired = [], sentence } = proof;
  return { ...answer, sentence: `${answer.sentence} ${opening(answer, repaired)}${uncapitalized(sentence)}` };
}
