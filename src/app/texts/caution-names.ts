/** What each caution is about, in a few words, for where it is folded. */
import type { CautionId } from '../../core/cautions.ts';

export const cautionNames: Readonly<Record<CautionId, string>> = {
  'road-test': 'road test',
  'stop-at-once': 'when to stop at once',
  hoist: 'hoist and stands',
  'ride-height': 'ride height',
  'one-wheel-free': 'driven wheels free',
  'turning-parts': 'turning parts',
  'trial-weight': 'trial weight',
  'shaft-out': 'shaft out',
  reassembly: 'before running',
  'wheel-off': 'wheel off',
  'brake-test': 'brake test',
  'brake-dust': 'brake dust',
  'hot-parts': 'hot parts',
  'ignition-voltage': 'ignition voltage',
  'hot-catalyst': 'hot catalytic converter',
  'fuel-system': 'fuel under pressure',
  'standing-engine': 'engine running, standing',
  'against-the-brake': 'loading the engine against the brake',
  cranking: 'cranking with the plugs out',
  'neutral-coast': 'coasting in neutral',
  'belt-off': 'belt off',
  'level-down': 'not a clearance',
  'high-voltage': 'high voltage',
  'compressed-springs': 'loaded springs',
};
