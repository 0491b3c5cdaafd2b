/** A narrow hump of the spectrum that a person feels and that is no line: a resonance of body, frame or seat that the road shakes. */
import { feltLevel } from '../../signal/felt.ts';
import type { RunInference } from '../matching/infer-run.ts';
import { NOTICED_FROM, overRoad } from './over-road.ts';
import { FELT_FROM } from './perceived.ts';

export interface Hump {
  readonly frequencyHz: number;
  /** Of a tone that shakes as much. */
  readonly feltLevel: number;
}

/** Half the width over which a hump is added up, relative: modes of a body are damped by 1 to 3 %. Judgment. */
const HALF_WIDTH = 0.03;
/** Bins this much over the floor, in power, are the hump's. */
const OVER_FLOOR = 2;
/** And its highest one is this much over it, or it is a chance. Judgment. */
const TOP_OVER_FLOOR = 10;
/** Bins on either side of a tone that are its own. */
const OWN_BINS = 3;
/** Below this all of the vehicle moves on its springs, above the seat passes little. Hz. */
const LOWEST_HZ = 6;
const HIGHEST_HZ = 80;

/** Power over the floor at each bin, (m/s²)², that no tone of a part explains; 0 where there is none. */
const excessOf = ({ run: { spectrum, floorMps2 }, matches }: RunInference): Float64Array => {
  const excess = spectrum.amplitudeMps2.map((amplitude, bin) => {
    const floor = floorMps2[bin]! ** 2;
    return amplitude ** 2 > OVER_FLOOR * floor ? ((amplitude ** 2 - floor) * spectrum.stepHz) / spectrum.enbwHz : 0;
  });
  for (const { tone, others } of matches) {
    if (others.resonance + others.noise > 0.5) continue;
    const middle = Math.round(tone.peak.frequencyHz / spectrum.stepHz);
    excess.fill(0, Math.max(0, middle - OWN_BINS), middle + OWN_BINS + 1);
  }
  return excess;
};

/** The hump that is felt most in a run; null where none is, or the road covers it. */
export const humpOf = (inference: RunInference): Hump | null => {
  const { spectrum, floorMps2 } = inference.run;
  const excess = excessOf(inference);
  let most: Hump | null = null;
  for (let bin = Math.ceil(LOWEST_HZ / spectrum.stepHz); bin * spectrum.stepHz < HIGHEST_HZ; bin++) {
    const reach = Math.max(2, Math.round(HALF_WIDTH * bin));
    const amplitudeMps2 = Math.sqrt(
      excess.subarray(bin - reach, bin + reach + 1).reduce((sum, power) => sum + power, 0),
    );
    const frequencyHz = bin * spectrum.stepHz;
    const level = feltLevel(frequencyHz, amplitudeMps2, null);
    const isHigh = excess[bin]! > 0 && spectrum.amplitudeMps2[bin]! ** 2 > TOP_OVER_FLOOR * floorMps2[bin]! ** 2;
    if (!isHigh || level < Math.max(FELT_FROM, most?.feltLevel ?? 0)) continue;
    if (overRoad(spectrum, floorMps2, frequencyHz, amplitudeMps2) < NOTICED_FROM) continue;
    most = { frequencyHz, feltLevel: level };
  }
  return most;
};
