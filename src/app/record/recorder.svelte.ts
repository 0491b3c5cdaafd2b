/** One recording from the tap that asks for the sensor to the finished file. */
import { record as words } from '../texts/record.ts';
import type { LevelCheck } from './level-check.ts';
import { levelCheck } from './level-check.ts';
import type { MotionSample, SpeedSample } from './recording-buffer.ts';
import { measuredRateHz, RecordingBuffer } from './recording-buffer.ts';
import { recordingCsv, stampOf } from './recording-csv.ts';
import type { SensorProblem } from './sensors.ts';
import { askForMotion, keepAwake, listenToMotion, sensorObstacle, watchSpeed } from './sensors.ts';

export type Phase = 'idle' | 'ready' | 'countdown' | 'recording' | 'done';
export type SpeedState = 'off' | 'none' | 'denied' | 'missing' | number;

const COUNTDOWN_S = 5;
/** Without a reading after this long the sensor is held to be missing. */
const SILENT_MS = 3000;
/** What is shown is renewed this often; samples come faster than eyes read. */
const SHOW_MS = 250;
const LEAST_S = 10;

export class Recorder {
  phase = $state<Phase>('idle');
  problem = $state<SensorProblem | null>(sensorObstacle());
  wantsSpeed = $state(true);
  /** Seconds after which it stops by itself; 0 never. */
  stopAfterS = $state(60);
  level = $state.raw<LevelCheck>(levelCheck([]));
  rateHz = $state<number | null>(null);
  speed = $state<SpeedState>('off');
  isAwake = $state(false);
  countdownS = $state(0);
  durationS = $state(0);
  samples = $state(0);
  gaps = $state(0);
  file = $state.raw<File | null>(null);
  /** The latest readings, kept for the level check; the recording is apart from it. */
  #latest: MotionSample[] = [];
  #buffer = new RecordingBuffer();
  #undo: (() => void)[] = [];

  /** From a tap: asks for permission and begins to listen. */
  async prepare(): Promise<void> {
    this.problem = sensorObstacle() ?? (await askForMotion());
    if (this.problem) return;
    this.#latest = [];
    this.#undo.push(listenToMotion((sample) => this.#take(sample)));
    if (this.wantsSpeed) this.#watchSpeed();
    this.phase = 'ready';
    const silence = setTimeout(() => {
      if (this.#latest.length > 0) return;
      this.end();
      this.problem = 'silent';
    }, SILENT_MS);
    const showing = setInterval(() => this.#show(), SHOW_MS);
    const returning = (): void => void (document.visibilityState === 'visible' && this.#stayAwake());
    document.addEventListener('visibilitychange', returning);
    this.#undo.push(
      () => clearTimeout(silence),
      () => clearInterval(showing),
      () => document.removeEventListener('visibilitychange', returning),
    );
    await this.#stayAwake();
  }

  /** Counts down, then records. */
  record(): void {
    this.file = null;
    this.countdownS = COUNTDOWN_S;
    this.phase = 'countdown';
    const timer = setInterval(() => {
      if (this.phase !== 'countdown') return clearInterval(timer);
      this.countdownS -= 1;
      if (this.countdownS > 0) return;
      clearInterval(timer);
      this.#buffer = new RecordingBuffer();
      this.#show();
      this.phase = 'recording';
    }, 1000);
    this.#undo.push(() => clearInterval(timer));
  }

  cancelCountdown(): void {
    this.phase = 'ready';
  }

  /** Ends the recording; a file is made where it is long enough to be worth one. */
  stop(): void {
    this.#show();
    const { samples, speeds, durationS } = this.#buffer;
    this.end();
    if (durationS < LEAST_S) {
      this.problem = 'too-short';
      return;
    }
    const name = words.fileName(stampOf(Date.now()));
    this.file = new File([recordingCsv(samples, speeds)], name, { type: 'text/csv' });
    this.phase = 'done';
  }

  /** Lets sensor, place and screen go. */
  end(): void {
    this.#undo.forEach((undo) => undo());
    this.#undo = [];
    this.isAwake = false;
    this.phase = 'idle';
  }

  #take(sample: MotionSample): void {
    this.#latest.push(sample);
    if (this.#latest.length > 400) this.#latest = this.#latest.slice(-200);
    if (this.phase !== 'recording') return;
    this.#buffer.add(sample);
    if (this.stopAfterS > 0 && this.#buffer.durationS >= this.stopAfterS) this.stop();
  }

  #watchSpeed(): void {
    this.speed = 'none';
    const take = (sample: SpeedSample): void => {
      this.speed = sample.speedMps;
      if (this.phase === 'recording') this.#buffer.addSpeed(sample);
    };
    this.#undo.push(watchSpeed(take, (isDenied) => (this.speed = isDenied ? 'denied' : 'missing')));
  }

  #show(): void {
    this.level = levelCheck(this.#latest);
    this.rateHz = measuredRateHz(this.#latest);
    this.durationS = this.#buffer.durationS;
    this.samples = this.#buffer.samples.length;
    this.gaps = this.#buffer.gaps;
  }

  async #stayAwake(): Promise<void> {
    const letGo = await keepAwake();
    this.isAwake = letGo !== null;
    if (!letGo) return;
    if (this.phase === 'idle') letGo();
    else this.#undo.push(letGo);
  }
}
