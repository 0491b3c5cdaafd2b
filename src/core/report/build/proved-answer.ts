/** The answer of a job whose repair was put to the proof: what was found, and what became of it. */
import { uncapitalized } from '../../words.ts';
import type { Proof } from '../../diagnosis/compare/proof.ts';
import type { Answer } from '../answer.ts';

/** @param proof null where no run was made after the repair */
export const provedAnswer = (answer: Answer, proof: Pick<Proof, 'sentence'> | null): Answer =>
  proof === null
    ? answer
    : { ...answer, sentence: `${answer.sentence} After the repair: ${uncapitalized(proof.sentence)}` };
