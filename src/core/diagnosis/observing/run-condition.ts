/** What is used as a run's condition: as stated, with the recording's own logs where they say more. */
import type { Note } from '../../note.ts';
import type { Recording, Track } from '../../reading/recording.ts';
import { mean } from '../../signal/numeric/statistics.ts';
import { kmhFromMps, mphFromMps } from '../../units.ts';
import type { RunCondition } from '../../vehicle/vehicle.ts';

export interface UsedCondition {
  readonly condition: RunCondition;
  /** Where the road speed was logged: the track, in true or near-true m/s. */
  readonly speedLog: Track | null;
  readonly engineLog: Track | null;
  readonly notes: readonly Note[];
}

/** Below this the vehicle stood, and a track of it says nothing about wheels. */
const STANDING_MPS = 0.5;
/** A stated and a logged speed further apart than this are told to the reader. */
const WORTH_TELLING = 0.03;

const speedText = (mps: number): string => `${mphFromMps(mps).toFixed(1)} mph (${kmhFromMps(mps).toFixed(1)} km/h)`;

const usable = (track: Track | undefined): Track | null => (track && track.value.length > 0 ? track : null);

const speedNotes = (stated: number | undefined, logged: number, columnName: string): Note[] => {
  const notes: Note[] = [
    {
      code: 'speed-from-log',
      severity: 'info',
      text: `The road speed is taken from the recording's own column '${columnName}': ${speedText(logged)} on average.`,
    },
  ];
  if (stated !== undefined && Math.abs(stated / logged - 1) > WORTH_TELLING) {
    notes.push({
      code: 'stated-speed-differs',
      severity: 'warning',
      text: `The stated speed was ${speedText(stated)}; the logged one is used.`,
    });
  }
  return notes;
};

/** A speed stated as nothing says that the vehicle stood; it is no speed that anything could be computed from. */
const withoutNoSpeed = (stated: RunCondition): RunCondition => {
  const { speedMps = Infinity, ...rest } = stated;
  return speedMps < STANDING_MPS ? { ...rest, load: rest.load ?? 'standing' } : stated;
};

/** The wheel's own speed is preferred to the road's: orders hang on it. */
export const usedCondition = (given: RunCondition, recording: Recording): UsedCondition => {
  const speedLog = usable(recording.wheelSpeedMps) ?? usable(recording.roadSpeedMps);
  const logged = speedLog ? mean(speedLog.value) : 0;
  const stated = logged > STANDING_MPS ? given : withoutNoSpeed(given);
  const engineLog = usable(recording.engineSpeedRpm);
  const notes: Note[] = [];
  let condition: RunCondition = stated;
  if (speedLog) {
    if (logged > STANDING_MPS) {
      condition = { ...condition, speedMps: logged, speedSource: 'logged' };
      notes.push(...speedNotes(stated.speedMps, logged, speedLog.columnName));
    } else if (stated.load === undefined && stated.speedMps === undefined) {
      condition = { ...condition, load: 'standing' };
      notes.push({ code: 'stood', severity: 'info', text: 'By its speed column the vehicle stood during this run.' });
    }
  }
  if (engineLog && stated.engineRpm === undefined) {
    const rpm = mean(engineLog.value);
    if (rpm > 0) {
      condition = { ...condition, engineRpm: rpm };
      notes.push({
        code: 'engine-speed-from-log',
        severity: 'info',
        text: `The engine speed is taken from the column '${engineLog.columnName}': ${rpm.toFixed(0)} rpm on average.`,
      });
    }
  }
  return { condition, speedLog, engineLog: stated.engineRpm === undefined ? engineLog : null, notes };
};
