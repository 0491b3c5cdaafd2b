import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../src/core/simulate/fault.ts';
import type { Scenario } from '../../../src/core/simulate/scenario.ts';
import { rotationFromAngles } from '../../../src/core/simulate/sensor.ts';
import { randomSource } from '../../../src/core/simulate/random.ts';
import { simulate } from '../../../src/core/simulate/simulate.ts';
import type { Simulation } from '../../../src/core/simulate/simulate.ts';
import { randomRotation } from '../../support/random-rotation.ts';

const plain: Scenario = {
  seed: 21,
  vehicle: { layout: 'rear-drive', axleRatio: 3.73, cylinders: 8, converter: true },
  rollingCircumferenceM: 2.4,
  wheelSpread: 0,
  drive: {
    durationS: 20,
    speed: { kind: 'steady', meanMps: 24, driftSd: 0, driftTimeS: 5 },
    load: 'cruise',
    gearRatio: 0.7,
  },
  roadM3: 4e-6,
  faults: [],
  sensor: { rateHz: 250, mounting: rotationFromAngles(0, 0, 0), noiseDensity: 0, stepMps2: 0, jitterS: 0 },
};
const only = (fault: Fault, more: Partial<Scenario> = {}): Scenario => ({
  ...plain,
  faults: [fault],
  without: ['road', 'normal-orders', 'sensor-noise', 'manoeuvre'],
  ...more,
});

/** Amplitude over all axes of the part of a run that keeps step with an angle, radians. */
const inStep = (run: Simulation, angle: (timeS: number) => number, from = 0, to = Infinity): number => {
  const axes = run.accelerationMps2.map((axis) => {
    let re = 0;
    let im = 0;
    let n = 0;
    let weight = 0;
    const last = Math.min(to, run.timeS.at(-1)!);
    for (let i = 0; i < axis.length; i++) {
      const t = run.timeS[i]!;
      if (t < from || t > last) continue;
      const w = 1 - Math.cos((2 * Math.PI * (t - from)) / (last - from));
      re += w * axis[i]! * Math.cos(angle(t));
      im += w * axis[i]! * Math.sin(angle(t));
      weight += w;
      n++;
    }
    return n === 0 ? 0 : (2 * Math.hypot(re, im)) / weight;
  });
  return Math.hypot(...axes);
};
const atHz = (run: Simulation, hz: number, from = 0, to = Infinity): number =>
  inStep(run, (t) => 2 * Math.PI * hz * t, from, to);

describe('the simulated vehicle', () => {
  it('gives the same samples for the same scenario, and others for another seed', () => {
    const noisy: Scenario = { ...plain, sensor: { ...plain.sensor, noiseDensity: 0.002 } };
    expect(simulate(noisy).accelerationMps2[2]).toEqual(simulate(noisy).accelerationMps2[2]);
    expect(simulate(noisy).accelerationMps2[2]).not.toEqual(simulate({ ...noisy, seed: 22 }).accelerationMps2[2]);
  });

  it('adds a fault to what is there without changing it', () => {
    const fault: Fault = { kind: 'driveshaft-unbalance', levelMps2: 0.2 };
    const z = (scenario: Scenario): Float64Array => simulate(scenario).accelerationMps2[2];
    const both = z({ ...plain, faults: [fault] });
    const without = z(plain);
    const alone = z(only(fault));
    const g = 9.80665;
    for (let i = 0; i < both.length; i += 97) expect(both[i]! - without[i]! - (alone[i]! - g)).toBeCloseTo(0, 9);
  });

  it('turns the driveshaft by speed, circumference, axle ratio and a little slip, at the stated level', () => {
    const run = simulate(only({ kind: 'driveshaft-unbalance', levelMps2: 0.2 }));
    // 24 / 2.4 · 3.73 = 37.3 Hz; driven tires slip 0.35 % at cruise.
    const hz = (24 / 2.4) * 3.73 * 1.0035;
    expect(run.truth.orders[0]!.meanHz).toBeCloseTo(hz, 6);
    expect(atHz(run, hz) / 0.2).toBeGreaterThan(0.85);
    expect(atHz(run, hz) / 0.2).toBeLessThan(1.15);
    expect(atHz(run, hz * 1.01)).toBeLessThan(0.004);
    expect(atHz(run, hz * 2)).toBeLessThan(0.004);
  });

  const accessories = [{ name: 'alternator', ratio: 2.7 }];
  it.each([
    { kind: 'tire-unbalance', wheel: 'rear-left', levelMps2: 0.2 },
    { kind: 'tire-force-variation', wheel: 'front-right', orders: [1, 0.3, 0.2], levelMps2: 0.2 },
    { kind: 'driveshaft-angle', levelMps2: 0.2 },
    { kind: 'engine-unbalance', levelMps2: 0.2 },
    { kind: 'misfire', cylinder: 3, strength: 0.4, levelMps2: 0.2 },
    { kind: 'firing-through-mounts', levelMps2: 0.2 },
    { kind: 'accessory-unbalance', accessory: 0, levelMps2: 0.2 },
    { kind: 'half-shaft-tripod', side: 'left', levelMps2: 0.2 },
    { kind: 'fixed-tone', frequencyHz: 33, wander: 0, levelMps2: 0.2 },
  ] as const satisfies readonly Fault[])('makes $kind as strong in time as its path says', (fault) => {
    const vehicle = { ...plain.vehicle, accessories };
    const run = simulate(only(fault, { vehicle, sensor: { ...plain.sensor, rateHz: 500 } }));
    const orders = run.truth.orders.filter((o) => o.levelMps2 > 0.02);
    const byOrder = new Map<number, number>();
    for (const o of orders) byOrder.set(o.order, (byOrder.get(o.order) ?? 0) + o.levelMps2);
    expect(Math.max(...(fault.kind === 'misfire' ? [byOrder.get(0.5)!] : byOrder.values()))).toBeCloseTo(0.2, 2);
    for (const o of orders) {
      const seen = atHz(run, o.meanHz) / byOrder.get(o.order)!;
      // Levels wander by 8 %, the torque by 12 %; bends of the road turn the wheels a little unevenly.
      expect(seen).toBeGreaterThan(0.75);
      expect(seen).toBeLessThan(1.25);
    }
  });

  it('turns the engine through gear and converter slip', () => {
    const slipping = { ...plain.drive, converterSlip: 0.04 };
    const { truth } = simulate({ ...only({ kind: 'engine-unbalance', levelMps2: 0.1 }), drive: slipping });
    const shaftHz = (24 / 2.4) * 3.73 * 1.0035;
    // The slip itself wanders by a third.
    expect((truth.engineHz! * (1 - 0.04)) / (shaftHz * 0.7)).toBeGreaterThan(0.985);
    expect((truth.engineHz! * (1 - 0.04)) / (shaftHz * 0.7)).toBeLessThan(1.015);
    expect(simulate(plain).truth.engineHz!).toBeCloseTo(shaftHz * 0.7, 6);
  });

  it('keeps every order in step with the part’s own angle while the speed drifts', () => {
    const drifting = { ...plain.drive, speed: { ...plain.drive.speed, driftSd: 0.01 } } as Scenario['drive'];
    const run = simulate(only({ kind: 'driveshaft-angle', levelMps2: 0.2, coupleShare: 0 }, { drive: drifting }));
    const perMetre = (3.73 / 2.4) * 1.0035;
    // The angle is the integral of the speed, summed here anew.
    const stepS = 0.001;
    const turns = new Float64Array(Math.round(21 / stepS));
    for (let i = 1; i < turns.length; i++)
      turns[i] = turns[i - 1]! + perMetre * run.truth.speedAt((i - 0.5) * stepS) * stepS;
    const angle = (k: number) => (t: number) => 2 * Math.PI * k * turns[Math.round(t / stepS)]!;
    expect(inStep(run, angle(2))).toBeGreaterThan(0.17);
    // On plain frequency the same line is smeared to less than half.
    expect(atHz(run, 2 * 24 * perMetre)).toBeLessThan(0.1);
    expect(inStep(run, angle(1))).toBeLessThan(0.01);
  });

  it('lets unbalance grow with speed squared and a torque couple with torque', () => {
    const at = { speedMps: 24, load: 'cruise', gearRatio: 0.7 } as const;
    const level = (fault: Fault, speed: number, load: Scenario['drive']['load']): number => {
      const drive: Scenario['drive'] = {
        ...plain.drive,
        durationS: 1,
        load,
        speed: { ...plain.drive.speed, kind: 'steady', meanMps: speed },
      };
      return simulate(only({ ...fault, at }, { drive })).truth.orders.find((o) => o.order === fault_order(fault))!
        .levelMps2;
    };
    const fault_order = (fault: Fault): number => (fault.kind === 'driveshaft-angle' ? 2 : 1);
    const couple: Fault = { kind: 'driveshaft-angle', levelMps2: 0.1, coupleShare: 1 };
    // Torque shares: cruise 0.35, pull 1; the slip moves the line by 0.65 %, and the path with it.
    expect(level(couple, 24, 'pull') / level(couple, 24, 'cruise')).toBeGreaterThan(2.6);
    expect(level(couple, 24, 'pull') / level(couple, 24, 'cruise')).toBeLessThan(3.1);
    expect(level({ kind: 'driveshaft-unbalance', levelMps2: 0.1 }, 24, 'cruise')).toBeCloseTo(0.1, 3);
  });

  it('lets two tires of different size beat at the difference of their turning', () => {
    const one: Fault = { kind: 'tire-unbalance', wheel: 'front-left', levelMps2: 0.1 };
    const two: Fault = { kind: 'tire-unbalance', wheel: 'front-right', levelMps2: 0.1 };
    const long = { ...plain.drive, durationS: 60 };
    const run = simulate({ ...only(one), faults: [one, two], wheelSpread: 0.006, drive: long });
    const [a, b] = run.truth.orders.map((o) => o.meanHz) as [number, number];
    expect(Math.abs(a - b)).toBeGreaterThan(0.02);
    const envelope = Array.from({ length: 40 }, (_, i) => atHz(run, (a + b) / 2, i * 1.4, i * 1.4 + 2));
    const low = Math.min(...envelope);
    const high = Math.max(...envelope);
    expect(high / low).toBeGreaterThan(2);
  });

  it('folds what lies above half the rate of a sensor without a filter, and not with one', () => {
    const fault: Fault = { kind: 'driveshaft-angle', levelMps2: 0.3, coupleShare: 0 };
    const slow = { ...plain.sensor, rateHz: 100 };
    const folded = simulate(only(fault, { sensor: slow }));
    const hz = 2 * 10 * 3.73 * 1.0035;
    expect(atHz(folded, 100 - hz) / 0.3).toBeGreaterThan(0.85);
    const filtered = simulate(only(fault, { sensor: { ...slow, antiAliasHz: 30 } }));
    expect(atHz(filtered, 100 - hz)).toBeLessThan(0.3 * 0.06);
  });

  it('reads gravity upward whatever the mounting, and turns no length', () => {
    const mounting = rotationFromAngles(40, -30, 65);
    const run = simulate({
      ...plain,
      roadM3: 0,
      without: ['normal-orders', 'road'],
      sensor: { ...plain.sensor, mounting },
    });
    const mean = run.accelerationMps2.map((axis) => axis.reduce((a, b) => a + b, 0) / axis.length);
    expect(Math.hypot(...mean)).toBeCloseTo(9.80665, 6);
    mean.forEach((m, i) => expect(m).toBeCloseTo(9.80665 * mounting[3 * i + 2]!, 6));
    for (const r of [mounting, randomRotation(randomSource(1))])
      for (const i of [0, 1, 2])
        for (const j of [0, 1, 2]) {
          const dot = [0, 1, 2].reduce((s, k) => s + r[3 * i + k]! * r[3 * j + k]!, 0);
          expect(dot).toBeCloseTo(i === j ? 1 : 0, 12);
        }
  });

  it('shakes a loose panel to the stated level, spread over a band and not a line', () => {
    const fault: Fault = { kind: 'resonance', frequencyHz: 30, damping: 0.015, levelMps2: 0.2 };
    const run = simulate(only(fault, { drive: { ...plain.drive, durationS: 60 } }));
    const meanSquare = run.accelerationMps2.reduce((sum, axis, k) => {
      const mean = k === 2 ? 9.80665 : 0;
      return sum + axis.reduce((a, b) => a + (b - mean) ** 2, 0) / axis.length;
    }, 0);
    expect(Math.sqrt(2 * meanSquare) / 0.2).toBeGreaterThan(0.75);
    expect(Math.sqrt(2 * meanSquare) / 0.2).toBeLessThan(1.25);
    expect(atHz(run, 30)).toBeLessThan(0.1);
  });

  it('writes the engine speed that the engine really has, late', () => {
    const drive = { ...plain.drive, converterSlip: 0.03 };
    const run = simulate({ ...plain, drive, log: { engine: { rateHz: 5, stepRpm: 0.25, lagS: 0.2 } } });
    const mean = run.engineLog!.value.reduce((a, b) => a + b, 0) / run.engineLog!.value.length;
    expect(mean / 60 / run.truth.engineHz!).toBeCloseTo(1, 2);
  });

  it('feels the longitudinal pull of a ramp', () => {
    const speed = { kind: 'ramp', fromMps: 30, toMps: 20, shape: 'linear', driftSd: 0, driftTimeS: 1 } as const;
    const run = simulate({ ...plain, without: ['road', 'normal-orders'], drive: { ...plain.drive, speed } });
    const x = run.accelerationMps2[0];
    // 10 m/s over 20 s of recording and 2 s of lead.
    expect(x.reduce((a, b) => a + b, 0) / x.length).toBeCloseTo(-10 / 22.1, 2);
  });
});
