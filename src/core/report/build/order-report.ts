/** Every expected order of a run with what was measured there, and every peak with what it may be. */
import { limitAt } from '../../diagnosis/origins/absence.ts';
import type { RunEvidence } from '../../diagnosis/observing/run-evidence.ts';
import type { RunInference } from '../../diagnosis/matching/infer-run.ts';
import type { Match } from '../../diagnosis/matching/match.ts';
import type { Origin } from '../../diagnosis/origins/origin.ts';
import { aliasOfHz } from '../../vehicle/alias.ts';
import { expectedPlace } from '../../diagnosis/matching/place.ts';
import { ownerOf, toneOfOrder } from '../../diagnosis/matching/tone-of-order.ts';
import { feltLevel } from '../../signal/felt.ts';
import { velocityMmpsOfSine } from '../../units.ts';
import type { MatchReport, OrderReport, PeakReport } from '../report.ts';

/** From this probability on a tone may be an order's, though it is rather another one's. */
export const SHARED_FROM = 0.03;
const FEW_MATCHES = 6;

/** A tone that may be the order's and is rather another's: what could hide there is all of it. */
const sharedTone = (inference: RunInference, origin: Origin): { match: Match; label: string } | null => {
  const match = toneOfOrder(inference, origin.line.label, ({ probability }) => probability >= SHARED_FROM);
  const other = match?.lines.find(({ origin: { line } }) => line.label !== origin.line.label);
  return match && other && other.probability >= SHARED_FROM ? { match, label: other.origin.line.label } : null;
};

/**
 * The most that could hide at a place, m/s²: what would have been found over the floor, and no less than what the
 * spectrum holds there, which may be a hump of the road's.
 */
const mostHidden = ({ spectrum, limit }: RunEvidence, hz: number, sdHz: number): number => {
  const { amplitudeMps2, stepHz } = spectrum;
  const reachHz = Math.max(sdHz, stepHz);
  const from = Math.max(0, Math.ceil((hz - reachHz) / stepHz));
  const standing = amplitudeMps2.subarray(from, Math.floor((hz + reachHz) / stepHz) + 1);
  return standing.reduce((most, amplitude) => Math.max(most, amplitude), limitAt(limit, hz));
};

export const orderReport = (inference: RunInference, origin: Origin): OrderReport => {
  const { line } = origin;
  const { run } = inference;
  const rate = run.prepared.samplingRateHz;
  const { hz, sdHz } = expectedPlace(inference, origin);
  const base = {
    run: run.name,
    part: line.part,
    ...(line.name === undefined ? {} : { name: line.name }),
    order: line.order,
    label: line.label,
    frequencyHz: hz,
    frequencySdHz: sdHz,
  };
  const seen = toneOfOrder(inference, line.label, (share, match) => ownerOf(match) === share)?.tone.peak;
  const level = seen && {
    amplitudeMps2: seen.amplitudeMps2,
    feltLevel: feltLevel(hz, seen.amplitudeMps2, seen.verticalShare),
  };
  if (hz >= rate / 2) {
    const unseen = { amplitudeMps2: null, feltLevel: null };
    return { ...base, visibility: 'above-nyquist', aliasHz: aliasOfHz(hz, rate), ...(level ?? unseen) };
  }
  if (level) return { ...base, visibility: 'seen', ...level };
  const shared = sharedTone(inference, origin);
  if (shared) {
    const { amplitudeMps2, verticalShare } = shared.match.tone.peak;
    const felt = feltLevel(hz, amplitudeMps2, verticalShare);
    return { ...base, visibility: 'not-seen', sharesLineOf: shared.label, amplitudeMps2, feltLevel: felt };
  }
  const limit = mostHidden(run, hz, sdHz);
  if (!Number.isFinite(limit)) return { ...base, visibility: 'not-seen', amplitudeMps2: null, feltLevel: null };
  return { ...base, visibility: 'not-seen', amplitudeMps2: limit, feltLevel: feltLevel(hz, limit, null) };
};

export const orderReports = (inference: RunInference): OrderReport[] =>
  inference.origins.map((origin) => orderReport(inference, origin));

const matchReports = (inference: RunInference, match: Match): MatchReport[] => {
  const lines = match.lines.slice(0, FEW_MATCHES).map(({ origin, image, probability }): MatchReport => {
    const place = expectedPlace(inference, origin);
    const rate = inference.run.prepared.samplingRateHz;
    return {
      part: origin.line.part,
      ...(origin.line.name === undefined ? {} : { name: origin.line.name }),
      order: origin.line.order,
      label: origin.line.label,
      probability,
      ...(image ? { alias: true } : {}),
      expectedHz: aliasOfHz(place.hz, rate),
      expectedSdHz: place.sdHz,
    };
  });
  const { fixed, resonance } = match.others;
  const named = lines.reduce((sum, line) => sum + line.probability, 0);
  const others: MatchReport[] = [
    { part: 'fixed', order: null, label: 'fixed tone', probability: fixed },
    { part: 'fixed', name: 'resonance', order: null, label: 'resonance shaken by the road', probability: resonance },
    // What is left, so that all add up to 1: no listed part, and noise.
    { part: 'unknown', order: null, label: 'unknown', probability: Math.max(0, 1 - named - fixed - resonance) },
  ];
  return [...lines, ...others].sort((a, b) => b.probability - a.probability);
};

/**
 * Tones weaker than this are let in for the lines they may fall on to judge; by themselves noise gives them too often to
 * be listed as peaks.
 */
const LISTED_FALSE_ALARM = 0.01;

/** Peaks that noise reaches in one recording of a hundred at the most, with what they may belong to. */
export const peakReports = (inference: RunInference): PeakReport[] => {
  const sure = inference.matches.filter(({ tone }) => tone.peak.falseAlarmProbability <= LISTED_FALSE_ALARM);
  return sure.map((match) => {
    const { peak, feltLevel: level } = match.tone;
    return {
      run: inference.run.name,
      frequencyHz: peak.frequencyHz,
      frequencySdHz: peak.frequencySdHz,
      amplitudeMps2: peak.amplitudeMps2,
      axisAmplitudeMps2: peak.axisAmplitudeMps2,
      velocityMmps: velocityMmpsOfSine(peak.amplitudeMps2, peak.frequencyHz),
      feltLevel: level,
      overFloorDb: peak.overFloorDb,
      falseAlarmProbability: peak.falseAlarmProbability,
      verticalShare: peak.verticalShare,
      matches: matchReports(inference, match),
    };
  });
};
