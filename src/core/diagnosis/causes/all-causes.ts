/** The catalogue: every cause of every family. */
import type { Cause } from './cause.ts';
import { accessory } from './accessory.ts';
import { axleGears } from './axle-gears.ts';
import { brake } from './brake.ts';
import { driveshaftJoint } from './driveshaft-joint.ts';
import { driveshaftOnce } from './driveshaft-once.ts';
import { driveshaftTwice } from './driveshaft-twice.ts';
import { electricMotor } from './electric-motor.ts';
import { engineCauses } from './engine.ts';
import { fixed } from './fixed.ts';
import { fourWheelDrive } from './four-wheel-drive.ts';
import { halfShaft } from './half-shaft.ts';
import { jointFitting } from './joint-fitting.ts';
import { suspension } from './suspension.ts';
import { tire } from './tire.ts';

export const ALL_CAUSES: readonly Cause[] = [
  ...driveshaftOnce,
  ...driveshaftJoint,
  ...jointFitting,
  ...driveshaftTwice,
  ...fourWheelDrive,
  ...axleGears,
  ...tire,
  ...suspension,
  ...brake,
  ...halfShaft,
  ...engineCauses,
  ...electricMotor,
  ...accessory,
  ...fixed,
];
