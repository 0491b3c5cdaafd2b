/** What speaks for a finding, what against, and what is missing: sentences a sceptic can follow. */
import { missingData } from '../../vehicle/missing-data.ts';
import type { Vehicle } from '../../vehicle/vehicle.ts';
import type { Finding } from './finding.ts';
import { heldWithin } from '../origins/held-speed.ts';
import { expectedPlace, type ExpectedPlace } from '../matching/place.ts';
import type { RunInference } from '../matching/infer-run.ts';
import { instantsSentence } from './reasons-by-instants.ts';
import { CLEAR_MOTION, evidenceAt, evidenceInStep, stoodStill } from '../observing/tone-motion.ts';
import { spansText } from '../observing/closer-look.ts';
import { capitalized, hzText, listText } from '../../words.ts';
import { ownerOf } from '../matching/tone-of-order.ts';

export interface Reasons {
  readonly for: readonly string[];
  readonly against: readonly string[];
  readonly missing: readonly string[];
}

/** Rivals below this are not worth a sentence. */
const RIVAL = 0.02;
/** What is no line is worth a sentence from here on: it leaves the answer open. */
const LEFT_OPEN = 0.15;

const placeText = ({ hz, sdHz }: ExpectedPlace): string =>
  `${hz.toFixed(sdHz < 0.05 ? 2 : 1)} ± ${Math.max(sdHz, 0.01).toFixed(sdHz < 0.05 ? 2 : 1)} Hz`;

/** What turns nearer than this turns at the same rate. */
const LEAST_APART_HZ = 0.1;

/** The nearest expected line that is not the chosen one, and its distance. */
const nearestOther = (finding: Finding): { label: string; apartHz: number } | null => {
  const { inference, chosen } = finding;
  let nearest: { label: string; apartHz: number } | null = null;
  for (const origin of inference.origins) {
    if (chosen && origin.line.label === chosen.origin.line.label) continue;
    const apartHz = Math.abs(expectedPlace(inference, origin).hz - finding.trueHz);
    if (!nearest || apartHz < nearest.apartHz) nearest = { label: origin.line.label, apartHz };
  }
  return nearest;
};

/** Another order of the part below this share of the level is the small normal one, and says nothing. Judgment. */
const LEAST_COMPANION = 0.15;

const companionsSeen = (inference: RunInference, part: string, label: string, amplitudeMps2: number): string[] =>
  inference.matches.flatMap((match) => {
    const top = ownerOf(match);
    if (match.tone.peak.amplitudeMps2 < LEAST_COMPANION * amplitudeMps2) return [];
    return top && top.origin.line.part === part && top.origin.line.label !== label
      ? [`${capitalized(top.origin.line.label)} is seen too, at ${hzText(match.tone.peak.frequencyHz)}.`]
      : [];
  });

/** What the tone's own motion says, where the speed moved enough to tell. */
const motionSentence = (finding: Finding): { text: string; speaksFor: boolean } | null => {
  const { inference, match, chosen } = finding;
  const { motion } = match.tone;
  if (!motion) return null;
  const { run } = inference;
  const most = evidenceInStep(run, match.tone);
  if (chosen?.image) {
    const text =
      'It moved as the image of an order above half the sampling rate does: by more hertz, or the other way.';
    const image = Math.max(evidenceAt(run, match.tone, finding.trueHz), evidenceAt(run, match.tone, -finding.trueHz));
    return image > Math.max(most, motion.still) + CLEAR_MOTION ? { text, speaksFor: true } : null;
  }
  if (most > motion.still + CLEAR_MOTION) {
    return { text: 'It rose and fell in step with the speed, as an order does.', speaksFor: chosen !== null };
  }
  if (stoodStill(run, match.tone)) {
    return { text: 'It stayed at its frequency while the speed changed.', speaksFor: finding.part === 'fixed' };
  }
  return null;
};

/** From this share on a tone holds its frequency no better than a driver may hold a speed. */
const HELD_BY_DRIVERS = 1e-3;

/** Where no history of the speed was found: how closely the tone held its frequency, if more so than speeds are held. */
const steadySentence = ({ match: { tone }, inference, chosen }: Finding): string | null => {
  const within = inference.run.histories.count === 0 ? heldWithin(tone.peak) : null;
  if (within === null || within > HELD_BY_DRIVERS) return null;
  const held = `It held its frequency within ${(100 * within).toFixed(within < 1e-4 ? 3 : 2)} %`;
  return chosen
    ? `${held}, closer than a driver holds a speed: unless rollers or a governor held it, it may be no order.`
    : `${held}; a driver holds a speed to some tenths of a percent, and an order would be blurred by that.`;
};

/** Pulleys and geared pumps turn so many times as fast as an engine. Common practice, no source. */
const PULLEY_RATIOS = { least: 0.5, most: 4 };
/** An engine's speed must be known so well, relative, for a ratio to it to be told. */
const ENGINE_KNOWN = 0.005;

/** A tone of no listed part may be an accessory that was not listed: the ratio it would have. */
const pulleySentence = ({ part, trueHz, inference }: Finding): string | null => {
  const { run, posterior } = inference;
  const engineHz = run.expected?.engineHz;
  if (part !== 'unknown' || run.isElectric || !engineHz || posterior.engine.sd > ENGINE_KNOWN) return null;
  const ratio = trueHz / (engineHz * Math.exp(posterior.engine.mean));
  if (ratio < PULLEY_RATIOS.least || ratio > PULLEY_RATIOS.most) return null;
  return `It turns at ${ratio.toFixed(2)} times engine speed: look for an accessory with a pulley of that ratio, and list it.`;
};

/** Tones that take turns are most likely one, and the statement was of one of its speeds. */
const turnsSentence = ({ turns }: Finding): string | null => {
  if (!turns) return null;
  const others = turns.map(({ trueHz, during }) => `${hzText(trueHz)} (${spansText(during ?? [])})`);
  return (
    `It takes turns with what shakes at ${listText(others)}: most likely one order at several speeds or in several ` +
    'gears, of which one was stated. Judge the part driven as stated by itself.'
  );
};

export const reasonsOf = (finding: Finding, vehicle: Vehicle): Reasons => {
  const { inference, match, chosen } = finding;
  const { peak, motion } = match.tone;
  const speaksFor: string[] = [];
  const against: string[] = [];
  const turns = turnsSentence(finding);
  if (turns) against.push(turns);
  const steady = steadySentence(finding);
  if (steady) (chosen ? against : speaksFor).push(steady);
  if (chosen) {
    const place = expectedPlace(inference, chosen.origin);
    const seen = chosen.image
      ? `; sampled at ${inference.run.prepared.samplingRateHz.toFixed(0)} Hz it shows as its image at ${hzText(peak.frequencyHz)}`
      : '';
    speaksFor.push(`Expected at ${placeText(place)}, found at ${hzText(finding.trueHz)}${seen}.`);
    speaksFor.push(...companionsSeen(inference, finding.part, finding.label, peak.amplitudeMps2).slice(0, 2));
  }
  const nearest = nearestOther(finding);
  const isApart = nearest !== null && nearest.apartHz >= LEAST_APART_HZ;
  if (isApart && !match.lines.some((l) => l.origin.line.label === nearest.label && l.probability > RIVAL)) {
    const text = `Nothing else that turns comes within ${hzText(nearest.apartHz)}: the nearest is ${nearest.label}.`;
    speaksFor.push(text);
  }
  speaksFor.push(`It stands ${peak.overFloorDb.toFixed(0)} dB over the noise around it.`);
  const moved = motionSentence(finding);
  if (moved) (moved.speaksFor ? speaksFor : against).push(moved.text);
  const timed = instantsSentence(finding);
  if (timed) (timed.speaksFor ? speaksFor : against).push(timed.text);
  for (const rival of match.lines) {
    if (chosen && rival.origin.line.label === chosen.origin.line.label) continue;
    if (rival.probability >= RIVAL) {
      const image = rival.image ? ', as an image of what lies above half the sampling rate,' : '';
      against.push(
        `${capitalized(rival.origin.line.label)}${image} could make it too (${Math.round(100 * rival.probability)} in 100).`,
      );
    }
  }
  const own = match.others.fixed + match.others.unlisted;
  if (chosen && own >= RIVAL) {
    against.push(`A tone that belongs to no listed part could stand here (${Math.round(100 * own)} in 100).`);
  }
  const { unlisted, resonance, noise } = match.others;
  if (finding.part === 'fixed' && unlisted >= LEFT_OPEN) {
    against.push(`A part that is not listed could make it too (${Math.round(100 * unlisted)} in 100).`);
  }
  if (resonance + noise >= LEFT_OPEN) {
    against.push(`The road’s own shake could look like it (${Math.round(100 * (resonance + noise))} in 100).`);
  }
  const pulley = pulleySentence(finding);
  const missing = [
    ...(pulley ? [pulley] : []),
    ...missingData(vehicle, inference.run.condition).map((datum) => datum.text),
  ];
  if (!motion && own >= RIVAL) {
    missing.push('A run in which the speed changes slowly: it would show whether the tone follows the speed.');
  }
  return { for: speaksFor, against, missing };
};
