/** Units as column names spell them. Unit strings exist here and in the contract, nowhere else. */
import {
  METRES_PER_MILE,
  mps2FromG,
  mpsFromKmh,
  mpsFromKnots,
  mpsFromMph,
  metreFromFoot,
  STANDARD_GRAVITY_MPS2,
} from '../../units.ts';
import type { Channel } from '../recording.ts';
import { normalised } from './header-words.ts';

export interface AccelerationUnit {
  readonly unit: Channel['unit'];
  readonly mps2PerUnit: number;
}
export interface ScaledUnit {
  readonly unit: string;
  /** Factor to s, m/s or rev/min. */
  readonly factor: number;
}

const G = { unit: 'g', mps2PerUnit: mps2FromG(1) } as const;
const MILLI_G = { unit: 'mg', mps2PerUnit: STANDARD_GRAVITY_MPS2 / 1000 } as const;
const MPS2 = { unit: 'm/s²', mps2PerUnit: 1 } as const;
const MMPS2 = { unit: 'mm/s²', mps2PerUnit: 0.001 } as const;

/** Spellings after {@link squeezed}. */
const ACCELERATION: Readonly<Record<string, AccelerationUnit>> = {
  'm/s2': MPS2,
  'm/s/s': MPS2,
  'm/ss': MPS2,
  mps2: MPS2,
  ms2: MPS2,
  'ms-2': MPS2,
  mpss: MPS2,
  'm/sec2': MPS2,
  'm/sq': MPS2,
  'mm/s2': MMPS2,
  'mm/s/s': MMPS2,
  mmps2: MMPS2,
  mms2: MMPS2,
  'mms-2': MMPS2,
  g: G,
  gs: G,
  gn: G,
  g0: G,
  gforce: G,
  'g-force': G,
  'g-forces': G,
  gees: G,
  gravities: G,
  mg: MILLI_G,
  millig: MILLI_G,
  'milli-g': MILLI_G,
  mgs: MILLI_G,
  mgal: { unit: 'counts', mps2PerUnit: 1e-5 },
  'cm/s2': { unit: 'counts', mps2PerUnit: 0.01 },
  gal: { unit: 'counts', mps2PerUnit: 0.01 },
  'ft/s2': { unit: 'counts', mps2PerUnit: metreFromFoot(1) },
};
/** Words for numbers straight from the converter: a unit only gravity can scale. */
const COUNTS = new Set([
  'counts',
  'count',
  'lsb',
  'lsbs',
  'raw',
  'digit',
  'digits',
  'adc',
  'bits',
  'cts',
  'dn',
  'roh',
  'brut',
  'bruto',
]);

const TIME: Readonly<Record<string, ScaledUnit>> = {};
const timeUnit = (unit: string, factor: number, spellings: string): void => {
  for (const spelling of spellings.split(' ')) (TIME as Record<string, ScaledUnit>)[spelling] = { unit, factor };
};
timeUnit('s', 1, 's sec secs second seconds sekunde sekunden seconde secondes segundo segundos');
timeUnit(
  'ms',
  1e-3,
  'ms msec msecs millis millisecond milliseconds millisekunde millisekunden milliseconde millisecondes milisegundo milisegundos milis',
);
timeUnit(
  'µs',
  1e-6,
  'us usec usecs micros microsecond microseconds mikrosekunde mikrosekunden microseconde microsecondes microsegundo microsegundos',
);
timeUnit(
  'ns',
  1e-9,
  'ns nsec nsecs nanos nanosecond nanoseconds nanosekunde nanosekunden nanoseconde nanosecondes nanosegundo nanosegundos',
);
timeUnit('min', 60, 'min minute minutes minuten minutos');

const SPEED: Readonly<Record<string, ScaledUnit>> = {
  'm/s': { unit: 'm/s', factor: 1 },
  mps: { unit: 'm/s', factor: 1 },
  'ms-1': { unit: 'm/s', factor: 1 },
  'm/sec': { unit: 'm/s', factor: 1 },
  ...Object.fromEntries(
    ['km/h', 'kmh', 'kph', 'km/hr', 'kmph', 'kmh-1', 'k/h'].map((s) => [s, { unit: 'km/h', factor: mpsFromKmh(1) }]),
  ),
  ...Object.fromEntries(
    ['mph', 'mi/h', 'miles/h', 'mile/h', 'miph', 'mi/hr'].map((s) => [s, { unit: 'mph', factor: mpsFromMph(1) }]),
  ),
  ...Object.fromEntries(
    ['kn', 'kt', 'kts', 'knot', 'knots', 'knoten', 'noeuds', 'nudos'].map((s) => [
      s,
      { unit: 'knots', factor: mpsFromKnots(1) },
    ]),
  ),
  'ft/s': { unit: 'ft/s', factor: metreFromFoot(1) },
  fps: { unit: 'ft/s', factor: metreFromFoot(1) },
  'ft/sec': { unit: 'ft/s', factor: metreFromFoot(1) },
  'cm/s': { unit: 'cm/s', factor: 0.01 },
  'mm/s': { unit: 'mm/s', factor: 0.001 },
  'mi/s': { unit: 'mi/s', factor: METRES_PER_MILE },
};

const TURNING: Readonly<Record<string, ScaledUnit>> = {
  ...Object.fromEntries(
    [
      'rpm',
      '1/min',
      'min-1',
      '/min',
      'u/min',
      'umin',
      'upm',
      'tr/min',
      'trmin',
      'rev/min',
      'revs/min',
      'r/min',
      'rpms',
      'rev/m',
    ].map((s) => [s, { unit: 'rev/min', factor: 1 }]),
  ),
  hz: { unit: 'Hz', factor: 60 },
  'rev/s': { unit: 'rev/s', factor: 60 },
  'rad/s': { unit: 'rad/s', factor: 60 / (2 * Math.PI) },
};

const ANGULAR = new Set([
  'rad/s',
  'rads',
  'deg/s',
  'degs',
  'dps',
  'mdps',
  'degps',
  'radps',
  'mrad/s',
  'deg/sec',
  'rad/sec',
]);
const MAGNETIC = new Set(['ut', 'utesla', 'microtesla', 'gauss', 'mgauss', 'nt', 'tesla']);

const squeezed = (text: string): string =>
  normalised(text.replace(/⁻/g, '-').replace(/−/g, '-'))
    .replace(/[\s^*·.]/g, '')
    .replace(/⁄/g, '/');

/**
 * The pieces of a name that may be a unit, most likely first: what stands in brackets, then what follows the last
 * mark, with and without the word before it ("m_s2" after "acc_x_m_s2").
 */
function unitSpellings(name: string): string[] {
  const inBrackets = [...name.matchAll(/[([{<]([^)\]}>]{1,24})[)\]}>]/g)].map((found) => squeezed(found[1]!));
  const parts = name
    .replace(/[([{<].*$/, '')
    .trim()
    .split(/[_\s,;:|-]+/)
    .filter((part) => part !== '');
  const last = parts.at(-1) ?? '';
  const before = parts.at(-2) ?? '';
  const slashed = parts.length > 1 ? `${squeezed(before)}/${squeezed(last)}` : '';
  return [...inBrackets.reverse(), squeezed(last), slashed, squeezed(name)].filter((piece) => piece !== '');
}

const found = <T>(name: string, table: Readonly<Record<string, T>>): T | null => {
  for (const piece of unitSpellings(name)) if (Object.hasOwn(table, piece)) return table[piece]!;
  return null;
};

/** Acceleration unit a name states; 'counts' for raw numbers; null where it states none. */
export function accelerationUnitOf(name: string): AccelerationUnit | 'counts' | null {
  if (unitSpellings(name).some((piece) => COUNTS.has(piece))) return 'counts';
  if (/(?:^|[^a-z])gf(?:orce)?[_ ]?[xyz]?$/i.test(name.trim())) return G;
  return found(name, ACCELERATION);
}

export const timeUnitOf = (name: string): ScaledUnit | null => {
  const direct = found(name, TIME);
  if (direct) return direct;
  // "seconds_elapsed", "timeMillis"
  for (const word of normalised(name.replace(/([a-z])([A-Z])/g, '$1 $2')).split(/[^a-z]+/))
    if (word.length > 1 && Object.hasOwn(TIME, word)) return TIME[word]!;
  return null;
};
export const speedUnitOf = (name: string): ScaledUnit | null => found(name, SPEED);
export const turningUnitOf = (name: string): ScaledUnit | null => {
  const direct = found(name, TURNING);
  if (direct) return direct;
  return /rpm|drehzahl|u\/min|tr\/min|1\/min/i.test(name) ? TURNING['rpm']! : null;
};
export const isAngularUnit = (name: string): boolean => unitSpellings(name).some((piece) => ANGULAR.has(piece));
export const isMagneticUnit = (name: string): boolean => unitSpellings(name).some((piece) => MAGNETIC.has(piece));

/** Is the whole cell a unit and nothing else? Then the row is a row of units under the names. */
export const isUnitCell = (cell: string): boolean => {
  const bare = squeezed(cell.replace(/^[([]|[)\]]$/g, ''));
  return (
    [ACCELERATION, TIME, SPEED, TURNING].some((table) => Object.hasOwn(table, bare)) ||
    COUNTS.has(bare) ||
    ANGULAR.has(bare) ||
    MAGNETIC.has(bare)
  );
};
