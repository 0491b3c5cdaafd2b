/** Every word the app shows, in one object: what a translation would replace. */
import { charts } from './texts/charts.ts';
import { form } from './texts/form.ts';
import { frame } from './texts/frame.ts';
import { sheet } from './texts/sheet.ts';
import { start } from './texts/start.ts';

export const texts = { charts, form, frame, sheet, start } as const;
