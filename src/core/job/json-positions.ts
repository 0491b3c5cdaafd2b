/** Where each key of a JSON text stands, and where the text stops being JSON. JSON.parse tells neither everywhere. */

export interface JsonMap {
  /** Character offset of each key or list item by its path: 'vehicle.axleRatio', 'runs[0].file'. */
  readonly offsets: ReadonlyMap<string, number>;
  /** First place where the text is not JSON or says a key twice; null where all is well. */
  readonly fault: Found | null;
  /** First number that is too large to be held; JSON.parse makes infinity of it. */
  readonly tooLarge: Found | null;
}

/** Something to be told of a JSON text, and where: character offset, path of its key, and what it is. */
export interface Found {
  readonly offset: number;
  readonly path: string;
  readonly text: string;
}

/** Deeper nesting than any job file has; keeps the walk from exhausting the stack. */
const DEEPEST = 60;

const BLANK = /[ \t\n\r]*/uy;
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/uy;
const SCALAR = /(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![\w.+-])/uy;

class Fault extends Error {
  readonly offset: number;
  readonly path: string;
  constructor(offset: number, path: string, text: string) {
    super(text);
    this.offset = offset;
    this.path = path;
  }
}

/** Walks the text once. The thrown Fault never leaves this file. */
const walk = (text: string, offsets: Map<string, number>, tooLarge: Found[]): void => {
  let at = 0;
  const take = (pattern: RegExp): string | null => {
    pattern.lastIndex = at;
    const match = pattern.exec(text);
    if (match === null) return null;
    at = pattern.lastIndex;
    return match[0];
  };
  const sign = (mark: string): boolean => {
    take(BLANK);
    if (text[at] !== mark) return false;
    at += 1;
    return true;
  };
  const expected = (what: string, path: string): Fault => {
    const found = at >= text.length ? 'the end of the file' : `"${text.slice(at, at + 1)}"`;
    return new Fault(Math.min(at, Math.max(0, text.length - 1)), path, `expected ${what} but found ${found}`);
  };

  const object = (path: string, depth: number): void => {
    if (sign('}')) return;
    const seen = new Set<string>();
    do {
      take(BLANK);
      const start = at;
      const quoted = take(STRING);
      if (quoted === null) throw expected('a key in double quotes', path);
      const key = String(JSON.parse(quoted));
      const keyPath = path === '' ? key : `${path}.${key}`;
      if (seen.has(key)) throw new Fault(start, keyPath, `the key "${key}" stands here twice`);
      seen.add(key);
      offsets.set(keyPath, start);
      if (!sign(':')) throw expected('a colon', keyPath);
      value(keyPath, depth);
    } while (sign(','));
    if (!sign('}')) throw expected('a comma or a closing brace', path);
  };
  const list = (path: string, depth: number): void => {
    if (sign(']')) return;
    let index = 0;
    do {
      const itemPath = `${path}[${index}]`;
      take(BLANK);
      offsets.set(itemPath, at);
      value(itemPath, depth);
      index += 1;
    } while (sign(','));
    if (!sign(']')) throw expected('a comma or a closing bracket', path);
  };
  const scalar = (path: string): void => {
    const offset = at;
    const word = take(SCALAR);
    if (word === null) throw expected('a value', path);
    if (Math.abs(Number(word)) === Infinity) tooLarge.push({ offset, path, text: word });
  };
  const value = (path: string, depth: number): void => {
    if (depth >= DEEPEST) throw new Fault(at, path, 'values are nested too deeply');
    if (sign('{')) object(path, depth + 1);
    else if (sign('[')) list(path, depth + 1);
    else if (take(STRING) === null) scalar(path);
  };

  value('', 0);
  take(BLANK);
  if (at < text.length) throw expected('the end of the file', '');
};

/** Maps a JSON text. Never throws; a fault is part of the map, with what was mapped before it. */
export const mapJson = (text: string): JsonMap => {
  const offsets = new Map<string, number>();
  const tooLarge: Found[] = [];
  let fault: Found | null = null;
  try {
    walk(text, offsets, tooLarge);
  } catch (error) {
    if (!(error instanceof Fault)) throw error;
    fault = { offset: error.offset, path: error.path, text: error.message };
  }
  return { offsets, fault, tooLarge: tooLarge[0] ?? null };
};

/** 1-based line and column of a character offset. */
export const lineAndColumn = (text: string, offset: number): { readonly line: number; readonly column: number } => {
  const before = text.slice(0, offset);
  const lines = before.split('\n');
  return { line: lines.length, column: (lines.at(-1) ?? '').length + 1 };
};

/** Offset of a path, or of the nearest key above it that the file has. */
export const offsetOf = (map: JsonMap, path: string): number | null => {
  for (let rest = path; rest !== ''; rest = rest.replace(/(?:\.[^.[\]]*|\[\d+\]|^[^.[\]]+)$/u, '')) {
    const offset = map.offsets.get(rest);
    if (offset !== undefined) return offset;
    if (!/[.[]/u.test(rest)) break;
  }
  return null;
};
