/** An order that shook in parts of a run only: how strongly it was felt there, not on average over the run. */
import type { Span } from '../../reading/cut-recording.ts';
import { feltLevel } from '../../signal/felt.ts';
import { cutPrepared } from '../../signal/prepare/cut-prepared.ts';
import { resampleToEqualAngle, STEADY, type SpeedTrack } from '../../signal/speed/equal-angle.ts';
import { orderLevel } from '../../signal/speed/order-level.ts';
import { BLOCK_S } from '../../signal/speed/order-readings.ts';
import { strongParts } from '../../signal/speed/strong-parts.ts';
import { amplitudeFloor } from '../../signal/spectra/floor.ts';
import { welchAmplitude } from '../../signal/spectra/welch.ts';
import type { RunEvidence } from '../observing/run-evidence.ts';
import { overRoad } from './over-road.ts';
import { FELT_FROM, perceivedAs, type Perceived } from './perceived.ts';

export interface InParts {
  readonly spans: readonly Span[];
  readonly amplitudeMps2: number;
  readonly feltLevel: number;
  readonly overRoad: number;
  /** What is noticed of it, even at the least level that noise leaves open. */
  readonly perceived: Perceived;
}

/** Where the tone stands, and what is known of it from all of the run. */
export interface WholeTone {
  readonly frequencyHz: number;
  readonly trueHz: number;
  readonly verticalShare: number | null;
  readonly overFloorDb: number;
  /** Share of its true level that it shows: of an image less than 1. */
  readonly kept: number;
}

/** Where the speed changed fast blocks are shorter, s: resonances pass within seconds. */
const FAST_BLOCK_S = 2;

/**
 * A tone over the road's own shake, evened by the tone's history: where the speed changes fast its own smear is no road.
 * @param spans the parts in which both are taken; null for all of the run
 */
export const overRoadAlong = (
  run: RunEvidence,
  spans: readonly Span[] | null,
  history: SpeedTrack,
  hz: number,
  amplitudeMps2: number,
): number => {
  const cut = spans ? cutPrepared(run.prepared, spans) : run.prepared;
  const even = history === STEADY ? cut : resampleToEqualAngle(cut, history);
  const spectrum = welchAmplitude(even);
  return overRoad(spectrum, amplitudeFloor(spectrum, cut.pieces[0]?.axes.length), hz, amplitudeMps2);
};

/** @returns null where it was much the same throughout, or nothing is surely noticed of it in those parts */
export const inParts = (run: RunEvidence, tone: WholeTone, history: SpeedTrack): InParts | null => {
  const { frequencyHz, trueHz, verticalShare } = tone;
  const level = orderLevel(run.prepared, frequencyHz, history, run.changedFast ? FAST_BLOCK_S : BLOCK_S);
  const parts = level && strongParts(level);
  if (!parts) return null;
  const isImage = trueHz !== frequencyHz;
  const thereHz = isImage ? trueHz : trueHz * Math.exp(parts.logSpeed);
  const felt = (power: number): number => feltLevel(thereHz, Math.sqrt(power) / tone.kept, verticalShare);
  const least = felt(parts.leastPower);
  const peak = {
    frequencyHz: thereHz,
    amplitudeMps2: Math.sqrt(parts.leastPower) / tone.kept,
    overFloorDb: tone.overFloorDb,
  };
  if (least < FELT_FROM && perceivedAs(peak, least, Infinity) === null) return null;
  const amplitudeMps2 = Math.sqrt(parts.power) / tone.kept;
  const above = isImage ? Infinity : overRoadAlong(run, parts.spans, history, frequencyHz, amplitudeMps2);
  const perceived = perceivedAs({ ...peak, amplitudeMps2 }, felt(parts.power), above);
  return perceived && { spans: parts.spans, amplitudeMps2, feltLevel: felt(parts.power), overRoad: above, perceived };
};
