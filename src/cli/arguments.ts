/** Words of the command line → options, with errors that name the option and say what to try. */
import { parseArgs } from 'node:util';
import type { Result } from '../core/note.ts';
import { nearestWord } from '../core/quantity/nearest-word.ts';
import { UsageError } from './io.ts';
import type { OptionRow } from './option-table.ts';

export interface Arguments {
  readonly files: readonly string[];
  /** Last value of an option, or undefined. */
  readonly text: (name: string) => string | undefined;
  /** All values of an option that may be repeated. */
  readonly texts: (name: string) => readonly string[];
  readonly flag: (name: string) => boolean;
}

/** @throws UsageError on an unknown option or a missing value. */
export function readArguments(args: readonly string[], rows: readonly OptionRow[]): Arguments {
  const options = Object.fromEntries(
    rows.map((row) => [
      row.name,
      row.value === undefined ? ({ type: 'boolean' } as const) : ({ type: 'string', multiple: true } as const),
    ]),
  );
  let parsed: { values: Record<string, unknown>; positionals: string[] };
  try {
    parsed = parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new UsageError(`${plainReason(error, rows)} Try --help for the options.`);
  }
  const texts = (name: string): readonly string[] => (parsed.values[name] as string[] | undefined) ?? [];
  return {
    files: parsed.positionals,
    texts,
    text: (name) => {
      const row = rows.find((candidate) => candidate.name === name);
      const values = texts(name);
      if (values.length > 1 && row?.many !== true)
        throw new UsageError(`--${name} was given ${values.length} times; give it once.`);
      return values.at(-1);
    },
    flag: (name) => parsed.values[name] === true,
  };
}

/** The argument parser's own words, put plainly, with the nearest option for a misspelt one. */
function plainReason(error: unknown, rows: readonly OptionRow[]): string {
  const message = error instanceof Error ? error.message : String(error);
  const unknown = /Unknown option '(-+)?([^']*)'/.exec(message);
  if (unknown) {
    const word = unknown[2] ?? '';
    const near = nearestWord(
      word,
      rows.map(({ name }) => name),
    );
    return `there is no option --${word}.${near ? ` Did you mean --${near}?` : ''}`;
  }
  const missing = /Option '(?:-\w, )?(--[\w-]+)[^']*' argument (missing|is ambiguous)/.exec(message);
  if (missing) return `${missing[1]} needs a value.`;
  return `${message.split('\n')[0]}.`;
}

/** Unwraps a parsed value; a problem becomes wrong usage that names the option. */
export function valueOf<T>(option: string, result: Result<T>): T {
  if (result.ok) return result.value;
  throw new UsageError(`--${option}: ${result.problem.message} ${result.problem.remedy}`);
}

/** A value out of a closed list. */
export function choiceOf<T extends string>(option: string, text: string, choices: readonly T[]): T {
  const found = choices.find((choice) => choice === text.trim().toLowerCase());
  if (found === undefined) {
    throw new UsageError(`--${option} "${text}" is not one of ${choices.join(', ')}.${didYouMean(text, choices)}`);
  }
  return found;
}

/** ' Did you mean cruise?'; empty where no word is near. */
export function didYouMean(text: string, choices: readonly string[]): string {
  const near = nearestWord(text, choices);
  return near === undefined ? '' : ` Did you mean ${near}?`;
}
