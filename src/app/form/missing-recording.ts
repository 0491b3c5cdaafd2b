/** A run of the job whose recording was not opened along with it. */
import type { Problem } from '../../core/note.ts';
import { texts } from '../texts.ts';

const CODE = 'recording-not-here';

export const missingRecording = (file: string): Problem => ({
  code: CODE,
  file,
  message: texts.form.notHere(file),
  remedy: texts.form.notHereRemedy,
});

export const isMissing = (problem: Problem | undefined): boolean => problem?.code === CODE;
