/** Tire sizes as they stand on the sidewall or as people type them, and the diameter they mean. */
import type { Result } from '../note.ts';
import { FLOTATION, readFlotation } from './tire-flotation.ts';
import { METRIC, readMetric, understoodPart } from './tire-metric.ts';
import { refuse } from './tire-parts.ts';
import type { TireSize } from './tire-parts.ts';

/** Sizes by width in inches (7.50-16) or by a load letter (FR78-15) do not say how tall the tire is. */
const HEIGHTLESS = /^(?:\d{1,2}(?:\.\d{1,2})?[ -]?[RDB-] ?-?\d{2}|[A-N]R?\d{2}[ -]?R?-?\d{2})/u;

const tidy = (text: string): string =>
  text
    .normalize('NFKC')
    .toUpperCase()
    .replaceAll(/[×✕*]/gu, 'X')
    .replaceAll(/[–—−‐‑]/gu, '-')
    .replaceAll(/(\d),(\d)/gu, '$1.$2')
    .replaceAll(/\s+/gu, ' ')
    .replaceAll(/ ?([/-]) ?/gu, '$1')
    .replaceAll(/(?<=\d) ?X ?(?=\d)/gu, 'X')
    .trim()
    .replace(/^(P|LT|ST|T|HL) (?=\d)/u, '$1');

/**
 * Reads a tire size.
 *
 * Metric, P-metric, LT, C, ST, HL, temporary spare (T), flotation (33x12.50R15), sizes without a ratio (165R15),
 * millimetric rims (190/65R390), with load index and speed symbol, in any case and with the usual separators.
 * Diameter of metric sizes: rim + 2·width·ratio (UN R30 §6.1.2 without its rounding of the section height).
 *
 * @returns The size, or a Problem that names what was understood and shows an example.
 */
export const parseTireSize = (text: string): Result<TireSize> => {
  const shown = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  if (text.length > 120) return refuse(shown, 'it is too long');
  const size = tidy(text);
  if (size === '') return refuse(shown, 'nothing was written');
  const flotation = FLOTATION.exec(size);
  if (flotation !== null) return readFlotation(flotation, shown);
  const metric = METRIC.exec(size);
  if (metric !== null) return readMetric(metric, shown);
  if (HEIGHTLESS.test(size)) {
    return refuse(
      shown,
      'a size of this old kind does not say how tall the tire is, so its circumference must be given',
    );
  }
  return refuse(shown, understoodPart(size));
};
