/** Numbers as people read them: rounded to what they are worth, with their unit. The one place that does it. */
import { gFromMps2, inchFromMm, kmhFromMps, mphFromMps } from '../units.ts';

/** The reader's choice of units. Frequencies, orders and felt levels are the same in both. */
export type UnitSystem = 'us' | 'metric';

/** Keeps a number and its unit on one line; plain-text output turns it into a blank. */
export const NO_BREAK = '\u00a0';

/** A sentence in which no unit stands at the head of a line, away from its number. */
export const keptTogether = (text: string): string =>
  text.replace(/(\d) (?=(?:Hz|dB|mph|km\/h|m\/s²|mm\/s|in\/s|rpm|mm|mg|%)(?![\p{L}\d]))/gu, `$1${NO_BREAK}`);

/**
 * A number rounded to a count of significant digits, without exponents or trailing noise.
 * @example significant(0.012345, 2) // '0.012'
 */
export function significant(value: number, digits: number): string {
  if (!Number.isFinite(value)) return '–';
  // What arithmetic leaves of nothing.
  if (Math.abs(value) < 1e-12) return '0';
  const decimals = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value))));
  return value.toFixed(Math.min(decimals, 12));
}

/** Decimals that show a standard uncertainty to one significant digit (two where it begins with 1), 0 to 4. */
export function decimalsFor(sd: number): number {
  if (!(sd > 0) || !Number.isFinite(sd)) return 2;
  const exponent = Math.floor(Math.log10(sd));
  const leading = sd / 10 ** exponent;
  return Math.min(4, Math.max(0, (leading < 1.95 ? 1 : 0) - exponent));
}

/** '84.1 Hz'; with a standard uncertainty the decimals follow it, one at least and two at most. */
export function frequencyText(frequencyHz: number, sdHz?: number): string {
  const decimals = sdHz === undefined ? 1 : Math.min(2, Math.max(1, decimalsFor(sdHz)));
  return `${frequencyHz.toFixed(decimals)}${NO_BREAK}Hz`;
}

/** '84.2 ± 0.2 Hz': value and standard uncertainty to matching decimals. */
export function frequencyWithSdText(frequencyHz: number, sdHz: number): string {
  const decimals = Math.min(2, Math.max(1, decimalsFor(sdHz)));
  const least = 10 ** -decimals;
  return `${frequencyHz.toFixed(decimals)} ± ${Math.max(sdHz, least).toFixed(decimals)}${NO_BREAK}Hz`;
}

/** '61.3 mph' or '98.7 km/h'. */
export function speedText(speedMps: number, units: UnitSystem, decimals = 1): string {
  return units === 'us'
    ? `${mphFromMps(speedMps).toFixed(decimals)}${NO_BREAK}mph`
    : `${kmhFromMps(speedMps).toFixed(decimals)}${NO_BREAK}km/h`;
}

/** '0.042 m/s² (4.3 mg)': acceleration, 0-to-peak. */
export function accelerationText(mps2: number): string {
  const milliG = gFromMps2(mps2) * 1000;
  const inG =
    milliG >= 1000 ? `${significant(milliG / 1000, 2)}${NO_BREAK}g` : `${significant(milliG, 2)}${NO_BREAK}mg`;
  return `${significant(mps2, 2)}${NO_BREAK}m/s² (${inG})`;
}

/** '1.6 mm/s' or '0.063 in/s': velocity, 0-to-peak. */
export function velocityText(mmps: number, units: UnitSystem): string {
  return units === 'us'
    ? `${significant(inchFromMm(mmps), 2)}${NO_BREAK}in/s`
    : `${significant(mmps, 2)}${NO_BREAK}mm/s`;
}

/** 'felt level 9', with one decimal below 10. */
export function feltText(feltLevel: number): string {
  if (feltLevel >= 10) return feltLevel.toFixed(0);
  return feltLevel.toFixed(feltLevel < 0.095 ? 2 : 1);
}

/** '97 %'; never 0 or 100 for what is only nearly so. */
export function percentText(probability: number): string {
  const percent = probability * 100;
  if (percent > 0 && percent < 0.5) return `under 1${NO_BREAK}%`;
  if (percent < 100 && percent >= 99.5) return `over 99${NO_BREAK}%`;
  return `${percent.toFixed(0)}${NO_BREAK}%`;
}

/** '3 in (76.2 mm)' or '76.2 mm': a size as it was given, without noughts at the end. */
export function sizeText(mm: number, units: UnitSystem): string {
  const metric = `${+mm.toFixed(2)}${NO_BREAK}mm`;
  return units === 'us' ? `${+inchFromMm(mm).toFixed(3)}${NO_BREAK}in (${metric})` : metric;
}

/** '0.012 in (0.30 mm)' or '0.30 mm'. */
export function lengthText(mm: number, units: UnitSystem, decimalsMm = 2): string {
  const metric = `${mm.toFixed(decimalsMm)}${NO_BREAK}mm`;
  return units === 'us' ? `${inchFromMm(mm).toFixed(decimalsMm + 1)}${NO_BREAK}in (${metric})` : metric;
}

/** '1850 rpm', to the nearest ten above 1000. */
export function rpmText(rpm: number): string {
  const step = rpm >= 1000 ? 10 : 1;
  return `${(Math.round(rpm / step) * step).toFixed(0)}${NO_BREAK}rpm`;
}

/** '60 s', '1.5 s', '10 min'. */
export function durationText(seconds: number): string {
  if (seconds >= 120) return `${(seconds / 60).toFixed(seconds < 600 ? 1 : 0)}${NO_BREAK}min`;
  return `${seconds.toFixed(seconds < 10 ? 1 : 0)}${NO_BREAK}s`;
}

/** '400 Hz', '104.3 Hz': a sampling rate. */
export function rateText(samplingRateHz: number): string {
  const whole = Math.abs(samplingRateHz - Math.round(samplingRateHz)) < 0.05;
  return `${samplingRateHz.toFixed(whole ? 0 : 1)}${NO_BREAK}Hz`;
}
