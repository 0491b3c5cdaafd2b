/** What a person would notice of a tone: felt, heard, or not at all. The one place where that is decided. */
import { PERCEPTION_THRESHOLD_MPS2, weightingVertical } from '../../signal/felt.ts';
import type { Peak } from '../../signal/peaks/peak.ts';
import { NOTICED_FROM } from './over-road.ts';

/** From this felt level on a tone is felt (1 is the threshold itself, by definition of the level). */
export const FELT_FROM = 1;
/** Above this the seat feels little, and what reaches a person is sound. Judgment. */
const HEARD_FROM_HZ = 80;
/** A drone is as strong as a tone just felt at the lower edge: 0.11 m/s² at 80 Hz. Judgment. */
const HEARD_FROM_MPS2 = PERCEPTION_THRESHOLD_MPS2 / weightingVertical(HEARD_FROM_HZ);
/** And clear over the noise around it. Judgment. */
const HEARD_OVER_FLOOR_DB = 15;

/** 'buried': it would be felt on a smooth road, but the road's own shake about it covers it. */
export type Perceived = 'felt' | 'buried' | 'heard';

/**
 * 'felt' from felt level 1 on, 'buried' where the road covers that; 'heard' for a strong clear line above 80 Hz that the
 * seat does not pass on; else null.
 * @param overRoad root mean square over that of the road in the octave about it
 */
export const perceivedAs = (
  peak: Pick<Peak, 'frequencyHz' | 'amplitudeMps2' | 'overFloorDb'>,
  feltLevel: number,
  overRoad: number,
): Perceived | null => {
  if (feltLevel >= FELT_FROM) return overRoad >= NOTICED_FROM ? 'felt' : 'buried';
  const drone =
    peak.frequencyHz >= HEARD_FROM_HZ &&
    peak.amplitudeMps2 >= HEARD_FROM_MPS2 &&
    peak.overFloorDb >= HEARD_OVER_FLOOR_DB;
  return drone ? 'heard' : null;
};
