/**
 * Images of expected lines above half the rate. An image moves by its line's hertz, so neither staying nor moving in
 * step keeps it together: each such line is looked for along the histories found, with the motion that it would have.
 */
import type { SpeedTrack } from '../../signal/equal-angle.ts';
import { findPeaks } from '../../signal/detect.ts';
import type { Peak } from '../../signal/peak.ts';
import type { Prepared } from '../../signal/spectrum.ts';
import { withoutMotion } from '../../signal/without-motion.ts';
import { observedHz } from '../origin.ts';
import type { ImageMotion } from '../tone.ts';
import type { WholeSpectra } from './basebands.ts';
import { topAlong } from './motion.ts';

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
/** A peak is searched this far (Hz) around the place, and is the place's own within so many of its widths. */
const AROUND_HZ = 4;
const OWN_WIDTHS = 1;

interface Sight extends ImageMotion {
  readonly frequencyHz: number;
  readonly evidence: number;
}

/** +1 where the image rises with its line, −1 where it falls. */
const directionOf = (lineHz: number, samplingRateHz: number): 1 | -1 =>
  lineHz > samplingRateHz * Math.round(lineHz / samplingRateHz) ? 1 : -1;

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
    const shownHz = observedHz(hz, samplingRateHz);
    if (shownHz < EDGE_HZ || shownHz > samplingRateHz / 2 - EDGE_HZ) continue;
    const slopeHz = directionOf(hz, samplingRateHz) * hz;
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
  const widthHz = (4 * spectra.samplingRateHz) / spectra.length;
  const sights = tracks.flatMap((track, index) =>
    above.flatMap((hz) => sightsOf(spectra, track, index, hz, samplingRateHz)),
  );
  return oneEach(sights, widthHz).flatMap(({ track, slopeHz, frequencyHz }) => {
    const steadied = withoutMotion(prepared, tracks[track]!, slopeHz);
    const peaks = findPeaks(steadied, {
      falseAlarm,
      lowestHz: Math.max(2, frequencyHz - AROUND_HZ),
      highestHz: frequencyHz + AROUND_HZ,
    });
    return peaks
      .filter((peak) => Math.abs(peak.frequencyHz - frequencyHz) < OWN_WIDTHS * peak.limitWidthHz + widthHz)
      .map((peak) => ({ peak, motion: { track, slopeHz } }));
  });
};
