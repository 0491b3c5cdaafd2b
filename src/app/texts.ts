/** Every word the app shows, in one object: what a translation would replace. */
import { book } from './texts/book.ts';
import { charts } from './texts/charts.ts';
import { form } from './texts/form.ts';
import { frame } from './texts/frame.ts';
import { sheet } from './texts/sheet.ts';
import { start } from './texts/start.ts';

export const texts = { book, charts, form, frame, sheet, start } as const;
