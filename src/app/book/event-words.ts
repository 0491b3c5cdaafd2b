/** An event of the timeline in words. */
import { assertNever } from '../../core/note.ts';
import { texts } from '../texts.ts';
import type { JobEvent } from './timeline.ts';

export function eventText(event: JobEvent): string {
  const words = texts.book.events;
  switch (event.kind) {
    case 'begun':
      return words.begun;
    case 'recorded':
      return event.stage === 'proof' ? words.proved(event.file) : words.recorded(event.file);
    case 'answered':
      return words.answered(event.sentence);
    case 'compared':
      return words.compared(event.sentence);
    case 'measured':
      return words.measured(measuredName(event.what));
    case 'noted':
      return words.noted(event.text);
    default:
      return assertNever(event);
  }
}

/** Ids are kebab-case words. */
const measuredName = (what: string): string => what.replaceAll('-', ' ');
