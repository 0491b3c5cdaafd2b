/** What stands after a tire size: service letters, load index, speed symbol, and words that do not matter here. */
import type { Note } from '../note.ts';

export interface TireSuffix {
  /** 'C' or 'LT' where printed after the rim. */
  readonly letters: '' | 'C' | 'LT';
  readonly loadIndex?: number;
  readonly speedSymbol?: string;
  readonly notes: readonly Note[];
}

const LOAD_AND_SPEED = /^(\d{2,3})(?:\/(\d{2,3}))? ?([A-HJ-NP-UVWY]\d?)?$/u;
const LOAD_RANGE = /^(?:\d{1,2} ?(?:PR|PLY)|LR[A-N]|LOAD|RANGE|[A-N])$/u;

/**
 * Reads the text after the rim number.
 *
 * @returns null where it holds digits that mean nothing for a tire, since the size itself may then be misread.
 */
export const readSuffix = (tail: string): TireSuffix | null => {
  let letters: TireSuffix['letters'] = '';
  let rest = tail;
  const service = /^ ?(LT|C)(?=[ \d(]|$)/u.exec(rest);
  if (service !== null) {
    letters = service[1] === 'LT' ? 'LT' : 'C';
    rest = rest.slice(service[0].length);
  }
  let loadIndex: number | undefined;
  let speedSymbol: string | undefined;
  const unused: string[] = [];
  const words = rest
    .replace(/^\//u, '')
    .replaceAll(/[()[\]]/gu, ' ')
    .replaceAll(/(\d) ([A-Z])(?= |$)/gu, '$1$2')
    .split(/[ ,;]+/u)
    .filter((word) => word !== '');
  for (const word of words) {
    const load = LOAD_AND_SPEED.exec(word);
    if (load !== null && loadIndex === undefined) {
      const index = Number(load[1]);
      if (index < 40 || index > 200) return null;
      loadIndex = index;
      speedSymbol = load[3];
    } else if (LOAD_RANGE.test(word)) {
      continue;
    } else if (/\d/u.test(word)) {
      return null;
    } else if (!/^(?:XL|RF|TL|M\+?S|M\/S|REINFORCED|LT|C)$/u.test(word)) {
      unused.push(word.toLowerCase());
    }
  }
  const notes: Note[] =
    unused.length === 0
      ? []
      : [{ code: 'tire-words-unused', text: `Not needed and not used: "${unused.join(' ')}".`, severity: 'info' }];
  return {
    letters,
    ...(loadIndex === undefined ? {} : { loadIndex }),
    ...(speedSymbol === undefined ? {} : { speedSymbol }),
    notes,
  };
};
