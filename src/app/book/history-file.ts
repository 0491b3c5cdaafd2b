/** The history of a job as a file of its own beside the job file: written, and read back with nothing taken on trust. */
import type { Result } from '../../core/note.ts';
import { failure, success } from '../../core/note.ts';
import { texts } from '../texts.ts';
import type { JobEvent } from './timeline.ts';

/** Name of the file within a job saved as one file. */
export const HISTORY_NAME = 'perrev-history.json';

const FORMAT = 'perrev-history';
const VERSION = 1;
/** Beyond this there is no date (ECMA-262, time values). */
const LAST_MS = 8.64e15;

/** The texts each kind of event has besides its time. */
const TEXTS = {
  begun: [],
  recorded: ['file', 'stage'],
  answered: ['sentence'],
  compared: ['sentence'],
  measured: ['what'],
  noted: ['text'],
} as const satisfies Record<JobEvent['kind'], readonly string[]>;

/** Text of the history file. */
export const writeHistory = (events: readonly JobEvent[]): string =>
  `${JSON.stringify({ format: FORMAT, version: VERSION, events }, null, 2)}\n`;

/** The events of a history file, or the remark that it cannot be read: damaged, or of a newer version. */
export function readHistory(text: string): Result<readonly JobEvent[]> {
  const file = parsed(text);
  const isOurs = isRecord(file) && file.format === FORMAT && file.version === VERSION && Array.isArray(file.events);
  const events = isOurs ? (file.events as unknown[]).map(eventOf) : [null];
  if (events.every((event) => event !== null)) return success(events);
  return failure({ code: 'history-damaged', ...texts.book.historyDamaged });
}

/** The event of a value, with no more in it than an event has. */
function eventOf(value: unknown): JobEvent | null {
  if (!isRecord(value) || typeof value.kind !== 'string' || !Object.hasOwn(TEXTS, value.kind)) return null;
  const { kind, atMs, stage } = value;
  if (typeof atMs !== 'number' || !(Math.abs(atMs) <= LAST_MS)) return null;
  if (kind === 'recorded' && stage !== 'complaint' && stage !== 'proof') return null;
  const named = TEXTS[kind as JobEvent['kind']].map((name) => [name, value[name]] as const);
  if (!named.every(([, said]) => typeof said === 'string')) return null;
  return { kind, atMs, ...Object.fromEntries(named) } as JobEvent;
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
