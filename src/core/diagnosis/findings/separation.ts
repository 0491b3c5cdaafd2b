/** The run that would tell two origins of one tone apart, and how far apart they would then stand. */
import { recordLengthToPartS } from '../../vehicle/collisions.ts';
import type { RunCondition, Vehicle } from '../../vehicle/vehicle.ts';
import type { Origin } from '../origins/origin.ts';
import { hzText, bothSpeedsText } from '../../words.ts';

/** One of two candidates for a tone, with where its true frequency lies now. */
export interface Candidate {
  readonly origin: Origin;
  readonly image: boolean;
  readonly trueHz: number;
}

/** Usual idle speed of a warm engine, rev/min; for 'coast in neutral'. Judgment. */
const IDLE_RPM = 700;
/** Rates closer than this share are told as one: two decimals of a quoted ratio say no more. */
const SAME_RATIO = 1e-3;

const atSpeed = ({ speedMps }: RunCondition): string => (speedMps ? ` at ${bothSpeedsText(speedMps)}` : '');

/** The nearest other gear that moves the engine clearly at the same road speed; null where none is in its range. */
const otherGear = (vehicle: Vehicle, now: number): number | null => {
  const within = (vehicle.gearRatios ?? []).filter(
    (g) => Math.abs(g / now - 1) > 0.05 && g / now < 1.9 && g / now > 0.45,
  );
  return within.sort((a, b) => Math.abs(Math.log(a / now)) - Math.abs(Math.log(b / now)))[0] ?? null;
};

const engineAgainstRoad = (engine: Candidate, road: Candidate, vehicle: Vehicle, condition: RunCondition): string => {
  const now = condition.gearRatio;
  const other = now === undefined ? null : otherGear(vehicle, now);
  if (now !== undefined && other !== null) {
    const moved = (engine.trueHz * other) / now;
    return (
      `In gear ${other.toFixed(2)}${atSpeed(condition)} ${engine.origin.line.label} would move to ${hzText(moved)}, ` +
      `${hzText(Math.abs(moved - road.trueHz))} away from ${road.origin.line.label}.`
    );
  }
  const idleHz = (engine.origin.line.perTurn * IDLE_RPM) / 60;
  return (
    `Coasting in neutral${atSpeed(condition)} ${engine.origin.line.label} would fall to about ${hzText(idleHz)} ` +
    `(idle), ${hzText(Math.abs(road.trueHz - idleHz))} away; ${road.origin.line.label} stays where it is.`
  );
};

const torqueDriven = (origin: Origin): boolean => origin.line.part === 'half-shaft';

const sameGroup = (a: Candidate, b: Candidate, condition: RunCondition): string => {
  const apart = Math.abs(a.trueHz - b.trueHz);
  if (apart > SAME_RATIO * a.trueHz) {
    const needed = (100 * apart) / a.trueHz / 2;
    return (
      `They turn in a fixed ratio, ${hzText(apart)} apart here: a speed known to ${needed.toFixed(1)} % ` +
      `(GPS, or a measured roll-out) and a steady run of ${Math.ceil(recordLengthToPartS(apart))} s or more tells them apart.`
    );
  }
  if (torqueDriven(a.origin) || torqueDriven(b.origin)) {
    const [loaded, free] = torqueDriven(a.origin) ? [a, b] : [b, a];
    return (
      `Both turn at one rate and stay 0 Hz apart. Coasting in neutral${atSpeed(condition)} ` +
      `${loaded.origin.line.label} fades with the torque; ${free.origin.line.label} stays.`
    );
  }
  if (a.origin.line.part === 'accessory' || b.origin.line.part === 'accessory') {
    const belt = a.origin.line.part === 'accessory' ? a : b;
    return `They turn in one ratio and stay 0 Hz apart. With its belt off, or its load changed, ${belt.origin.line.label} goes or changes.`;
  }
  return 'Both turn at one rate at any speed, 0 Hz apart: swapping or disconnecting one of the two tells them apart.';
};

/** Orders whose rates differ by more than this, relative, show apart wherever both are seen directly. */
const APART_AS_IMAGES = 0.05;

/** One or two sentences: what to drive, and the distance then. */
export const separatedBy = (a: Candidate, b: Candidate, vehicle: Vehicle, condition: RunCondition): string => {
  const apartHz = Math.abs(a.trueHz - b.trueHz);
  // Two images of unlike orders fall on one place by the rate alone.
  if (a.image !== b.image || (a.image && apartHz > APART_AS_IMAGES * a.trueHz)) {
    const [image, other] = b.image && (!a.image || b.trueHz > a.trueHz) ? [b, a] : [a, b];
    const rate = Math.ceil((2.5 * image.trueHz) / 50) * 50;
    return (
      `Recorded at ${rate} Hz or more, ${image.origin.line.label} would show at ${hzText(image.trueHz)}, ` +
      `${hzText(apartHz)} away${other.image ? ` from ${other.origin.line.label}` : ''}.`
    );
  }
  // An electric motor is geared to the wheels: no gear and no neutral moves it against them.
  if (a.origin.group !== b.origin.group && vehicle.layout !== 'electric') {
    return a.origin.group === 'engine'
      ? engineAgainstRoad(a, b, vehicle, condition)
      : engineAgainstRoad(b, a, vehicle, condition);
  }
  return sameGroup(a, b, condition);
};
