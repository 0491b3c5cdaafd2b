/** The tones of a run: peaks of the recording as it is, and of the recording made even by each speed track. */
import { findPeaks } from '../../signal/peaks/detect.ts';
import { relativeSpeedAt, STEADY, type SpeedTrack } from '../../signal/speed/equal-angle.ts';
import { feltLevel } from '../../signal/felt.ts';
import type { Peak } from '../../signal/peaks/peak.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';
import { withWanderingLevel } from './wandering-level.ts';
import { withoutMotion } from '../../signal/speed/without-motion.ts';
import { withSweptLevel } from '../track/swept-level.ts';
import type { ImageMotion, Tone, ToneFold } from '../origins/tone.ts';
import { wholeSpectra } from '../track/basebands.ts';
import { isCountedTwice } from './counted-twice.ts';
import { findImages } from './find-images.ts';
import { FALSE_ALARM, peaksOn, hasSwept } from './peaks-on-track.ts';
import type { FoldsOfTone } from './tone-folds.ts';
import { isSideTone } from './side-tones.ts';
import { motionOf, type Motion } from '../track/motion.ts';

/** What was held to stand still while peaks were searched: the recording, what moves with a track, or one image. */
interface Domain {
  /** −1: none. */
  readonly track: number;
  readonly image: ImageMotion | null;
}

/** A peak, where it was found, and how the tone moved. */
interface Found {
  readonly peak: Peak;
  readonly domain: Domain;
  readonly motion: Motion;
  /** Evidence for a line in its own domain, and the best in any. */
  readonly own: number;
  readonly most: number;
}

/** A peak this much better explained (in ln) in another domain is a smear there, not a line here. */
const BETTER_ELSEWHERE = 4;
/** What stays needs no history, and what moves with one is no image: where evidence (ln) hardly differs the plainer holds. */
const NEEDS = { clock: 0, track: 2, image: 10 } as const;
/** A smear of a stronger tone has less amplitude than this share of it, or less evidence than the other. */
const SMEAR_SHARE = 0.7;
const SMEAR_EVIDENCE = 0.3;
/**
 * One that is so many times as broad needs only this: an order that fades, or comes for a while, stands still for about
 * as long as it is loud, and its smear is then as high as its line.
 */
const SMEAR_BROADER = 1.5;
const SMEAR_BROAD_EVIDENCE = 0.6;
/** A smear reaches a little beyond how far its tone moved (J. R. Carson, Proc. IRE 10, 1922: by the rate of the motion). */
const SMEAR_BEYOND = 1.25;
const NEAR_BINS = 3;
/** A tone this much weaker, this near to another (Hz), is that one's foot: jitter and pulsing widen strong tones there. */
const FOOT_SHARE = 0.1;
const FOOT_HZ = 0.15;
/** Nearer still, within so many of its least widths, half of it is: its own shoulder, where it wanders a little. */
const SHOULDER_SHARE = 0.5;
/** An order that sweeps through resonances comes and goes, and splits in two that are nearly alike; its shoulders are broad. */
const SWEPT_SHOULDER_SHARE = 1;
const SHOULDER_WIDTHS = 2;
/**
 * The phase of an order that sweeps through resonances holds about this long, s; one that is this much broader than the
 * whole recording would leave it did so. Judgment.
 */
const SWEPT_SLICE_S = 8;
const SWEPT_BROAD_BINS = 6;
/** Two tones this far apart (relative) have parted, this near they are together. */
const WIDELY = 0.1;
const TOGETHER = 0.02;

const kindOf = ({ track, image }: Domain): keyof typeof NEEDS => (image ? 'image' : track < 0 ? 'clock' : 'track');

/** Hertz by which a tone at a frequency moves per unit of relative speed. */
const slopeIn = ({ image }: Domain, frequencyHz: number): number => image?.slopeHz ?? frequencyHz;

const evidenceIn = (motion: Motion, domain: Domain, frequencyHz: number): number =>
  domain.track < 0 ? motion.still : motion.along(domain.track, slopeIn(domain, frequencyHz));

/** How far apart (Hz) two domains take a tone at a frequency. @param relative speeds of each track at some times */
const reachBetween = (relative: readonly Float64Array[], a: Domain, b: Domain, frequencyHz: number): number => {
  const moved = (domain: Domain, i: number): number =>
    domain.track < 0 ? 0 : slopeIn(domain, frequencyHz) * (relative[domain.track]![i]! - 1);
  return relative[0]!.reduce((most, _, i) => Math.max(most, Math.abs(moved(a, i) - moved(b, i))), 0);
};

/** Where a tone found in a domain was at each of the times, Hz. */
const pathOf = (relative: readonly Float64Array[], { domain, peak: { frequencyHz } }: Found): readonly number[] =>
  Array.from(relative[0]!, (_, i) =>
    domain.track < 0 ? frequencyHz : frequencyHz + slopeIn(domain, frequencyHz) * (relative[domain.track]![i]! - 1),
  );

/**
 * True where two tones that part widely at some times keep together at most: one tone, found on two histories that agree
 * there, as those of road and engine do once a launch has closed the gap between them.
 */
const keepTogether = (relative: readonly Float64Array[], one: Found, other: Found): boolean => {
  const theirs = pathOf(relative, other);
  const shares = pathOf(relative, one).map((hz, i) => Math.abs(hz / theirs[i]! - 1));
  return (
    shares.some((share) => share > WIDELY) && shares.filter((share) => share < TOGETHER).length > shares.length / 2
  );
};

const toTone = (
  peak: Peak,
  folds: readonly ToneFold[],
  motion: Motion | null,
  imageMotion: ImageMotion | null,
): Tone => ({
  peak,
  folds,
  feltLevel: feltLevel(peak.frequencyHz, peak.amplitudeMps2, peak.verticalShare),
  motion,
  imageMotion,
});

const isFootOf = (peak: Peak, strong: Peak, swept: boolean): boolean => {
  const apartHz = Math.abs(peak.frequencyHz - strong.frequencyHz);
  const share = peak.amplitudeMps2 / strong.amplitudeMps2;
  const shoulderHz = SHOULDER_WIDTHS * strong.limitWidthHz;
  return (
    (share < FOOT_SHARE && apartHz < FOOT_HZ) ||
    (share < (swept ? SWEPT_SHOULDER_SHARE : SHOULDER_SHARE) &&
      apartHz < (swept ? Math.max(shoulderHz, peak.widthHz) : shoulderHz))
  );
};

/** Without feet and side tones of strong tones: they are no lines of their own, and would count for one part over and over. */
const withoutFeet = (tones: readonly Tone[], swept = false): readonly Tone[] => {
  const peaks = tones.map(({ peak }) => peak);
  const footless = tones.filter(({ peak }) => !peaks.some((other) => isFootOf(peak, other, swept)));
  return footless.filter(({ peak }) => !isSideTone(peak, peaks));
};

/** True where a tone is weak enough beside another to be its smear. */
const isLess = (one: Found, other: Found): boolean => {
  if (one.peak.amplitudeMps2 < SMEAR_SHARE * other.peak.amplitudeMps2) return true;
  const isBroad = one.peak.widthHz > SMEAR_BROADER * other.peak.widthHz;
  return one.own < (isBroad ? SMEAR_BROAD_EVIDENCE : SMEAR_EVIDENCE) * other.own;
};

/** Times at which the tracks are compared. */
const TIMES = 60;

/** The expected lines, and the rate of the recording at which those above its half fold. */
export interface ExpectedTones {
  readonly linesHz: readonly number[];
  readonly samplingRateHz: number;
  readonly foldsOf: FoldsOfTone;
}

/** @param evens the recording made even by each of the tracks */
export const findTones = (
  prepared: Prepared,
  tracks: readonly SpeedTrack[],
  evens: readonly Prepared[],
  { linesHz, samplingRateHz, foldsOf }: ExpectedTones,
): readonly Tone[] => {
  const onClock = findPeaks(prepared, { falseAlarm: FALSE_ALARM });
  if (tracks.length === 0) {
    const toneOf = (peak: Peak): Tone => {
      const leveled = withWanderingLevel(peak, onClock, prepared, STEADY);
      const folds = foldsOf(() => peak.frequencyHz, peak.frequencyHz);
      return toTone(leveled, folds, null, null);
    };
    return withoutFeet(onClock.map(toneOf));
  }
  const spectra = wholeSpectra(prepared);
  const plain = [-1, ...tracks.keys()].map((track): Domain => ({ track, image: null }));
  const binHz = spectra.samplingRateHz / spectra.length;
  const swept = tracks.some(hasSwept);
  const found = [
    ...onClock.map((peak) => ({ peak, domain: plain[0]! })),
    ...tracks.flatMap((track, t) =>
      peaksOn(evens[t]!, track, prepared.samplingRateHz).map((peak) => ({ peak, domain: plain[t + 1]! })),
    ),
    ...findImages(prepared, spectra, tracks, linesHz, samplingRateHz, FALSE_ALARM).map(({ peak, motion }) => ({
      peak,
      domain: { track: motion.track, image: motion },
    })),
  ]
    .map(({ peak, domain }): Found => {
      const sliceS = swept && peak.widthHz > SWEPT_BROAD_BINS * binHz ? SWEPT_SLICE_S : Infinity;
      const motion = motionOf(spectra, tracks, peak.frequencyHz, sliceS);
      const own = evidenceIn(motion, domain, peak.frequencyHz);
      const all = plain.map((other) => evidenceIn(motion, other, peak.frequencyHz));
      return { peak, domain, motion, own, most: Math.max(own, ...all) };
    })
    .filter(({ own, most }) => own > most - BETTER_ELSEWHERE)
    .sort((a, b) => b.own - NEEDS[kindOf(b.domain)] - (a.own - NEEDS[kindOf(a.domain)]));
  const durationS = spectra.length / spectra.samplingRateHz;
  const relative = tracks.map((track) =>
    Float64Array.from({ length: TIMES }, (_, i) =>
      relativeSpeedAt(track, spectra.startS + (i * durationS) / (TIMES - 1)),
    ),
  );
  const along = ({ domain }: Found): SpeedTrack => tracks[domain.track] ?? STEADY;
  const kept: Found[] = [];
  for (const one of found) {
    const { frequencyHz } = one.peak;
    const smear = kept.some((other) => {
      if (other.domain === one.domain) return false;
      const apart = Math.abs(frequencyHz - other.peak.frequencyHz);
      if (apart < NEAR_BINS * binHz || keepTogether(relative, one, other)) return true;
      const reach = reachBetween(relative, one.domain, other.domain, other.peak.frequencyHz);
      const width = SMEAR_BEYOND * reach + NEAR_BINS * binHz;
      if (apart >= width) return false;
      if (isLess(one, other)) return true;
      return !one.domain.image && !other.domain.image && isCountedTwice(one.peak, other.peak, prepared, along(other));
    });
    if (!smear) kept.push(one);
  }
  // Those of other histories too: a block is too short to tell the two apart.
  const near = kept.map((other) => other.peak);
  const leveled = ({ peak, domain }: Found): Peak => {
    const { track, image } = domain;
    if (track < 0) return withWanderingLevel(peak, near, prepared, STEADY);
    if (image) return withWanderingLevel(peak, near, withoutMotion(prepared, tracks[track]!, image.slopeHz), STEADY);
    const swept = withSweptLevel(peak, prepared, tracks[track]!);
    return swept === peak ? withWanderingLevel(peak, near, prepared, tracks[track]!) : swept;
  };
  const shownHzAt = ({ domain, peak: { frequencyHz } }: Found) => {
    const track = tracks[domain.track];
    return (atS: number): number =>
      track ? frequencyHz + slopeIn(domain, frequencyHz) * (relativeSpeedAt(track, atS) - 1) : frequencyHz;
  };
  const tones = kept.map((one) =>
    toTone(leveled(one), foldsOf(shownHzAt(one), one.peak.frequencyHz), one.motion, one.domain.image),
  );
  return withoutFeet(tones, swept).toSorted((a, b) => a.peak.frequencyHz - b.peak.frequencyHz);
};
