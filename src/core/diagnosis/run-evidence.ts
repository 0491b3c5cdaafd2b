/** What one run shows, ready to be weighed: tones, what could have been missed, and the lines expected. */
import type { Note } from '../note.ts';
import type { Recording } from '../reading/recording.ts';
import type { AmplitudeSpectrum, Prepared, TimeFrequency } from '../signal/spectrum.ts';
import { findPeaks } from '../signal/detect.ts';
import { feltLevel } from '../signal/felt.ts';
import { amplitudeFloor } from '../signal/floor.ts';
import { prepare, preparationNotes } from '../signal/prepare.ts';
import { timeFrequency } from '../signal/time-frequency.ts';
import { welchAmplitude } from '../signal/welch.ts';
import { powerOfTwoAtLeast } from '../signal/fft.ts';
import { expectedLines } from '../vehicle/expected-lines.ts';
import type { ExpectedLines } from '../vehicle/line.ts';
import type { RunCondition, Vehicle } from '../vehicle/vehicle.ts';
import type { DetectionLimit } from './absence.ts';
import { detectionLimit } from './detection-limit.ts';
import { usedCondition } from './run-condition.ts';
import type { Tone } from './tone.ts';

export interface RunEvidence {
  readonly name: string;
  readonly recording: Recording;
  readonly prepared: Prepared;
  readonly condition: RunCondition;
  /** Null where not one line can be computed; `notes` says why. */
  readonly expected: ExpectedLines | null;
  readonly tones: readonly Tone[];
  readonly limit: DetectionLimit;
  readonly spectrum: AmplitudeSpectrum;
  readonly floorMps2: Float64Array;
  readonly map: TimeFrequency;
  readonly speedTrack: { readonly timeS: Float64Array; readonly relative: Float64Array };
  readonly orderSpectrum: AmplitudeSpectrum | null;
  readonly engineLogged: boolean;
  readonly speedVaried: 'steady' | 'drift' | 'ramp' | 'logged' | 'unknown';
  readonly notes: readonly Note[];
}

const SPECTRUM_SEGMENT_S = 8;

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

export const observeRun = (vehicle: Vehicle, stated: RunCondition, recording: Recording, name: string): RunEvidence => {
  const prepared = prepare(recording);
  const used = usedCondition(stated, recording);
  const notes: Note[] = [...recording.notes, ...preparationNotes(recording), ...used.notes];
  const rate = prepared.samplingRateHz;
  const lines = expectedLines(vehicle, used.condition, {
    samplingRateHz: rate,
    engineLogged: used.engineLog !== null,
  });
  if (!lines.ok) {
    const { code, message, remedy } = lines.problem;
    notes.push({ code, severity: 'warning', text: `${message} ${remedy}` });
  }
  const spectrum = welchAmplitude(prepared, { segmentLength: powerOfTwoAtLeast(SPECTRUM_SEGMENT_S * rate) });
  const floorMps2 = amplitudeFloor(spectrum, recording.channels.length);
  const tones = findPeaks(prepared).map((peak): Tone => ({
    peak,
    feltLevel: feltLevel(peak.frequencyHz, peak.amplitudeMps2, peak.verticalShare),
    roadSlope: null,
    engineSlope: null,
  }));
  return {
    name,
    recording,
    prepared,
    condition: used.condition,
    expected: lines.ok ? lines.value : null,
    tones,
    limit: detectionLimit(spectrum, floorMps2, recording.channels.length),
    spectrum,
    floorMps2,
    map: timeFrequency(prepared),
    speedTrack: { timeS: Float64Array.of(recording.segments[0]?.startS ?? 0), relative: Float64Array.of(1) },
    orderSpectrum: null,
    engineLogged: used.engineLog !== null,
    speedVaried: 'unknown',
    notes,
  };
};
