/** A tone against the road's own shake about it: on a rough road a person does not notice what a smooth road shows. */
import { weightingVertical } from '../../signal/felt.ts';
import type { AmplitudeSpectrum } from '../../signal/spectra/spectrum.ts';

/**
 * A change of the whole shake by a tenth is just noticed (relative difference threshold of seated people, vertical:
 * M. Morioka and M. J. Griffin, 2000; figure from memory). A tone of share s of the rest makes √(1 + s²) of it.
 */
const JUST_NOTICED_CHANGE = 1.1;
export const NOTICED_FROM = Math.sqrt(JUST_NOTICED_CHANGE ** 2 - 1);

/**
 * Root mean square of the tone over that of the noise in the octave about it, both weighted as the seat passes them to a
 * person (Wk of ISO 2631-1:1997). Other tones are not part of the noise.
 * @param floorMps2 mean amplitude of the noise per bin of the spectrum (see amplitudeFloor)
 * @returns dimensionless; Infinity where there is no noise
 */
export const overRoad = (
  { stepHz, enbwHz }: AmplitudeSpectrum,
  floorMps2: Float64Array,
  frequencyHz: number,
  amplitudeMps2: number,
): number => {
  const last = Math.min(floorMps2.length - 1, Math.floor((frequencyHz * Math.SQRT2) / stepHz));
  let power = 0;
  for (let bin = Math.max(1, Math.ceil(frequencyHz / Math.SQRT2 / stepHz)); bin <= last; bin++) {
    power += (weightingVertical(bin * stepHz) * floorMps2[bin]!) ** 2;
  }
  const tone = weightingVertical(frequencyHz) * amplitudeMps2;
  return tone / Math.sqrt((power * stepHz) / enbwHz);
};
