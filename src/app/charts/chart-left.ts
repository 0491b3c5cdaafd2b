/** The left margin of all pictures of the run that is looked at. */
import { view } from '../state/app.ts';
import { settings } from '../state/settings.svelte.ts';
import { leftMargin } from './geometry.ts';
import { laneName, lanesOf } from './lanes.ts';

export const chartLeft = (width: number): number =>
  leftMargin(width, lanesOf(view.picture?.lines ?? []).map(laneName), settings.typeScale);
