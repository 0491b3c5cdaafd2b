/** Crankshafts of the usual engine layouts, front to rear, for their inertia balance. */
import type { CylinderPlace } from './inertia-balance.ts';

/** Cylinders in line at even pitch about the middle. */
const inLine = (pinsDeg: readonly number[], bankDeg = 0, shift = 0): CylinderPlace[] =>
  pinsDeg.map((pinDeg, index) => ({ bankDeg, pinDeg, station: index - (pinsDeg.length - 1) / 2 + shift }));

/** Two banks at the same stations; the second bank's pins stand `splitDeg` after the first's (0: they share pins). */
const vee = (angleDeg: number, pinsDeg: readonly number[], splitDeg = 0): CylinderPlace[] => [
  ...inLine(pinsDeg, angleDeg / 2),
  ...inLine(
    pinsDeg.map((pinDeg) => pinDeg + splitDeg),
    -angleDeg / 2,
  ),
];

/** Opposed cylinders, each with its own pin half a turn from its neighbor's, the banks half a pitch apart. */
const flat = (pinsDeg: readonly number[]): CylinderPlace[] => [
  ...inLine(pinsDeg, 90, -0.25),
  ...inLine(
    pinsDeg.map((pinDeg) => pinDeg + 180),
    -90,
    0.25,
  ),
];

const THREE = [0, 240, 120];
const FOUR_FLAT = [0, 180, 180, 0];
const FOUR_CROSS = [0, 90, 270, 180];
/** Firing 1-2-4-5-3. */
const FIVE = [0, 144, 216, 288, 72];
const SIX = [0, 120, 240, 240, 120, 0];

export const ENGINE_LAYOUTS = {
  'inline-2, pins together': inLine([0, 0]),
  'inline-2, pins opposed': inLine([0, 180]),
  'inline-3': inLine(THREE),
  'inline-4': inLine(FOUR_FLAT),
  'inline-5': inLine(FIVE),
  'inline-6': inLine(SIX),
  'vee-6 60°, six throws': vee(60, THREE, 60),
  'vee-6 90°, split pins': vee(90, THREE, 30),
  'vee-6 90°, shared pins': vee(90, THREE),
  'vee-6 120°, shared pins': vee(120, THREE),
  'vee-8 90°, cross-plane': vee(90, FOUR_CROSS),
  'vee-8 90°, flat-plane': vee(90, FOUR_FLAT),
  'vee-10 72°': vee(72, FIVE),
  'vee-12 60°': vee(60, SIX),
  'flat-4': flat([0, 180]),
  'flat-6': flat(THREE),
} as const satisfies Readonly<Record<string, readonly CylinderPlace[]>>;
