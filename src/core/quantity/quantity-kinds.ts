/** The quantities people type, with the units they use for each and what is possible. */
import * as unit from '../units.ts';

/** One kind of quantity: the unit the core holds it in, the units people use for it, and what is possible. */
export interface QuantityKind {
  /** What it is called in a sentence. */
  readonly name: string;
  /** Typed unit → conversion to the core's unit. Keys are lower case without blanks and dots. */
  readonly units: Readonly<Record<string, (value: number) => number>>;
  /** Least and greatest value that makes sense, in the core's unit. */
  readonly range: readonly [number, number];
  /** The same in words, where people know the figures: '0.3 to 10 mm (0.012 to 0.39 in)'. */
  readonly between?: string;
  /** Values people mean; only used to choose between two readings of the same digits. */
  readonly usual?: readonly [number, number];
  readonly example: string;
}

const same = (value: number): number => value;
const per = (divisor: number) => (value: number) => value / divisor;
const times = (factor: number) => (value: number) => value * factor;

const withNames = (
  table: readonly (readonly [string, (value: number) => number])[],
): Readonly<Record<string, (value: number) => number>> =>
  Object.fromEntries(table.flatMap(([names, convert]) => names.split(' ').map((name) => [name, convert])));

const lengthsInMm = [
  ['mm millimeter millimeters millimetre millimetres', same],
  ['cm centimeter centimeters centimetre centimetres', times(10)],
  ['m meter meters metre metres', times(1000)],
  ['µm um micron microns', per(1000)],
  ["in inch inches \" ″ ''", unit.mmFromInch],
  ["ft foot feet ' ′", (foot: number) => unit.metreFromFoot(foot) * 1000],
  ['thou mil mils', unit.mmFromThou],
] as const;

export const SPEED: QuantityKind = {
  name: 'speed',
  units: withNames([
    ['mph mi/h miles/h milesperhour mileperhour', unit.mpsFromMph],
    ['km/h kmh kph kmph kilometersperhour kilometresperhour', unit.mpsFromKmh],
    ['m/s mps ms-1', same],
    ['kn kt kts knot knots', unit.mpsFromKnots],
    ['ft/s fps', unit.mpsFromFps],
  ]),
  range: [0, 150],
  between: '0 to 335 mph (540 km/h)',
  example: '62 mph or 100 km/h',
};
export const LENGTH_MM: QuantityKind = {
  name: 'length',
  units: withNames(lengthsInMm),
  range: [-1e5, 1e5],
  example: '59.9 mm or 2.36 in',
};
export const LENGTH_M: QuantityKind = {
  name: 'length',
  units: withNames(lengthsInMm.map(([names, toMm]) => [names, (value: number) => toMm(value) / 1000] as const)),
  range: [-1e5, 1e5],
  example: '2.36 m or 92.9 in',
};
export const TURNING_SPEED_RPM: QuantityKind = {
  name: 'turning speed',
  units: withNames([
    ['rpm rev/min r/min 1/min min-1 u/min revs/min revsperminute', same],
    ['hz rev/s r/s 1/s', unit.rpmFromHz],
  ]),
  range: [0, 30_000],
  between: '0 to 30,000 rpm',
  usual: [100, 30_000],
  example: '1850 rpm',
};
export const FREQUENCY_HZ: QuantityKind = {
  name: 'frequency',
  units: withNames([
    ['hz 1/s s/s samples/s sps', same],
    ['khz', times(1000)],
    ['rpm cpm 1/min', unit.hzFromRpm],
  ]),
  range: [0, 1e9],
  example: '1000 Hz',
};
export const MASS_KG: QuantityKind = {
  name: 'mass',
  units: withNames([
    ['kg kilogram kilograms', same],
    ['g gram grams', per(1000)],
    ['lb lbs pound pounds', unit.kgFromPound],
    ['oz ounce ounces', (ounce: number) => unit.gramFromOunce(ounce) / 1000],
  ]),
  range: [0, 1e5],
  example: '9 kg or 20 lb',
};
export const MASS_G: QuantityKind = {
  ...MASS_KG,
  units: Object.fromEntries(
    Object.entries(MASS_KG.units).map(([name, toKg]) => [name, (value: number) => toKg(value) * 1000] as const),
  ),
  range: [0, 1e8],
  example: '25 g or 0.9 oz',
};
export const ANGLE_DEG: QuantityKind = {
  name: 'angle',
  units: withNames([
    ['° º deg degree degrees', same],
    ['rad', unit.degFromRad],
  ]),
  range: [-360, 360],
  between: '-360° to 360°',
  example: '3.5°',
};
export const TORQUE_NM: QuantityKind = {
  name: 'torque',
  units: withNames([
    ['nm n·m n*m n-m', same],
    ['lbft lb-ft lbf·ft lbf-ft lb·ft ft-lb ftlb ft·lb ft-lbs lbsft', unit.nmFromLbfFt],
    ['lbin lb-in lbf·in lbf-in lb·in in-lb inlb in·lb in-lbs lbsin', (lbfIn: number) => unit.nmFromLbfFt(lbfIn / 12)],
  ]),
  range: [-1e6, 1e6],
  example: '220 lb·ft or 300 N·m',
};
export const UNBALANCE_GMM: QuantityKind = {
  name: 'unbalance',
  units: withNames([
    ['gmm g·mm g*mm g-mm', same],
    ['gcm g·cm g*cm', times(10)],
    ['ozin oz·in oz-in oz*in inoz in-oz', unit.gmmFromOzIn],
  ]),
  range: [0, 1e9],
  example: '100 g·mm or 0.14 oz·in',
};
export const ACCELERATION_MPS2: QuantityKind = {
  name: 'acceleration',
  units: withNames([
    ['m/s² m/s2 m/s^2 ms-2', same],
    ['g', unit.mps2FromG],
    ['mg', (mg: number) => unit.mps2FromG(mg / 1000)],
    ['mm/s² mm/s2 mm/s^2', per(1000)],
  ]),
  range: [-1e6, 1e6],
  example: '0.5 m/s² or 0.05 g',
};
export const ANGULAR_ACCELERATION_RADPS2: QuantityKind = {
  name: 'angular acceleration',
  units: withNames([['rad/s² rad/s2 rad/s^2', same]]),
  range: [0, 1e6],
  example: '400 rad/s²',
};
/** Balance quality grade: eccentricity times turning speed. */
export const GRADE_MMPS: QuantityKind = {
  name: 'grade',
  units: withNames([['mm/s mmps', same]]),
  range: [0.1, 4000],
  example: 'G 16',
};
/** A part of a whole, held as 0..1. */
export const SHARE: QuantityKind = {
  name: 'share',
  units: withNames([['% percent', per(100)]]),
  range: [0, 1],
  example: '75 %',
};
export const TIME_S: QuantityKind = {
  name: 'time',
  units: withNames([
    ['s sec secs second seconds', same],
    ['ms', per(1000)],
    ['min minute minutes', times(60)],
  ]),
  range: [0, 1e9],
  example: '60 s',
};
export const RATIO: QuantityKind = {
  name: 'ratio',
  units: { '': same, ':1': same, to1: same },
  range: [0, 1000],
  example: '3.73',
};
