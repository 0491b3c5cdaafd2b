/** What a tone's own motion says, where the speed moved enough to tell. */
import { isOnTrack } from '../origins/motion-model.ts';
import type { RunEvidence } from './run-evidence.ts';
import type { Tone } from '../origins/tone.ts';

/** ln evidence from which one way to move is told in words as the right one. Judgment. */
export const CLEAR_MOTION = 4;

/** ln evidence that the tone moved by `slopeHz` per unit of ln speed of one of the run's histories: the best of them. */
export const evidenceAt = ({ histories }: RunEvidence, { motion }: Tone, slopeHz: number): number =>
  Math.max(-Infinity, ...Array.from({ length: histories.count }, (_, k) => motion?.along(k, slopeHz) ?? -Infinity));

/** The same for a tone that moved in step with the speed, as an order seen directly does. */
export const evidenceInStep = (run: RunEvidence, tone: Tone): number => evidenceAt(run, tone, tone.peak.frequencyHz);

/** True where the tone clearly moved in step with the speed, and not by itself alone: then it is not fixed, whatever it is. */
export const wentAlong = (run: RunEvidence, tone: Tone): boolean =>
  tone.motion !== null &&
  evidenceInStep(run, tone) > tone.motion.still + CLEAR_MOTION &&
  run.tones.some((other) => other !== tone && isOnTrack(other, run.histories));

/** True where the speed moved and the tone clearly did not. */
export const stoodStill = (run: RunEvidence, tone: Tone): boolean =>
  tone.motion !== null && run.histories.count > 0 && tone.motion.still > evidenceInStep(run, tone) + CLEAR_MOTION;
