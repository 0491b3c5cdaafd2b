/** How much of a whole check one reading is: a tube has three stations, a shaft two joints or more, a car four wheels. */
import type { Measurement, RunoutPlace } from '../../driveline/measurement.ts';
import type { Vehicle } from '../../vehicle/vehicle.ts';

const WHEELS = 4;

const COVERAGE_OF_PLACE: Readonly<Record<RunoutPlace, number>> = {
  'tube-front': 1 / 3,
  'tube-middle': 1 / 3,
  'tube-rear': 1 / 3,
  'companion-flange-radial': 0.6,
  'companion-flange-face': 0.4,
  'wheel-radial': 0.6 / WHEELS,
  'wheel-lateral': 0.4 / WHEELS,
  'tire-radial': 0.7 / WHEELS,
  'tire-lateral': 0.3 / WHEELS,
};

/** Share of the check, 0..1, by judgment. A good reading clears only what it covers; a bad one needs no others. */
export function coverageOf(measurement: Measurement, { driveshaftPieces = [] }: Vehicle): number {
  const joints = driveshaftPieces.length === 0 ? 2 : driveshaftPieces.length + 1;
  switch (measurement.kind) {
    case 'end-play':
      return 1 / joints;
    case 'rings':
      return Math.min(1, measurement.axes.length / 2) / joints;
    case 'runout':
      return COVERAGE_OF_PLACE[measurement.place];
    case 'wheel-unbalance':
      return 1 / WHEELS;
    case 'ride-height':
      return measurement.axle === 'rear' ? 0.7 : 0.5;
    case 'radial-play':
      // A dial finds the play of a centre bearing, but not its roughness or torn rubber.
      return measurement.place === 'slip-yoke' ? 1 : 0.7;
    default:
      return 1;
  }
}
