/** The one open session and the view on it. */
import { Session } from './session.svelte.ts';
import { View } from './view.svelte.ts';

export const session = new Session();
export const view = new View(session);
