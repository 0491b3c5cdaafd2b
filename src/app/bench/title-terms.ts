/** The word of the trade that the title of a form is about; its fields need not tell it again. */
import type { TermId } from '../texts/glossary.ts';

const TERMS: Readonly<Record<string, TermId>> = {
  'working-angles': 'working-angle',
  'double-cardan': 'double-cardan',
  'ride-height': 'ride-height',
  'end-play': 'end-play',
  rings: 'rings',
  runout: 'runout',
  'wheel-unbalance': 'unbalance',
  'flange-reindex': 'reindexing',
  'balance-amplitudes': 'trial-weight',
  'balance-phasors': 'phase',
  whirl: 'critical-speed',
};

export function titleTerms(formId: string): readonly TermId[] {
  const term = TERMS[formId];
  return term === undefined ? [] : [term];
}
