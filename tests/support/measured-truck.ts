/** A rear-drive vehicle whose rolling circumference was measured, so that orders stand where arithmetic puts them. */
import type { Vehicle } from '../../src/core/vehicle/vehicle.ts';

export const CIRCUMFERENCE_M = 2.2;
export const AXLE_RATIO = 3.55;
export const MEASURED_TRUCK: Vehicle = {
  layout: 'rear-drive',
  axleRatio: AXLE_RATIO,
  cylinders: 8,
  tire: { kind: 'rolling-circumference', circumferenceM: CIRCUMFERENCE_M },
};
