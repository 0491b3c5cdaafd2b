/** What one run shows, ready to be weighed: tones, what could have been missed, and the lines expected. */
import type { Note } from '../../note.ts';
import type { Span } from '../../reading/cut-recording.ts';
import type { Recording } from '../../reading/recording.ts';
import type { SpeedTrack } from '../../signal/speed/equal-angle.ts';
import type { AmplitudeSpectrum, Prepared, TimeFrequency } from '../../signal/spectra/spectrum.ts';
import type { ExpectedLines } from '../../vehicle/line.ts';
import type { LoggedCondition } from '../../vehicle/vehicle.ts';
import type { DetectionLimit } from '../origins/absence.ts';
import type { Histories } from '../origins/motion-model.ts';
import type { Tone } from '../origins/tone.ts';
import type { RoadJoints } from './road-joints.ts';

/** Root mean square of ln speed from which a change of speed is called a ramp. */
export const RAMP_WANDER = 0.03;

export interface RunEvidence {
  readonly name: string;
  readonly recording: Recording;
  /** The parts of the recording as it was read, where only these are judged: where it shook. */
  readonly part: readonly Span[] | null;
  readonly prepared: Prepared;
  readonly condition: LoggedCondition;
  /** Null where not one line can be computed; `notes` says why. */
  readonly expected: ExpectedLines | null;
  /** Without those of the road's joints. */
  readonly tones: readonly Tone[];
  readonly roadJoints: RoadJoints | null;
  readonly histories: Histories;
  readonly slipPossible: boolean;
  /** No engine: there are no engine lines to miss. */
  readonly isElectric: boolean;
  readonly limit: DetectionLimit;
  readonly spectrum: AmplitudeSpectrum;
  readonly floorMps2: Float64Array;
  readonly map: TimeFrequency;
  /** The histories found, and the spectrum evened by each; none where the speed was steady. Whose they are: `historyOf`. */
  readonly tracks: readonly SpeedTrack[];
  readonly orderSpectra: readonly AmplitudeSpectrum[];
  readonly engineLogged: boolean;
  /** By its log the speed changed so fast that an order is followed only where it stands out. */
  readonly changedFast: boolean;
  /** How much the whole shake rises and falls, loud tenth over quiet tenth, where no log tells why; else null. */
  readonly unevenShake: number | null;
  readonly speedVaried: 'steady' | 'drift' | 'ramp' | 'logged' | 'unknown';
  readonly notes: readonly Note[];
}

const NO_LINES: ExpectedLines = {
  wheelHz: null,
  wheelRelativeSd: 0,
  engineHz: null,
  engineRelativeSd: 0,
  engineTiedToRoad: false,
  engineTurnsPerWheelTurn: null,
  lines: [],
};

export const linesOrNone = (expected: ExpectedLines | null): ExpectedLines => expected ?? NO_LINES;
