/**
 * A tire turned on its rim so that its high spot meets the rim's low spot. What the dial shows on the tire is the rim's
 * runout plus the tire's own, as vectors; turning the tire on the rim turns only its own part, by any angle. Derived.
 */
import { angleBetweenDeg, angleDegOf, size, subtract, wrapDeg } from '../../complex.ts';
import type { JudgedNumber, LimitOverrides } from '../limits/limit.ts';
import { judge, limitOf } from '../limits/limit.ts';
import type { RunoutFit } from './runout.ts';
import type { Fits } from './runout-places.ts';

export interface MatchMounting {
  /** Once round of the rim alone, and of the tire without the rim, as indicator readings, mm. */
  readonly rimTirMm: number;
  readonly tireOwnTirMm: number;
  /** High spot of the tire without the rim, and low spot of the rim, degrees from the mark. */
  readonly tireHighSpotDeg: number;
  readonly rimLowSpotDeg: number;
  /** How far the two are apart, 0..180 degrees. */
  readonly apartDeg: number;
  /** Turn of the tire on the rim that brings them together, −180..180 degrees, positive towards places read later. */
  readonly turnDeg: number;
  /** Once round as it is, and after that turn held to the limit, as indicator readings, mm. */
  readonly nowTirMm: number;
  readonly left: JudgedNumber;
  /** Standard uncertainty of what is left, at most; null where no reading was to spare. */
  readonly leftSdMm: number | null;
  /** True where the turn takes away enough to be worth breaking the bead. */
  readonly pays: boolean;
}

/** Least gain worth breaking a bead for: 0.2 mm is 20 N on a tire of usual stiffness; judgment. */
const LEAST_GAIN_MM = 0.2;
/** The gain also has to stand out of the readings' scatter by so much. */
const SURE_TIMES = 2;

/** Null where tire and rim were not both read around the clock, or one place of either stands out from the rest. */
export function matchMounting(fits: Fits, limits?: LimitOverrides): MatchMounting | null {
  const [tire, rim] = [fits.get('tire-radial'), fits.get('wheel-radial')];
  if (!tire || !rim || tire.oneOff || rim.oneOff) return null;
  const ownMm = subtract(tire.eccentricityMm, rim.eccentricityMm);
  const [tireHighSpotDeg, rimLowSpotDeg] = [angleDegOf(ownMm), wrapDeg(rim.highSpotDeg + 180)];
  const apartDeg = angleBetweenDeg(tireHighSpotDeg, rimLowSpotDeg);
  const leftMm = Math.abs(2 * size(ownMm) - rim.runoutTirMm);
  const leftSdMm = leftSdOf(tire, rim);
  const title = 'runout left, tire, radial, once round';
  return {
    rimTirMm: rim.runoutTirMm,
    tireOwnTirMm: 2 * size(ownMm),
    tireHighSpotDeg,
    rimLowSpotDeg,
    apartDeg,
    turnDeg: wrapDeg(rimLowSpotDeg - tireHighSpotDeg) <= 180 ? apartDeg : -apartDeg,
    nowTirMm: tire.runoutTirMm,
    left: judge(leftMm, limitOf('tire-runout', limits), title),
    leftSdMm,
    pays: tire.runoutTirMm - leftMm >= Math.max(LEAST_GAIN_MM, SURE_TIMES * (leftSdMm ?? 0)),
  };
}

/** Of |tire − rim| − |rim|: an error of the rim counts twice at worst. */
const leftSdOf = (tire: RunoutFit, rim: RunoutFit): number | null =>
  tire.runoutTirSdMm === null || rim.runoutTirSdMm === null
    ? null
    : Math.hypot(tire.runoutTirSdMm, 2 * rim.runoutTirSdMm);
