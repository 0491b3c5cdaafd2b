/** The prior of a run's two speed scales, from where its speeds were read. */
import { rollingCircumference } from '../../vehicle/rolling.ts';
import { leastTrueOverShown, readingStepMps, speedPrior } from '../../vehicle/speed-sources.ts';
import type { ExpectedLines } from '../../vehicle/line.ts';
import type { RunCondition, Vehicle } from '../../vehicle/vehicle.ts';
import { wheelSlipSd } from '../../vehicle/slip.ts';
import { axisFrom, gearTie, SINGLE_POINT, type ScaleAxis, type ScalePrior } from '../origins/scale-prior.ts';

/** Degrees of freedom of the tails: one stated speed in a few dozen is off by more than its source explains. */
const TAIL_DEGREES = 4;
/** The axis reaches this many standard deviations to each side, and at least this far. */
const REACH_SDS = 8;
const LEAST_REACH = 0.05;
/** Beta(1, 3): density 3(1 − x)² of the share of the legal window by which a dial reads high. Judgment. */
const DIAL_POINTS = 24;
const ROUNDING_POINTS = 7;

/** Student's t density about zero with the given scale, up to a constant. */
const tailed = (x: number, sd: number): number => (1 + (x / sd) ** 2 / TAIL_DEGREES) ** (-(TAIL_DEGREES + 1) / 2) / sd;

/** Log of the places where the true speed of a dial reading may lie, relative to the prior's centre, with weights. */
const dialPlaces = (statedMps: number, centreRelative: number): readonly { at: number; weight: number }[] => {
  const window = 1 - leastTrueOverShown(statedMps);
  const step = readingStepMps(statedMps) / statedMps;
  const places: { at: number; weight: number }[] = [];
  for (let i = 0; i < DIAL_POINTS; i++) {
    const share = (i + 0.5) / DIAL_POINTS;
    for (let j = 0; j < ROUNDING_POINTS; j++) {
      const shown = 1 + step * ((j + 0.5) / ROUNDING_POINTS - 0.5);
      places.push({ at: Math.log((shown * (1 - share * window)) / centreRelative), weight: (1 - share) ** 2 });
    }
  }
  return places;
};

/** The road scale, relative to the expected wheel speed: where the speed was read, tire size, and slip together. */
const roadAxis = (vehicle: Vehicle, condition: RunCondition, expected: ExpectedLines, sweep: number): ScaleAxis => {
  if (expected.wheelHz === null) return SINGLE_POINT;
  const sd = Math.max(Math.hypot(expected.wheelRelativeSd, sweep), 1e-3);
  const speed = speedPrior(condition);
  if (condition.speedSource !== 'dial' || condition.speedMps === undefined || speed === null) {
    const reach = Math.max(REACH_SDS * sd, LEAST_REACH);
    return axisFrom(-reach, reach, (s) => Math.log(tailed(s, sd)));
  }
  const tire = vehicle.tire ? rollingCircumference(vehicle.tire) : null;
  const circumferenceSd = tire?.ok ? tire.value.relativeSd : 0.01;
  const rest = Math.hypot(circumferenceSd, wheelSlipSd(condition), 0.003, sweep);
  const places = dialPlaces(condition.speedMps, speed.centreRelative);
  const ends = places.map((p) => p.at);
  const from = Math.min(...ends) - 4 * rest;
  const to = Math.max(...ends) + 4 * rest;
  return axisFrom(from, to, (s) => Math.log(places.reduce((sum, p) => sum + p.weight * tailed(s - p.at, rest), 0)));
};

/** Engine speed and gear are both stated and do not agree: how often, and how far off the gear then is (in ln). */
const ENGINE_UNTIED_GEAR = 0.3;
const ANY_GEAR_REACH = 1;

/** One speed stated for a sweep may be its start, middle or end: off from the mean by this share of the wander. */
const SWEEP_SHARE = 0.4;
const LEAST_SWEEP = 0.02;

/**
 * Both scales and their tie.
 * @param wander root mean square of ln speed over the run, about its mean
 */
export const runPrior = (
  vehicle: Vehicle,
  condition: RunCondition,
  expected: ExpectedLines,
  wander: number,
): ScalePrior => {
  const sweep = condition.speedSource === 'logged' || wander < LEAST_SWEEP ? 0 : SWEEP_SHARE * wander;
  const road = roadAxis(vehicle, condition, expected, sweep);
  if (expected.engineHz === null) return { road, engine: SINGLE_POINT, tie: null };
  const tie = gearTie(vehicle.layout !== 'electric' && vehicle.converter !== false);
  if (expected.engineTiedToRoad) {
    const first = road.start - 0.02;
    const last = road.start + (road.logPrior.length - 1) * road.step + 0.12;
    return { road, engine: axisFrom(first, last, () => 0), tie };
  }
  const sd = Math.max(expected.engineRelativeSd, 5e-4);
  const reach = Math.max(REACH_SDS * sd, 0.01);
  const engine = axisFrom(-reach, reach, (s) => Math.log(tailed(s, sd)));
  const turns = expected.engineTurnsPerWheelTurn;
  if (turns === null || expected.wheelHz === null) return { road, engine, tie: null };
  // Engine speed and gear are both known: they vouch for each other, unless the gear was not the one stated.
  const offset = Math.log(expected.engineHz / (expected.wheelHz * turns));
  const anyGear = 1 / (2 * ANY_GEAR_REACH);
  return {
    road,
    engine,
    tie: {
      from: -ANY_GEAR_REACH,
      to: ANY_GEAR_REACH,
      logDensity: (gap) => {
        const joined = gap + offset;
        const tied = joined >= tie.from && joined <= tie.to ? Math.exp(tie.logDensity(joined)) : 0;
        return Math.log((1 - ENGINE_UNTIED_GEAR) * tied + ENGINE_UNTIED_GEAR * anyGear);
      },
    },
  };
};
