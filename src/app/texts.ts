/** Every word the app shows, in one object: what a translation would replace. */
import { bench } from './texts/bench.ts';
import { book } from './texts/book.ts';
import { charts } from './texts/charts.ts';
import { compare } from './texts/compare.ts';
import { form } from './texts/form.ts';
import { frame } from './texts/frame.ts';
import { print } from './texts/print.ts';
import { sheet } from './texts/sheet.ts';
import { start } from './texts/start.ts';

export const texts = { bench, book, charts, compare, form, frame, print, sheet, start } as const;
