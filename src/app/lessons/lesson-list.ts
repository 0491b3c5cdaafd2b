/** The lessons in the order they are taught, each loaded when it is opened. */
import type { Component } from 'svelte';
import { lessonTexts } from '../texts/lessons.ts';

export type LessonId = keyof typeof lessonTexts.lessons;

export const LESSON_IDS = Object.keys(lessonTexts.lessons) as readonly LessonId[];

/** The lesson an address such as '#lessons/one-joint-and-two' names; null for the overview. */
export const lessonOf = (rest: string): LessonId | null => LESSON_IDS.find((id) => id === rest) ?? null;

/** The lessons before and after one. */
export function neighbours(id: LessonId): { readonly previous: LessonId | null; readonly next: LessonId | null } {
  const at = LESSON_IDS.indexOf(id);
  return { previous: LESSON_IDS[at - 1] ?? null, next: LESSON_IDS[at + 1] ?? null };
}

export const LOADERS: Readonly<Record<LessonId, () => Promise<{ default: Component }>>> = {
  'how-an-order-is-born': () => import('./OrderBirth.svelte'),
  'lines-that-move': () => import('./MovingLines.svelte'),
  'one-joint-and-two': () => import('./Joints.svelte'),
  'two-near-lines': () => import('./NearLines.svelte'),
  'sampled-too-slowly': () => import('./Aliasing.svelte'),
  'weights-as-vectors': () => import('./Balancing.svelte'),
  'build-a-fault': () => import('./BuildFault.svelte'),
};
