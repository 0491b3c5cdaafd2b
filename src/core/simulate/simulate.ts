/**
 * From a described vehicle and drive to samples. Nothing here knows how a recording is analysed: sources turn, forces
 * travel through suspension, mounts and resonances, and the sensor samples what arrives.
 */
import { bodyResponse } from './body-response.ts';
import { PORTS } from './body.ts';
import { WHEELS } from './fault.ts';
import type { LoggedTrack } from './logger.ts';
import { logEngine, logSpeed } from './logger.ts';
import { speedHistory } from './motion.ts';
import { ENTRY_COUNT, orderForces } from './order-forces.ts';
import { randomSource } from './random.ts';
import type { RandomSource } from './random.ts';
import { heightAt, makeRoad } from './road.ts';
import { makeRoar } from './roar.ts';
import type { Scenario } from './scenario.ts';
import type { Sampled } from './sensor.ts';
import { sampleWith } from './sensor.ts';
import { shakersOf } from './shakers.ts';
import type { TrueOrder } from './truth.ts';
import { innerRateHz, setUp } from './set-up.ts';
import { trueOrdersAt } from './truth.ts';
import { turnRecord } from './turn-record.ts';

export interface Simulation extends Sampled {
  readonly rateHz: number;
  readonly mounting: Scenario['sensor']['mounting'];
  readonly speedLog?: LoggedTrack;
  readonly engineLog?: LoggedTrack;
  readonly truth: {
    readonly meanSpeedMps: number;
    /** Mean turning speed of the four wheels and of the engine, 1/s. */
    readonly wheelHz: number;
    readonly engineHz: number | null;
    readonly orders: readonly TrueOrder[];
    /** Road speed at a time within the run, m/s. */
    readonly speedAt: (timeS: number) => number;
  };
}

/** Settling time before the first sample, s. */
const LEAD_S = 2;
/** Amplitudes are renewed this often, s. */
const BLOCK_S = 0.016;
const WHEELBASE_M = 2.9;
const SUSPENSION = 4 + PORTS.indexOf('suspension');
const FORE_AFT = 4 + PORTS.indexOf('fore-aft');

/** @returns Samples in sensor axes, logged columns, and the truth. Deterministic in the scenario. */
export const simulate = (scenario: Scenario): Simulation => {
  const innerHz = innerRateHz(scenario.sensor.rateHz);
  const stepS = 1 / innerHz;
  const blockSteps = Math.round(BLOCK_S * innerHz);
  const duration = scenario.drive.durationS;
  const count = Math.ceil((duration + LEAD_S + 0.1) * innerHz);
  const ofRun = (name: string): RandomSource => randomSource(scenario.seed, name);
  const without = new Set(scenario.without ?? []);
  const { body, parts, excitations, torque } = setUp(scenario, innerHz);

  const speed = speedHistory(scenario.drive.speed, count, stepS, ofRun('speed'));
  const speedAt = (timeS: number): number => speed[Math.min(count - 1, Math.round((timeS + LEAD_S) * innerHz))]!;
  const meanSpeed = meanOf(speed.subarray(Math.round(LEAD_S * innerHz)));
  const forces = orderForces(parts, excitations, torque, blockSteps, stepS, ofRun);
  const response = bodyResponse(body, innerHz);
  const shakers = without.has('faults') ? [] : shakersOf(scenario.faults, meanSpeed, innerHz, ofRun);
  const road = makeRoad(
    without.has('road') ? 0 : scenario.roadM3,
    sumOf(speed) * stepS + WHEELBASE_M + 1,
    ofRun('road'),
  );
  const out: [Float64Array, Float64Array, Float64Array] = [
    new Float64Array(count),
    new Float64Array(count),
    new Float64Array(count),
  ];
  const at = new Float64Array(ENTRY_COUNT);
  const heights = new Float64Array(4);
  const now = new Float64Array(3);
  const manoeuvre = without.has('manoeuvre') ? 0 : 1;
  const roar = without.has('road') ? null : makeRoar(scenario.roadM3, innerHz, ofRun('roar'));
  const roarN = new Float64Array(2);
  const height = heightAt;
  const turns = turnRecord(parts, blockSteps * stepS, duration);
  let place = WHEELBASE_M;
  for (let i = 0; i < count; i++) {
    const v = speed[i]!;
    if (i % blockSteps === 0) {
      const end = speed[Math.min(count - 1, i + blockSteps)]!;
      forces.startBlock(v, end);
      turns.note(i * stepS - LEAD_S, (v + end) / 2, forces.relativeSpeed);
    }
    at.fill(0);
    forces.step(v, at);
    heights[0] = height(road.left, road.stepM, place);
    heights[1] = height(road.right, road.stepM, place);
    heights[2] = height(road.left, road.stepM, place - WHEELBASE_M);
    heights[3] = height(road.right, road.stepM, place - WHEELBASE_M);
    if (roar !== null) {
      roar(v, roarN);
      at[SUSPENSION] = roarN[0]!;
      at[FORE_AFT] = at[FORE_AFT]! + roarN[1]!;
    }
    response.step(at, heights, now);
    for (const shaker of shakers) shaker(v, now);
    const surge = i > 0 ? (v - speed[i - 1]!) * innerHz * manoeuvre : 0;
    out[0][i] = now[0]! + surge;
    out[1][i] = now[1]!;
    out[2][i] = now[2]!;
    place += v * stepS;
  }
  const sampled = sampleWith(
    scenario.sensor,
    out,
    innerHz,
    LEAD_S,
    duration,
    !without.has('sensor-noise'),
    ofRun('sensor'),
  );
  return {
    ...sampled,
    rateHz: scenario.sensor.rateHz,
    mounting: scenario.sensor.mounting,
    ...(scenario.log?.speed && { speedLog: logSpeed(scenario.log.speed, duration, speedAt, ofRun('speed log')) }),
    ...(scenario.log?.engine && {
      engineLog: logEngine(scenario.log.engine, duration, (t) => 60 * turns.engineHzAt(t)),
    }),
    truth: {
      meanSpeedMps: meanSpeed,
      wheelHz: meanOf(WHEELS.map(turns.meanHz)),
      engineHz: parts.some((p) => p.id === 'engine') ? turns.meanHz('engine') : null,
      orders: trueOrdersAt({ body, parts, excitations, torque }, meanSpeed, innerHz, turns.meanHz),
      speedAt,
    },
  };
};

const sumOf = (values: ArrayLike<number>): number => {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum;
};
const meanOf = (values: ArrayLike<number>): number => sumOf(values) / values.length;
