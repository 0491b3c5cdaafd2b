/** The words each lesson uses. */
import type { TermId } from '../texts/glossary.ts';
import type { LessonId } from './lesson-list.ts';

export const LESSON_TERMS: Readonly<Record<LessonId, readonly TermId[]>> = {
  'how-an-order-is-born': ['order', 'spectrum', 'line', 'unbalance'],
  'lines-that-move': ['order', 'line'],
  'one-joint-and-two': ['cross', 'joint-angle', 'phasing', 'residual', 'inertia'],
  'two-near-lines': ['spectrum', 'line', 'window'],
  'sampled-too-slowly': ['sampling-rate', 'alias'],
  'weights-as-vectors': ['unbalance', 'trial-weight', 'correction', 'consistency', 'allowance'],
  'build-a-fault': ['order', 'felt', 'sampling-rate'],
};
