/** What the search for the speed's history is told of the vehicle. */
import type { SpeedTrack } from '../../signal/speed/equal-angle.ts';

export interface LoggedHistory {
  readonly track: SpeedTrack;
  /** The speed changed so fast that steps and lag of the log leave many percent, which come and go within seconds. */
  readonly steep: boolean;
}

export interface TrackSearch {
  /** Expected wheel (or engine) speed at the stated speed, Hz, and the expected lines as multiples of it. */
  readonly baseHz: number | null;
  readonly multiples: readonly number[];
  /** Those of them that gears tie to the base, where some are not: an engine's speed that was read by hand is 1 % off. */
  readonly tiedMultiples: readonly number[] | null;
  /** Where lines are expected that only a recording at its full rate holds, Hz: tooth mesh and motor orders. */
  readonly highLinesHz: readonly number[];
  /** The same of firing: asked where nothing slower shows how the speed moved. */
  readonly highFiringHz: readonly number[];
  /** ln prior of ln(mean speed over stated). */
  readonly logPrior: (scale: number) => number;
  /** Factors of the vehicle's speed over a track's, if tones that the track keeps together are images of lines. */
  readonly imageFactors: (tonesHz: readonly number[]) => readonly number[];
  /** The run was driven as a pull-up or coast-down. */
  readonly wasSwept: boolean;
  /** A history known from a log; the search is for what is left of it. */
  readonly logged: LoggedHistory | null;
  /** The engine's own, from a log of its speed; null where there is none that says more than the lines do. */
  readonly engineLogged: SpeedTrack | null;
}
