/** The one open session, the view on it, and the book it is kept in. */
import { Book } from '../book/book.ts';
import { Comparing } from '../compare/comparing.svelte.ts';
import { Keeper } from './keeper.svelte.ts';
import { Session } from './session.svelte.ts';
import { settings } from './settings.svelte.ts';
import { View } from './view.svelte.ts';

export const session = new Session();
export const view = new View(session, settings);
export const book = new Book();
export const keeper = new Keeper(session, book);
export const comparing = new Comparing(session, book, (comparison) => keeper.addComparison(comparison));
