/** From matches to findings: what a person feels or hears, whose it is, and how sure. */
import { isSameTone } from './same-tone.ts';
import { feltLevel } from '../../signal/felt.ts';
import type { Span } from '../../reading/cut-recording.ts';
import type { Peak } from '../../signal/peaks/peak.ts';
import type { Match, OriginShare } from '../matching/match.ts';
import type { RunInference } from '../matching/infer-run.ts';
import { withTwins } from '../matching/tone-of-order.ts';
import { faultShare } from '../origins/levels.ts';
import { toneHistory } from './tone-history.ts';
import { stoodStill, wentAlong } from '../observing/tone-motion.ts';
import type { Tone } from '../origins/tone.ts';
import { isMadeAtEndStop } from './end-stop.ts';
import type { Finding } from './finding.ts';
import { inParts, overRoadAlong } from './in-parts.ts';
import { NOTICED_FROM, overRoad } from './over-road.ts';
import { perceivedAs, type Perceived } from './perceived.ts';
import { trueToneOf } from './true-tone.ts';
import { amongTurns } from './turns.ts';

/** A tone that is a resonance or a chance peak more likely than not is no finding. */
const LEAST_LINE = 0.5;

/** How surely a track tells the mean speed: lines on it share this relative error. Judgment from trials. */
const TRACK_SD = 5e-5;

/** @param trueHz of an image that of its line, which is what moves along the track */
const frequencySdOf = (inference: RunInference, { frequencySdHz }: Peak, trueHz: number): number =>
  Math.hypot(frequencySdHz, inference.run.histories.count > 0 ? TRACK_SD * trueHz : 0);

/** The wheels' speed (or that they stand) and the engine's are known, so that every part that turns has its lines. */
const allComputed = ({ run }: RunInference): boolean =>
  run.expected !== null &&
  (run.expected.wheelHz !== null || run.condition.load === 'standing') &&
  (run.expected.engineHz !== null || run.isElectric);

/** A tone taken for one origin, or (null) for none of the lines: where it then truly is, and what is noticed of it. */
interface Reading extends Pick<Finding, 'chosen' | 'trueHz' | 'during' | 'amplitudeMps2' | 'feltLevel' | 'overRoad'> {
  readonly perceived: Perceived | null;
}

const readAs = (inference: RunInference, tone: Tone, chosen: OriginShare | null): Reading => {
  const { run } = inference;
  const { peak } = tone;
  const { trueHz, amplitudeMps2 } = trueToneOf(inference, chosen, tone);
  const { frequencyHz } = peak;
  const history = toneHistory(inference, chosen, trueHz, frequencyHz);
  const kept = peak.amplitudeMps2 / amplitudeMps2;
  const parts = run.part ? null : inParts(run, { ...peak, trueHz, kept }, history);
  if (parts) return { ...parts, chosen, trueHz, during: parts.spans };
  const level = feltLevel(trueHz, amplitudeMps2, peak.verticalShare);
  // What lies about the true place of an image, the recording does not show.
  const above = chosen?.image
    ? Infinity
    : run.changedFast
      ? overRoadAlong(run, null, history, trueHz, amplitudeMps2)
      : overRoad(run.spectrum, run.floorMps2, trueHz, amplitudeMps2);
  const perceived = perceivedAs({ ...peak, amplitudeMps2, frequencyHz: trueHz }, level, above);
  return { chosen, trueHz, during: run.part, amplitudeMps2, feltLevel: level, overRoad: above, perceived };
};

/**
 * The likeliest origin decides what a tone is taken for, unless nothing would be noticed of it there while the others,
 * more likely than not, are noticed: then the likeliest of these does (an image may be a drone or a faint hum).
 */
const readingOf = (inference: RunInference, match: Match): Reading => {
  const { tone, lines, others } = match;
  const candidates = lines.filter((share) => withTwins(share, match) >= Math.max(others.fixed, others.unlisted));
  const first = readAs(inference, tone, candidates[0] ?? null);
  if (first.perceived) return first;
  const noticed = candidates.map((share) => readAs(inference, tone, share)).filter(({ perceived }) => perceived);
  const likely = noticed.reduce((sum, { chosen }) => sum + (chosen?.probability ?? 0), 0);
  return likely > 0.5 ? noticed[0]! : first;
};

/**
 * Probability that a line is more than a sound vehicle's. What is uneven about a tire shakes at several of its orders: where
 * one of them is a fault's, so are the others. (An engine's or a driveshaft's have causes of their own.)
 */
const faultShareOf = (inference: RunInference, { origin }: OriginShare, amplitudeMps2: number): number => {
  const own = faultShare(origin.levels, amplitudeMps2);
  if (origin.line.part !== 'tire') return own;
  const others = inference.matches.flatMap(({ tone, lines: [likeliest] }) =>
    likeliest?.origin.line.part === 'tire' && likeliest.probability >= LEAST_LINE
      ? [faultShare(likeliest.origin.levels, tone.peak.amplitudeMps2)]
      : [],
  );
  return Math.max(own, ...others);
};

const findingOf = (inference: RunInference, match: Match): Finding | null => {
  const { peak } = match.tone;
  const { resonance, noise, fixed, unlisted } = match.others;
  if (resonance + noise > 1 - LEAST_LINE) return null;
  const reading = readingOf(inference, match);
  const { chosen, feltLevel: level, overRoad: above, perceived } = reading;
  if (!perceived) return null;
  const frequencySdHz = frequencySdOf(inference, peak, reading.trueHz);
  const noticed = Math.max(1, level * Math.min(1, above / NOTICED_FROM));
  const base = { ...reading, inference, match, frequencySdHz, perceived };
  if (chosen) {
    const { line } = chosen.origin;
    return {
      ...base,
      part: line.part,
      ...(line.name === undefined ? {} : { name: line.name }),
      order: line.order,
      label: line.label,
      ...(line.role === undefined ? {} : { role: line.role }),
      probability: chosen.probability,
      weight: noticed * chosen.probability * faultShareOf(inference, chosen, reading.amplitudeMps2),
    };
  }
  // Where some parts' rates are not known, a tone that fits nothing may still be theirs.
  const mayBeUncomputed = !allComputed(inference) && !stoodStill(inference.run, match.tone);
  const isOpen = mayBeUncomputed || wentAlong(inference.run, match.tone);
  const isFixed = fixed >= unlisted && !isOpen;
  const probability = isFixed ? fixed : isOpen ? fixed + unlisted : unlisted;
  return {
    ...base,
    part: isFixed ? 'fixed' : 'unknown',
    order: null,
    label: isFixed ? 'fixed tone' : 'unknown tone',
    probability,
    weight: noticed * probability,
  };
};

/** The multiples of a knock are one shake; 4× of a driveshaft, 3× and 4× of a tire are among them where there is a knock. */
const isOneKnock = (a: Finding, b: Finding): boolean => {
  const isMultiple = ({ role, part, order }: Finding): boolean =>
    role === 'knock' || role === 'companion' || (part === 'tire' && (order ?? 0) > 2);
  const knocks = a.role === 'knock' || b.role === 'knock';
  return knocks && isMultiple(a) && isMultiple(b) && a.part === b.part && a.name === b.name;
};

/** The knock that a multiple belongs to: it tells the causes of all of them. */
const knockOf = (multiple: Finding, all: readonly Finding[]): Finding | undefined =>
  all.find((finding) => finding.role === 'knock' && isOneKnock(finding, multiple));

/** Tones of one origin in one or several runs make one finding: the weightiest. */
const sameSource = (a: Finding, b: Finding): boolean =>
  isOneKnock(a, b) || (a.label === b.label && (a.order !== null || isSameTone(a.trueHz, b.trueHz))) || isRestOf(a, b);

/** A tone may still be another line's from this probability on, and is what is left of it this near to it, relative. */
const MAY_BE = 0.1;
const BESIDE = 0.01;

/** What a sweep leaves beside a line that two origins share is no second fault of the other one's. */
const isRestOf = (line: Finding, rest: Finding): boolean =>
  line.inference === rest.inference &&
  Math.abs(line.match.tone.peak.frequencyHz - rest.match.tone.peak.frequencyHz) <
    BESIDE * line.match.tone.peak.frequencyHz &&
  line.match.lines.some(({ origin, probability }) => origin.line.label === rest.label && probability >= MAY_BE);

/** A shake of some seconds has a line so wide, Hz. */
const BURST_HZ = 0.5;

const overlap = (a: readonly Span[], b: readonly Span[]): boolean =>
  a.some((one) => b.some((other) => one.fromS < other.toS && other.fromS < one.toS));

/** A tone of no part beside a line that shook in the same parts of the run is left of that line. */
const isLeftOfBurst = (tone: Finding, line: Finding): boolean =>
  tone.chosen === null &&
  line.chosen !== null &&
  tone.during !== null &&
  line.during !== null &&
  tone.inference === line.inference &&
  Math.abs(tone.trueHz - line.trueHz) < BURST_HZ &&
  overlap(tone.during, line.during);

/** What the road covers comes after what a person notices, where that is sure. */
const coveredLast = (findings: readonly Finding[]): readonly Finding[] => {
  const isCovered = ({ perceived }: Finding): boolean => perceived === 'buried';
  const isPlain = (finding: Finding): boolean =>
    !isCovered(finding) && finding.chosen !== null && finding.probability >= LEAST_LINE;
  if (!findings.some(isPlain)) return findings;
  return [...findings.filter((one) => !isCovered(one)), ...findings.filter(isCovered)];
};

/** All findings, most important first. */
export const findingsOf = (inferences: readonly RunInference[]): readonly Finding[] => {
  const all = inferences
    .flatMap((inference) => inference.matches.map((match) => findingOf(inference, match)))
    .filter((finding) => finding !== null)
    .sort((a, b) => b.weight - a.weight);
  const whole = all.filter(
    (finding) =>
      !all.some((line) => line.probability >= LEAST_LINE && isLeftOfBurst(finding, line)) &&
      !all.some((line) => isMadeAtEndStop(finding, line)),
  );
  const told = whole.map((finding) => knockOf(finding, whole) ?? finding);
  const own = told.filter((finding, i) => !told.slice(0, i).some((before) => sameSource(before, finding)));
  return coveredLast(own.map((finding) => amongTurns(finding, own)).sort((a, b) => b.weight - a.weight));
};
