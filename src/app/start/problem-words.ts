/** A problem as it is told on the screen: what is wrong by its name in the form, and where, nothing said twice. */
import type { Problem } from '../../core/note.ts';
import { texts } from '../texts.ts';

export interface ProblemWords {
  readonly message: string;
  /** File and place in it, as far as the message does not name them; empty where there is nothing to add. */
  readonly where: string;
}

/** Where the last word of a key is not the field's own name in the form. */
const FIELD_OF_KEY: Readonly<Record<string, string>> = {
  speedMps: 'speed',
  samplingRateHz: 'samplingRate',
  size: 'tire',
};

export function problemWords({ message, file, line, column, key }: Problem): ProblemWords {
  const { where: words } = texts.start;
  const isNamed = file !== undefined && message.includes(file);
  const parts = [
    isNamed ? '' : (file ?? ''),
    line === undefined || isNamed ? '' : `${words.line} ${line}`,
    column === undefined || key !== undefined ? '' : `${words.column} ${column}`,
  ];
  return { message: curlyQuotes(named(message, key)), where: parts.filter(Boolean).join(', ') };
}

/** The quotes of print in place of those of a terminal, which the core writes. */
export const curlyQuotes = (text: string): string => text.replaceAll(/"([^"]*)"/gu, '“$1”');

/** A message that begins with a key of the job file, with the label of that field in its place. */
function named(message: string, key: string | undefined): string {
  if (key === undefined || !message.startsWith(`${key}: `)) return message;
  const last = key.split('.').at(-1) ?? key;
  const id = FIELD_OF_KEY[last] ?? last;
  const fields: Readonly<Record<string, { readonly label: string }>> = texts.form.fields;
  const label = Object.hasOwn(fields, id) ? fields[id]?.label : undefined;
  return label === undefined ? message : `${label}: ${message.slice(key.length + 2)}`;
}
