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
  if (repaired.length === 0) return 'After the repair: ';
  const titles = repaired.map(uncapitalized);
  const isJustNamed = titles.length === 1 && sentence.includes(titles[0]!);
  return `With ${isJustNamed ? 'that' : listText(titles)} put right, `;
};

/** @param proof null where no run was made after the repair */
export function provedAnswer(answer: Answer, proof: Proved | null): Answer {
  if (proof === null) return answer;
  const { repaired = [], sentence } = proof;
  return { ...answer, sentence: `${answer.sentence} ${opening(answer, repaired)}${uncapitalized(sentence)}` };
}
