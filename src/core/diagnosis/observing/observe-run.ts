/** From a run's recording to what it shows: spectra, the speed's history, tones, and what could have been missed. */
import type { Note } from '../../note.ts';
import type { Recording, Track } from '../../reading/recording.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';
import { relativeSpeedAt, resampleToEqualAngle, type SpeedTrack } from '../../signal/speed/equal-angle.ts';
import { amplitudeFloor } from '../../signal/spectra/floor.ts';
import { withoutIdleRate } from '../../signal/prepare/decimate.ts';
import { shakeRange } from '../../signal/spectra/shake-range.ts';
import { prepare, preparationNotes } from '../../signal/prepare/prepare.ts';
import { timeFrequency } from '../../signal/spectra/time-frequency.ts';
import { welchAmplitude } from '../../signal/spectra/welch.ts';
import { powerOfTwoAtLeast } from '../../signal/spectra/fft.ts';
import { expectedLines } from '../../vehicle/expected-lines.ts';
import type { ExpectedLines, Line } from '../../vehicle/line.ts';
import type { LoggedCondition, RunCondition, Vehicle } from '../../vehicle/vehicle.ts';
import { detectionLimit } from './detection-limit.ts';
import { roadJointsOf } from './road-joints.ts';
import { linesOrNone, RAMP_WANDER, type RunEvidence } from './run-evidence.ts';
import { sensorMoved } from './sensor-moved.ts';
import { usedCondition } from './run-condition.ts';
import { imageFactors, isSweepLoad, sweepPriorOf } from '../origins/motion-model.ts';
import { findTones } from './find-tones.ts';
import { highestSearchedHz } from './peaks-on-track.ts';
import { toneFoldsOf } from './tone-folds.ts';
import { findTracks } from '../track/find-tracks.ts';
import { alignLog, isSteep, type AlignedLog } from '../track/aligned-log.ts';
import { HIGHEST_SHAKE_HZ } from '../../signal/peaks/detect.ts';
import { HIGHEST_HZ as WORK_HIGHEST_HZ, workSignal } from '../track/work-signal.ts';
import { trackFromLog } from '../track/logged-track.ts';
import type { LoggedHistory } from '../track/track-search.ts';

const SPECTRUM_SEGMENT_S = 8;

/** ln prior of ln(mean speed over stated) for the search of the speed's history; tails as of a wrong statement. */
const roadScalePrior = ({ wheelRelativeSd }: ExpectedLines): ((scale: number) => number) => {
  const sd = Math.max(wheelRelativeSd, 3e-3);
  return (scale) => -2.5 * Math.log1p((scale / sd) ** 2 / 4);
};

/** Share of half the rate up to which a line is followed. */
const FOLLOWED_SHARE = 0.9;

/** Lines of such roles that the search for the speed's history, made for the slower ones, does not reach, Hz. */
const highLinesOf = (
  lines: readonly Line[],
  samplingRateHz: number,
  roles: readonly Line['role'][],
): readonly number[] =>
  lines
    .filter(({ role, visibility }) => role && roles.includes(role) && visibility === 'below-half-rate')
    .map((line) => line.frequencyHz)
    .filter((hz) => hz > WORK_HIGHEST_HZ && hz < (FOLLOWED_SHARE * samplingRateHz) / 2);

/** Null where all lines are tied to the wheels. */
const tiedMultiples = ({ engineTiedToRoad, lines }: ExpectedLines, wheelHz: number): readonly number[] | null =>
  engineTiedToRoad
    ? null
    : lines.filter(({ group }) => group === 'road').map(({ frequencyHz }) => frequencyHz / wheelHz);

/** Slip between engine and wheels: a converter, a clutch, or speeds that are not tied at all. */
const canSlip = (vehicle: Vehicle, expected: ExpectedLines | null): boolean =>
  vehicle.layout !== 'electric' && (vehicle.converter !== false || expected?.engineTiedToRoad === false);

/** Root mean square of ln relative speed. */
const wanderOf = (track: SpeedTrack, timeS: Float64Array): number =>
  Math.sqrt(timeS.reduce((sum, t) => sum + Math.log(relativeSpeedAt(track, t)) ** 2, 0) / timeS.length);

/** A shorter lag (s) is not worth a sentence. */
const LAG_TOLD_S = 0.15;
/** From this ratio on it was not one speed on one road: at one speed the roads tried stay under 1.8. Judgment. */
const UNEVEN_FROM = 2.2;

const unevenShake = (prepared: Prepared): number | null => {
  const range = shakeRange(prepared);
  return range < UNEVEN_FROM ? null : range;
};

/**
 * A log that changes fast, with its lag found; null for one that is good enough as it is, and where there is none.
 * @param perUnit expected lines, Hz per unit of the log
 */
const alignedTo = (prepared: Prepared, log: Track | null, perUnit: () => readonly number[]): AlignedLog | null =>
  log && isSteep(log) ? alignLog(workSignal(prepared), log, perUnit()) : null;

/** Lines of a group at a speed of that group's, per unit of the speed. */
const linesPerUnit = (
  vehicle: Vehicle,
  condition: RunCondition,
  group: Line['group'],
  speed: number | undefined,
): readonly number[] => {
  const lines = expectedLines(vehicle, condition, { engineLogged: false });
  if (!lines.ok || !speed) return [];
  return lines.value.lines.filter((line) => line.group === group).map(({ frequencyHz }) => frequencyHz / speed);
};

const inRevsPerSecond = (log: Track): Track => ({
  ...log,
  value: log.value.map((rpm) => rpm / 60),
  step: log.step / 60,
});

/** A log that had to be aligned changed fast. */
const asLogged = (track: SpeedTrack | null, aligned: AlignedLog | null): LoggedHistory | null =>
  track && { track, steep: aligned !== null };

const lagNotes = (aligned: AlignedLog | null): Note[] =>
  aligned?.lagS && aligned.lagS >= LAG_TOLD_S
    ? [
        {
          code: 'log-lags',
          severity: 'info',
          text: `By the recording’s own lines the logged speed is ${aligned.lagS.toFixed(1)} s late, which is allowed for.`,
        },
      ]
    : [];

const PICTURE_STEP_S = 0.5;

/** Times at even steps over all pieces, on the recording's clock. */
const timesOf = (prepared: Prepared): Float64Array => {
  const times: number[] = [];
  for (const { startS, axes } of prepared.pieces) {
    const length = (axes[0]?.length ?? 0) / prepared.samplingRateHz;
    for (let t = 0; t <= length; t += PICTURE_STEP_S) times.push(startS + t);
  }
  return Float64Array.from(times);
};

export const observeRun = (vehicle: Vehicle, stated: RunCondition, recording: Recording, name: string): RunEvidence => {
  const prepared = prepare(recording);
  // A faster recording is looked at no faster than this needs.
  const slow = withoutIdleRate(prepared, HIGHEST_SHAKE_HZ);
  const used = usedCondition(stated, recording);
  const { speedMps, engineRpm } = used.condition;
  const aligned = alignedTo(slow, used.speedLog, () => linesPerUnit(vehicle, used.condition, 'road', speedMps));
  const engineAligned = alignedTo(slow, used.engineLog && inRevsPerSecond(used.engineLog), () =>
    linesPerUnit(vehicle, used.condition, 'engine', engineRpm && engineRpm / 60),
  );
  const condition: LoggedCondition = {
    ...used.condition,
    ...(aligned && { speedMps: aligned.mean, speedLogSd: aligned.meanSd }),
    ...(engineAligned && { engineRpm: 60 * engineAligned.mean, engineLogSd: engineAligned.meanSd }),
  };
  const moved = sensorMoved(recording);
  const read = [...recording.notes, ...preparationNotes(recording), ...(moved ? [moved] : [])];
  const notes: Note[] = [...read, ...used.notes, ...lagNotes(aligned)];
  const rate = prepared.samplingRateHz;
  const lines = expectedLines(vehicle, condition, {
    samplingRateHz: rate,
    engineLogged: used.engineLog !== null,
  });
  if (!lines.ok) {
    const { code, message, remedy } = lines.problem;
    notes.push({ code, severity: 'warning', text: `${message} ${remedy}` });
  }
  const expected = lines.ok ? lines.value : null;
  const history = aligned?.track ?? (used.speedLog ? trackFromLog(used.speedLog) : null);
  const engineHistory = engineAligned?.track ?? (used.engineLog ? trackFromLog(inRevsPerSecond(used.engineLog)) : null);
  const { wheelHz, engineHz, lines: expectedList } = linesOrNone(expected);
  const linesHz = expectedList.map((line) => line.frequencyHz);
  const baseHz = wheelHz ?? engineHz;
  // Where the wheels stand, or their speed is not known, the engine's history is the one to follow.
  const logged = history || wheelHz !== null ? asLogged(history, aligned) : asLogged(engineHistory, engineAligned);
  const { tracks, gain } = findTracks(slow, {
    baseHz,
    multiples: baseHz === null ? [] : linesHz.map((hz) => hz / baseHz),
    tiedMultiples: expected && wheelHz !== null ? tiedMultiples(expected, wheelHz) : null,
    highLinesHz: highLinesOf(expectedList, slow.samplingRateHz, ['mesh', 'electric']),
    highFiringHz: highLinesOf(expectedList, slow.samplingRateHz, ['firing']),
    logPrior: roadScalePrior(linesOrNone(expected)),
    imageFactors: (tonesHz) => imageFactors(tonesHz, linesHz, rate),
    wasSwept: isSweepLoad(condition.load),
    logged,
    engineLogged: engineHistory,
  });
  const spectrum = welchAmplitude(slow, { segmentLength: powerOfTwoAtLeast(SPECTRUM_SEGMENT_S * slow.samplingRateHz) });
  const floorMps2 = amplitudeFloor(spectrum, recording.channels.length);
  const timeS = timesOf(prepared);
  const wander = tracks.map((one) => wanderOf(one, timeS));
  const evens = tracks.map((one) => resampleToEqualAngle(slow, one));
  const tones = findTones(slow, tracks, evens, {
    linesHz,
    samplingRateHz: rate,
    foldsOf: toneFoldsOf(recording, linesHz),
  });
  const roadJoints = roadJointsOf(tones, condition.speedMps);
  return {
    name,
    recording,
    part: null,
    prepared,
    condition,
    expected,
    tones: roadJoints ? tones.filter((tone) => !roadJoints.teeth.has(tone)) : tones,
    roadJoints,
    histories: {
      count: tracks.length,
      wander,
      logged: logged !== null,
      sweepPrior: sweepPriorOf(condition.load),
      durationS: prepared.durationS,
      gain,
    },
    slipPossible: canSlip(vehicle, expected),
    isElectric: vehicle.layout === 'electric',
    limit: detectionLimit(
      spectrum,
      floorMps2,
      recording.channels.length,
      rate,
      highestSearchedHz(tracks, slow.samplingRateHz),
    ),
    spectrum,
    floorMps2,
    map: timeFrequency(slow),
    tracks: tracks.map((one) => ({ timeS, relative: timeS.map((t) => relativeSpeedAt(one, t)) })),
    orderSpectra: evens.map((even) => welchAmplitude(even, { segmentLength: spectrum.segmentLength })),
    engineLogged: used.engineLog !== null,
    changedFast: aligned !== null,
    unevenShake: logged ? null : unevenShake(slow),
    speedVaried: logged ? 'logged' : tracks.length === 0 ? 'steady' : wander[0]! > RAMP_WANDER ? 'ramp' : 'drift',
    notes,
  };
};
