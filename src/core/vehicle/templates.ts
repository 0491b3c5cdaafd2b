/** All lines a vehicle can have, before any speed is known. */
import { driveshaftTemplates, halfShaftTemplates, meshTemplates, tireTemplates } from './driveline-lines.ts';
import { engineTemplates } from './engine-lines.ts';
import type { LineTemplate } from './line-template.ts';
import type { Vehicle } from './vehicle.ts';

/**
 * Part, order and multiple of every line of a vehicle; road lines first. A part whose ratio is missing has none.
 * Lets the diagnosis try a speed that nobody stated.
 */
export const lineTemplates = (vehicle: Vehicle): readonly LineTemplate[] => [
  ...tireTemplates(),
  ...driveshaftTemplates(vehicle),
  ...halfShaftTemplates(vehicle),
  ...meshTemplates(vehicle),
  ...engineTemplates(vehicle),
];
