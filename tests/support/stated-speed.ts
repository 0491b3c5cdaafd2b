/** Speeds as a driver reads them off. */
import type { RandomSource } from '../../src/core/simulate/random.ts';
import { kmhFromMps, mphFromMps, mpsFromKmh, mpsFromMph } from '../../src/core/units.ts';
import type { SpeedSource } from '../../src/core/vehicle/vehicle.ts';

/**
 * A speed as it would be stated for the job.
 * Dial: reads high within UN R39 (0 to 10 % + 4 km/h; most are 1..5 % high), to the nearest 5 mph.
 * GPS: standard deviation 0.1 m/s. On-board: whole km/h, cut or rounded, from the factory tire. Logged: as GPS.
 */
export const statedSpeedMps = (trueMps: number, source: SpeedSource, random: RandomSource): number => {
  switch (source) {
    case 'dial': {
      const shown = trueMps * (1 + random.between(0, 0.045)) + mpsFromKmh(random.between(0, 1));
      return mpsFromMph(Math.round(mphFromMps(shown) / 5) * 5);
    }
    case 'gps':
    case 'logged':
      return trueMps + 0.1 * random.normal();
    case 'obd': {
      const shown = kmhFromMps(trueMps * (1 + 0.005 * random.normal()));
      return mpsFromKmh(random.chance(0.5) ? Math.floor(shown) : Math.round(shown));
    }
  }
};
