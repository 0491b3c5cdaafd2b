/** Cautions that the reader has said to have read: folded to one line for the rest of the visit. */
import { SvelteSet } from 'svelte/reactivity';
import type { CautionId } from '../../core/cautions.ts';
import { CAUTIONS } from '../../core/cautions.ts';
import { cautionNames } from '../texts/caution-names.ts';

/** Sentences that were read. */
export const readCautions = new SvelteSet<string>();

const NAMES = new Map(Object.entries(CAUTIONS).map(([id, text]) => [text as string, cautionNames[id as CautionId]]));

/** 'hoist and stands, turning parts': what folded cautions are about; of one without a name its first words. */
export const namesOf = (cautions: readonly string[]): string =>
  cautions.map((text) => NAMES.get(text) ?? `${text.split(/[:;.]/u)[0]}`).join(', ');
