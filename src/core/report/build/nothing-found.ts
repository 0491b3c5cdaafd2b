/** The answer where nothing a person would notice was found: nothing is there, or nothing could be told. */
import { loudPart } from '../../diagnosis/observing/closer-look.ts';
import { humpOf } from '../../diagnosis/findings/hump.ts';
import { trueToneOf } from '../../diagnosis/findings/true-tone.ts';
import type { RunInference } from '../../diagnosis/matching/infer-run.ts';
import type { Match } from '../../diagnosis/matching/match.ts';
import { feltLevel } from '../../signal/felt.ts';
import { capitalized, hzText, listText, timesText } from '../../words.ts';
import type { Answer } from '../answer.ts';
import { fastLines, hiddenLines, likelyLineAt, noticeable, type FastLine, type HiddenLine } from './unseen-lines.ts';

/** A line shows well, and with room for its speed's error, in a recording so many times as fast. Judgment. */
const ENOUGH_RATE = 2.5;
const RATE_STEP_HZ = 50;
/** No road lets a driver hold one speed for longer, s. Judgment. */
const LONGEST_ADVISED_S = 180;
/** No more lines than this are named. */
const MOST_NAMED = 3;

const named = (lines: readonly { readonly label: string }[], word = 'and'): string =>
  listText(
    lines.slice(0, MOST_NAMED).map(({ label }) => label),
    word,
  );

/** A line as it is felt: an image where its line is, not where it shows. */
const seenAs = (
  inference: RunInference,
  { lines: [line], tone }: Match,
): { readonly label: string; readonly frequencyHz: number; readonly level: number } | null => {
  if (!line || line.probability <= 0.5) return null;
  const { trueHz, amplitudeMps2 } = trueToneOf(inference, line, tone);
  const level = feltLevel(trueHz, amplitudeMps2, tone.peak.verticalShare);
  return { label: line.origin.line.label, frequencyHz: trueHz, level };
};

/** What a smoother road could show: on this one no person would notice it. */
const underRoad = (inferences: readonly RunInference[]): string => {
  const hidden = hiddenLines(inferences);
  const [worst] = hidden;
  if (!worst) return '';
  return (
    ` ${capitalized(named(hidden, 'or'))} could be there up to felt level ${worst.felt.toFixed(1)} (1 is just felt): ` +
    'the road covers that here, so that a person hardly notices it, and only a smoother one would let it be felt.'
  );
};

const BURSTS =
  'Shakes that come and go were looked for in stretches of some five seconds; shorter ones are not cleared.';

/** A felt hump is no order, but the person feels it: ' What is felt is a hump at 27.5 Hz …'; nothing where there is none. */
const humpText = (inferences: readonly RunInference[]): string => {
  const humps = inferences.flatMap((inference) => humpOf(inference) ?? []).sort((a, b) => b.feltLevel - a.feltLevel);
  const [hump] = humps;
  if (!hump) return '';
  return (
    ` What is felt is a hump at ${hzText(hump.frequencyHz)}, ${timesText(hump.feltLevel)} what a person just ` +
    'feels: no order, but a resonance of body, frame or seat that the road shakes.'
  );
};

const nothingFelt = (inferences: readonly RunInference[]): Answer => {
  const seen = inferences
    .flatMap((inference) => inference.matches.flatMap((match) => seenAs(inference, match) ?? []))
    .sort((a, b) => b.level - a.level);
  const strongest = seen[0];
  if (!strongest) {
    return {
      verdict: 'nothing-felt',
      sentence:
        'No order here that a person would feel: no line of any turning part rises out of the noise.' +
        humpText(inferences),
      why: `Every expected order that could be noticed all along this road would have been seen. ${BURSTS}${underRoad(inferences)}`,
    };
  }
  return {
    verdict: 'nothing-felt',
    sentence:
      `No order here that a person would feel. The strongest is ${strongest.label} at ` +
      `${hzText(strongest.frequencyHz)}, ${Math.max(1, Math.round(100 * strongest.level))} % of what is just felt.${humpText(inferences)}`,
    why:
      `${seen.length} small ${seen.length === 1 ? 'order was' : 'orders were'} measured, as every sound vehicle has; ` +
      `any other that could be noticed all along this road would have been seen. ${BURSTS}${underRoad(inferences)}`,
  };
};

/** What keeps the answer open: how the sentence goes on, and why. */
interface Reservation {
  readonly clause: string;
  readonly why: string;
}

const inNoise = (hidden: readonly HiddenLine[]): Reservation | null => {
  const [worst] = hidden;
  if (!worst) return null;
  const { durationS } = worst.run.run.prepared;
  // The limit falls with the fourth root of time in averaged spectra.
  const longer = durationS * worst.felt ** 4;
  const remedy =
    longer <= LONGEST_ADVISED_S
      ? `About ${Math.ceil(longer / 10) * 10} s at the same steady speed, or a smoother road, would show it.`
      : 'A smoother road is needed to show it; a longer recording alone would not do.';
  return {
    clause: `${named(hidden)} could be felt and still hide in the noise of this road`,
    why: `At ${worst.label} the noise hides lines up to felt level ${worst.felt.toFixed(1)} (1 is just felt). ${remedy}`,
  };
};

/** On a road that covers what would be felt so strongly on a smooth one nothing is cleared. Judgment. */
const ROUGH_FROM = 3;

const underRough = (hidden: readonly HiddenLine[]): Reservation | null => {
  const rough = hidden.filter(({ felt }) => felt >= ROUGH_FROM);
  const [worst] = rough;
  return (
    (worst && {
      clause: `${named(rough)} could hide under the shake of so rough a road`,
      why:
        `${capitalized(worst.label)} could be there up to felt level ${worst.felt.toFixed(1)} (1 is just felt), which a ` +
        'person hardly notices on this road but would on a smooth one. Record on a smoother road.',
    }) ??
    null
  );
};

const aboveRate = (fast: readonly FastLine[]): Reservation | null => {
  const [first] = fast;
  if (!first) return null;
  const highestHz = fast.reduce((most, { hz }) => Math.max(most, hz), 0);
  const enoughHz = Math.ceil((ENOUGH_RATE * highestHz) / RATE_STEP_HZ) * RATE_STEP_HZ;
  const verb = fast.length === 1 ? 'turns' : 'turn';
  return {
    clause: `${named(fast)} ${verb} too fast for a recording at ${first.rateHz.toFixed(0)} Hz`,
    why:
      `${capitalized(first.label)} is expected at ${hzText(first.hz)}, and only what lies clearly below half the sampling ` +
      `rate is shown as it is. Record at ${enoughHz} Hz or more.`,
  };
};

/** Where no log tells the speed, a drive of several speeds smears every line. */
export const uneven = (inferences: readonly RunInference[]): Reservation | null => {
  const runs = inferences.filter(({ run }) => run.unevenShake !== null);
  const [first] = runs;
  if (!first) return null;
  const times = timesText(Math.max(...runs.map(({ run }) => run.unevenShake ?? 1)));
  return {
    clause: 'this was no drive at one speed on one road',
    why:
      `In ${first.run.name} the whole shake is ${times} as strong at some times as at others, and no speed was logged ` +
      'beside it: what shakes at one speed is lost among the others. Use the part that was driven steadily, or record ' +
      'with a speed log.',
  };
};

/** Where the speed changed fast, what shook in one part of the run and fits no order is not cleared. */
const loudForAWhile = (inferences: readonly RunInference[]): Reservation | null => {
  for (const { run } of inferences) {
    const part = loudPart(run)?.spans[0];
    if (!part) continue;
    const span = `${part.fromS.toFixed(0)} to ${part.toS.toFixed(0)} s`;
    return {
      clause: 'it shook far more at some times than at others',
      why:
        `In ${run.name} it shook most from ${span}, and no order was found that explains it. Record that again, with ` +
        'the speed logged, a few times in one recording; or hold the speed at which it shakes.',
    };
  }
  return null;
};

/** Where it changed fast, that nothing was found clears nothing: orders stand spread out, and low for it. */
const changedFast = (inferences: readonly RunInference[]): Reservation | null => {
  const lost = inferences.find(({ run }) => run.changedFast);
  if (!lost) return null;
  return {
    clause: 'the speed changed too fast to follow every order',
    why:
      `In ${lost.run.name} it changed by so much within seconds that an order is seen only where it stands out. Move ` +
      'off more slowly, or hold the speed at which it shakes.',
  };
};

/** Where no history of the speed was found, an order is as wide as the speed wandered: like a resonance. */
const humpAtOrder = (inferences: readonly RunInference[]): Reservation | null => {
  for (const inference of inferences) {
    const hump = inference.run.histories.count === 0 ? humpOf(inference) : null;
    const label = hump && likelyLineAt(inference, hump.frequencyHz);
    if (!label) continue;
    return {
      clause: `what is felt is a hump at ${hzText(hump.frequencyHz)}, where ${label} is expected`,
      why:
        `The hump at ${hzText(hump.frequencyHz)} is ${timesText(hump.feltLevel)} what a person just feels. It may be ` +
        `${label}, spread by a speed that was not held, or a resonance that the road shakes: no history of the speed was ` +
        'found that would tell. Record it again by cruise control or with the speed logged, and at a speed a tenth ' +
        'higher: an order moves with it, a resonance stays.',
    };
  }
  return null;
};

export const nothingFound = (inferences: readonly RunInference[]): Answer => {
  const drive = uneven(inferences) ?? loudForAWhile(inferences) ?? changedFast(inferences);
  const hidden = hiddenLines(inferences);
  const noise = inNoise(noticeable(hidden)) ?? underRough(hidden);
  const hump = noise ? null : humpAtOrder(inferences);
  const reservations = [drive, noise, hump, aboveRate(fastLines(inferences))].filter((one) => one !== null);
  if (reservations.length === 0) return nothingFelt(inferences);
  const what = drive || noise || hump ? 'nothing' : 'nothing that this recording can show';
  return {
    verdict: 'cannot-tell',
    sentence: `Cannot tell: ${what} stands out, but ${reservations.map(({ clause }) => clause).join(', and ')}.`,
    why: reservations.map(({ why }) => why).join(' '),
  };
};
