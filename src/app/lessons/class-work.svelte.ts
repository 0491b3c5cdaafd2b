/**
 * The case for the class: its settings, the work on it and what was made. Outlives the screen, for without the sealed
 * answer nobody could tell what a recording handed out has in it.
 */
import { mpsFromMph } from '../../core/units.ts';
import type { ClassCase } from './class-case.ts';
import type { MadeRecording } from './make-recording.ts';
import { makeRecording } from './make-recording.ts';
import { sealAnswer } from './seal.ts';

/** In place of a fault: one is drawn. */
export const CHANCE = 'chance';

interface Made {
  readonly one: ClassCase;
  readonly recording: MadeRecording;
  /** Text of the answer file. */
  readonly sealed: string;
  /** What stood in the form when it was made. */
  readonly form: string;
}

export class ClassWork {
  readonly #make: typeof makeRecording;
  settings = $state({
    vehicle: 'truck',
    fault: CHANCE,
    levelMps2: 0.3,
    speedMps: mpsFromMph(62),
    durationS: 40,
    rate: '250',
  });
  /** How often the word was typed at. It is not kept itself: whoever comes back to the screen is not to read it there. */
  #wordChanges = $state(0);
  readonly #form = $derived.by(() => JSON.stringify([this.settings, this.#wordChanges]));
  made = $state.raw<Made | null>(null);
  hasFailed = $state(false);
  #abort = $state.raw<AbortController | null>(null);
  readonly isMaking = $derived(this.#abort !== null);
  /** The files are of other settings, or of another word, than those that stand in the form. */
  readonly isFormer = $derived.by(() => this.made !== null && this.made.form !== this.#form);

  constructor(make = makeRecording) {
    this.#make = make;
  }

  /** The word was typed anew. */
  changeWord(): void {
    this.#wordChanges++;
  }

  /** Makes the recording and seals its answer; what was made before stays until this one is. */
  async make(one: ClassCase, word: string): Promise<void> {
    this.cancel();
    const abort = new AbortController();
    this.#abort = abort;
    this.hasFailed = false;
    try {
      const recording = await this.#make(one, abort.signal);
      const sealed = await sealAnswer(recording.answer, word);
      if (!abort.signal.aborted) {
        // The class looks on: what was chosen does not stay in the list.
        this.settings.fault = CHANCE;
        this.made = { one, recording, sealed, form: this.#form };
      }
    } catch {
      this.hasFailed = !abort.signal.aborted;
    }
    if (this.#abort === abort) this.#abort = null;
  }

  cancel(): void {
    this.#abort?.abort();
    this.#abort = null;
  }
}

export const classWork = new ClassWork();
