/** A car whose tire 1× shows directly and whose louder firing, at 75.6 Hz, only by its image: sampled at 100 Hz. */
import type { Recording } from '../../src/core/reading/recording.ts';
import { recordingOfOrders } from './orders.ts';
import { madeJob } from './made-job.ts';

/** 205/55R16 by 3.05 times its outer diameter, 631.9 mm, at 25 m/s. */
export const WHEEL_HZ = 25 / 1.927295;
/** Firing of four cylinders, in turns of a wheel. */
export const FIRING = 2 * 3.94 * 0.74;
export const FIRING_LABEL = 'engine 2× (firing)';
const RATE_HZ = 100;
/** By the sampling theorem; it moves the other way, three times as far as a line of that place would. */
export const IMAGE_HZ = RATE_HZ - FIRING * WHEEL_HZ;
export const TIRE_MPS2 = 0.15;
export const FIRING_MPS2 = 0.6;

export const foldedJob = madeJob(
  {
    tire: { kind: 'size', size: '205/55R16' },
    layout: 'front-drive',
    finalDrive: 3.94,
    cylinders: 4,
    converter: false,
  },
  { speedMps: 25, speedSource: 'gps', gearRatio: 0.74, load: 'cruise' },
);

export const foldedRecording = (): Recording =>
  recordingOfOrders({
    wheelHz: WHEEL_HZ,
    rateHz: RATE_HZ,
    seconds: 60,
    orders: [
      [1, TIRE_MPS2],
      [FIRING, FIRING_MPS2],
    ],
    seed: 3,
  });
