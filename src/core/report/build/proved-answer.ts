/** The answer of a job whose repair was put to the proof: what was found, what was put right, and what became of it. */
import { listText, uncapitalized } from '../../words.ts';
import type { Proof } from '../../diagnosis/compare/proof.ts';
import type { Answer } from '../answer.ts';

export interface Proved extends Pick<Proof, 'sentence'> {
  /** Titles of the causes that the job says were put right. */
  readonly repaired?: readonly string[];
}

/** @param proof null where no run was made after the repair */
export function provedAnswer(answer: Answer, proof: Proved | null): Answer {
  if (proof === null) return answer;
  const { repaired = [], sentence } = proof;
  const what = repaired.length === 0 ? '' : ` (${listText(repaired.map(uncapitalized))})`;
  return { ...answer, sentence: `${answer.sentence} After the repair${what}: ${uncapitalized(sentence)}` };
}
