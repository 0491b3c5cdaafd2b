/**
 * Images of expected lines above half the rate. An image moves by its line's hertz, so neither staying nor moving in
 * step keeps it together: each such line is looked for along the histories found, with the motion that it would have.
 */
import type { SpeedTrack } from '../../signal/speed/equal-angle.ts';
import { findPeaks } from '../../signal/peaks/detect.ts';
import type { Peak } from '../../signal/peaks/peak.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';
import { withoutMotion } from '../../signal/speed/without-motion.ts';
import { aliasOfHz } from '../../vehicle/alias.ts';
import { targetsOf } from '../origins/origin.ts';
import type { ImageMotion } from '../origins/tone.ts';
import type { WholeSpectra } from '../track/basebands.ts';
import { topAlong } from '../track/motion.ts';

export interface FoundImage {
  readonly peak: Peak;
  readonly motion: ImageMotion;
}

/** A line may stand this far (ln) from where its stated speed puts it; it is looked for at so many steps to each side. */
const REACH = 0.05;
const STEPS = 2;
/** Evidence (ln) from which a place is looked at closely: some ten thousand places are looked at. */
const LEAST = 18;
/** Images nearer to 0 or to half the rate than this are folded over while they move. */
const EDGE_HZ = 3;
/** A peak is searched this far (Hz) around the place, and no lower than peaks are searched at all. */
const AROUND_HZ = 4;
const LOWEST_HZ = 2;
/** Places within so many bins of the whole length are one. */
const SAME_BINS = 4;

interface Sight extends ImageMotion {
  readonly frequencyHz: number;
  readonly evidence: number;
}

/** Hertz by which the image of a line moves, 0 where it is folded more often than images are looked for. */
const imageSlopeHz = (lineHz: number, shownHz: number, samplingRateHz: number): number => {
  const target = targetsOf(shownHz, samplingRateHz).find(
    ({ image, trueHz }) => image && Math.abs(trueHz - lineHz) < 1e-6 * lineHz,
  );
  return target ? target.direction * lineHz : 0;
};

const sightsOf = (
  spectra: WholeSpectra,
  track: SpeedTrack,
  index: number,
  lineHz: number,
  samplingRateHz: number,
): readonly Sight[] => {
  const sights: Sight[] = [];
  const stepHz = (REACH * lineHz) / STEPS;
  for (let k = -STEPS; k <= STEPS; k++) {
    const hz = lineHz + k * stepHz;
    const shownHz = aliasOfHz(hz, samplingRateHz);
    const slopeHz = imageSlopeHz(hz, shownHz, samplingRateHz);
    if (slopeHz === 0 || shownHz < EDGE_HZ || shownHz > spectra.samplingRateHz / 2 - EDGE_HZ) continue;
    const { frequencyHz, evidence } = topAlong(spectra, track, slopeHz, shownHz, stepHz / 2);
    if (evidence < LEAST) continue;
    // The place itself tells the line's true frequency, and with it the motion, better than the statement did.
    const exactHz = slopeHz + (frequencyHz - shownHz);
    sights.push({ track: index, slopeHz: exactHz, frequencyHz, evidence });
  }
  return sights;
};

/** Of places that show the same tone the one that keeps it together best. */
const oneEach = (sights: readonly Sight[], widthHz: number): readonly Sight[] => {
  const kept: Sight[] = [];
  for (const sight of sights.toSorted((a, b) => b.evidence - a.evidence)) {
    if (!kept.some((other) => Math.abs(other.frequencyHz - sight.frequencyHz) < widthHz)) kept.push(sight);
  }
  return kept;
};

/**
 * @param linesHz true frequencies of expected lines
 * @param samplingRateHz the rate at which the recording was taken, at which lines fold
 * @param falseAlarm allowance of a peak search
 */
export const findImages = (
  prepared: Prepared,
  spectra: WholeSpectra,
  tracks: readonly SpeedTrack[],
  linesHz: readonly number[],
  samplingRateHz: number,
  falseAlarm: number,
): readonly FoundImage[] => {
  const above = linesHz.filter((hz) => hz > (samplingRateHz / 2) * (1 - REACH));
  const widthHz = (SAME_BINS * spectra.samplingRateHz) / spectra.length;
  const sights = tracks.flatMap((track, index) =>
    above.flatMap((hz) => sightsOf(spectra, track, index, hz, samplingRateHz)),
  );
  return oneEach(sights, widthHz).flatMap(({ track, slopeHz, frequencyHz }) => {
    const steadied = withoutMotion(prepared, tracks[track]!, slopeHz);
    const peaks = findPeaks(steadied, {
      falseAlarm,
      lowestHz: Math.max(LOWEST_HZ, frequencyHz - AROUND_HZ),
      highestHz: frequencyHz + AROUND_HZ,
    });
    return peaks
      .filter((peak) => Math.abs(peak.frequencyHz - frequencyHz) < peak.limitWidthHz + widthHz)
      .map((peak) => ({ peak, motion: { track, slopeHz } }));
  });
};
