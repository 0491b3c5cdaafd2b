/** Which of a recording's logged speeds is the vehicle's. The one place where that is decided. */
import type { Recording, Track } from './recording.ts';

const usable = (track: Track | undefined): Track | null => (track && track.value.length > 0 ? track : null);

/** The wheels' own speed is preferred to the road's: orders hang on it. Null where neither was logged. */
export const speedLogOf = ({
  wheelSpeedMps,
  roadSpeedMps,
}: Pick<Recording, 'wheelSpeedMps' | 'roadSpeedMps'>): Track | null => usable(wheelSpeedMps) ?? usable(roadSpeedMps);
