/** Finds the finding's name in the answer, so that it can be marked. */

export interface SplitSentence {
  readonly before: string;
  readonly marked: string;
  readonly after: string;
}

/** @returns The sentence in three pieces; the middle one is empty where the label does not occur. */
export function splitSentence(sentence: string, label: string | undefined): SplitSentence {
  const at = label ? sentence.toLowerCase().indexOf(label.toLowerCase()) : -1;
  if (at < 0 || label === undefined) return { before: sentence, marked: '', after: '' };
  const end = at + label.length;
  return { before: sentence.slice(0, at), marked: sentence.slice(at, end), after: sentence.slice(end) };
}
