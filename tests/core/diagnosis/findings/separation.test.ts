import { describe, expect, it } from 'vitest';
import type { Origin } from '../../../../src/core/diagnosis/origins/origin.ts';
import { separatedBy, type Candidate } from '../../../../src/core/diagnosis/findings/separation.ts';
import type { Part, SpeedGroup } from '../../../../src/core/vehicle/line.ts';
import type { Vehicle } from '../../../../src/core/vehicle/vehicle.ts';

const candidate = (part: Part, label: string, group: SpeedGroup, trueHz: number, image = false): Candidate => ({
  origin: { line: { part, label, perTurn: 1 }, group, trueHz } as unknown as Origin,
  image,
  trueHz,
});

const VEHICLE: Vehicle = { layout: 'rear-drive', gearRatios: [2.1, 1.4, 1, 0.7] };
const shaft = candidate('driveshaft', 'driveshaft 1×', 'road', 40);
const engine = candidate('engine', 'engine 1×', 'engine', 40);

// Every figure below is worked out by hand from the ratios given.
describe('the run that tells two origins apart', () => {
  it('is one in the nearest other gear, where engine and driveshaft turn alike in this one', () => {
    const text = separatedBy(shaft, engine, VEHICLE, { gearRatio: 1, speedMps: 26.8224 });
    // 1.4 is a little nearer than 0.7 (ln 1.4 = 0.336, ln 0.7 = −0.357): 1.4·40 = 56 Hz.
    expect(text).toBe(
      'In gear 1.40 at 60 mph (97 km/h) engine 1× would move to 56.0 Hz, 16.0 Hz away from driveshaft 1×.',
    );
    expect(separatedBy(engine, shaft, VEHICLE, { gearRatio: 1, speedMps: 26.8224 })).toBe(text);
  });

  it('leaves out gears that turn the engine nearly alike, or out of its range', () => {
    const near: Vehicle = { ...VEHICLE, gearRatios: [1.95, 1.04, 1, 0.44, 0.6] };
    expect(separatedBy(shaft, engine, near, { gearRatio: 1 })).toContain(
      'In gear 0.60 engine 1× would move to 24.0 Hz',
    );
  });

  it('is a coast in neutral where no gear is known: the engine falls to its idle of 700 rpm', () => {
    expect(separatedBy(engine, shaft, { layout: 'rear-drive' }, { gearRatio: 1 })).toBe(
      'Coasting in neutral engine 1× would fall to about 11.7 Hz (idle), 28.3 Hz away; driveshaft 1× stays where it is.',
    );
  });

  it('is no gear and no neutral for the motor of an electric vehicle, which is geared to the wheels', () => {
    const motor = candidate('engine', 'motor 1×', 'engine', 41);
    const text = separatedBy(shaft, motor, { layout: 'electric' }, { speedMps: 26.8224 });
    expect(text).toContain('They turn in a fixed ratio, 1.00 Hz apart here');
  });

  it('is one at a speed known to half their distance, where they turn in a fixed ratio', () => {
    const tire = candidate('tire', 'tire 3×', 'road', 41);
    // 1 Hz of 40 is 2.5 %; half of that tells which is which, and four periods of their beat tell one from two.
    expect(separatedBy(shaft, tire, VEHICLE, {})).toBe(
      'They turn in a fixed ratio, 1.00 Hz apart here: a speed known to 1.3 % (GPS, or a measured roll-out) and a ' +
        'steady run of 4 s or more tells them apart.',
    );
  });

  it('is a coast where one of two at one rate follows the torque', () => {
    const tripod = candidate('half-shaft', 'half-shaft 3×', 'road', 40);
    const tire = candidate('tire', 'tire 3×', 'road', 40.03);
    for (const text of [separatedBy(tripod, tire, VEHICLE, {}), separatedBy(tire, tripod, VEHICLE, {})])
      expect(text).toContain('half-shaft 3× fades with the torque; tire 3× stays');
  });

  it('is one with the belt off where one of two at one rate hangs on it, else one with a part swapped', () => {
    const pump = candidate('accessory', 'water pump 1×', 'engine', 40);
    for (const text of [separatedBy(pump, engine, VEHICLE, {}), separatedBy(engine, pump, VEHICLE, {})])
      expect(text).toContain('With its belt off, or its load changed, water pump 1× goes or changes');
    const other = candidate('engine', 'engine 2×', 'engine', 40);
    expect(separatedBy(engine, other, VEHICLE, {})).toContain('swapping or disconnecting one of the two');
  });

  it('is one recorded fast enough, where one is an image', () => {
    const firing = candidate('engine', 'engine 2× (firing)', 'engine', 87, true);
    const text = 'Recorded at 250 Hz or more, engine 2× (firing) would show at 87.0 Hz, 47.0 Hz away.';
    expect(separatedBy(shaft, firing, VEHICLE, {})).toBe(text);
    expect(separatedBy(firing, shaft, VEHICLE, {})).toBe(text);
  });

  it('is one recorded fast enough, where two images of unlike orders fall on one place', () => {
    // At 50 Hz both 84.2 and 34.2 Hz show at 15.8 Hz.
    const twice = candidate('driveshaft', 'driveshaft 2×', 'road', 84.2, true);
    const tire = candidate('tire', 'tire 3×', 'road', 34.2, true);
    const text = 'Recorded at 250 Hz or more, driveshaft 2× would show at 84.2 Hz, 50.0 Hz away from tire 3×.';
    expect(separatedBy(twice, tire, VEHICLE, {})).toBe(text);
    expect(separatedBy(tire, twice, VEHICLE, {})).toBe(text);
  });
});
