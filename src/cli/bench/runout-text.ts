/** Runout in words. */
import type { Prediction } from '../../core/driveline/judging/judged-measurement.ts';
import { placeText } from '../../core/driveline/judging/judge-runout.ts';
import type { IndexPosition } from '../../core/driveline/runout/runout-index.ts';
import { angleText, forceText, predictedText, smallLengthText, weightText } from '../../core/report/bench-text.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { table } from '../../core/report/wrap.ts';
import type { Fits, TubePlanes } from '../../core/driveline/runout/runout-places.ts';
import { capitalized } from '../../core/words.ts';

/** Less than any dial shows has no high spot. */
const LEAST_SHOWN_MM = 0.001;

export function harmonicsTable(fits: Fits, units: UnitSystem): string {
  const mm = (value: number | null): string => (value === null ? 'too few readings' : smallLengthText(value, units));
  const rows = [...fits].map(([place, fit]) => [
    placeText(place),
    mm(fit.tirMm),
    `${mm(fit.runoutTirMm)}${fit.runoutTirSdMm === null ? '' : ` ± ${smallLengthText(fit.runoutTirSdMm, units)}`}`,
    fit.runoutTirMm < LEAST_SHOWN_MM ? '' : angleText(fit.highSpotDeg),
    mm(fit.ovalityTirMm),
  ]);
  const header = ['', 'total', 'once round (runout)', 'high spot', 'twice round (ovality)'];
  return table([header, ...rows], ['left', 'right', 'right', 'right', 'right']);
}

export const predictionLines = (predictions: readonly (readonly [string, Prediction])[], units: UnitSystem): string[] =>
  predictions.map(
    ([what, prediction]) =>
      `${capitalized(what)}: about ${predictedText(prediction, units)} at ${prediction.part} ${prediction.order}×, ${prediction.where}.`,
  );

export function indexLines(positions: readonly IndexPosition[], boltCount: number, units: UnitSystem): string[] {
  const now = positions.find(({ steps }) => steps === 0);
  const best = positions[0];
  if (now === undefined || best === undefined) return [];
  const rows = [...positions]
    .sort((a, b) => a.steps - b.steps)
    .map(({ steps, tirMm }) => [
      steps === 0 ? 'as it is' : `${steps} of ${boltCount} on`,
      smallLengthText(tirMm, units),
    ]);
  const advice =
    best.steps === 0
      ? 'The shaft is in its best position on the flange.'
      : `Turn the shaft on by ${best.steps} of ${boltCount} bolt positions, towards the places that were read later (against the way it was turned under the dial): ${smallLengthText(best.tirMm, units)} instead of ${smallLengthText(now.tirMm, units)}.`;
  return [advice, table([['position', 'runout left'], ...rows], ['left', 'right'])];
}

export function tubeLines({ bowTirMm, planes }: TubePlanes, units: UnitSystem): string[] {
  const lines = planes.map(({ at, unbalanceGmm, angleDeg, forceN }) => {
    const force = forceN === null ? '' : `, ${forceText(forceN, units)}`;
    return `Unbalance at the ${at}: ${weightText(unbalanceGmm, 'g·mm', units)} at ${angleText(angleDeg)}${force}.`;
  });
  return [`Bow beyond the line between the ends: ${smallLengthText(bowTirMm, units)} total reading.`, ...lines];
}
