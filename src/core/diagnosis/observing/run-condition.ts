/** What is used as a run's condition: as stated, with the recording's own logs where they say more. */
import type { Note } from '../../note.ts';
import type { Recording, Track } from '../../reading/recording.ts';
import { speedLogOf } from '../../reading/speed-log.ts';
import { mean } from '../../signal/numeric/statistics.ts';
import { statedDiffers } from '../drives/stated-speed.ts';
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

/** That a log is used; the mean stands with the run, as it is used: a log that is late is shifted first. */
const taken = (code: string, what: string, { columnName }: Track): Note => ({
  code,
  severity: 'info',
  text: `The ${what} speed is taken from the recording's own column '${columnName}'.`,
});

/** A speed stated as nothing says that the vehicle stood; it is no speed that anything could be computed from. */
const withoutNoSpeed = (stated: RunCondition): RunCondition => {
  const { speedMps = Infinity, ...rest } = stated;
  return speedMps < STANDING_MPS ? { ...rest, load: rest.load ?? 'standing' } : stated;
};

export const usedCondition = (given: RunCondition, recording: Recording): UsedCondition => {
  const speedLog = speedLogOf(recording);
  const logged = speedLog ? mean(speedLog.value) : 0;
  const stated = logged > STANDING_MPS ? given : withoutNoSpeed(given);
  const engineLog = recording.engineSpeedRpm?.value.length ? recording.engineSpeedRpm : null;
  const notes: Note[] = [];
  let condition: RunCondition = stated;
  if (speedLog) {
    if (logged > STANDING_MPS) {
      condition = { ...condition, speedMps: logged, speedSource: 'logged' };
      notes.push(taken('speed-from-log', 'road', speedLog), ...statedDiffers(stated.speedMps, logged));
    } else if (stated.load === undefined && stated.speedMps === undefined) {
      condition = { ...condition, load: 'standing' };
      notes.push({ code: 'stood', severity: 'info', text: 'By its speed column the vehicle stood during this run.' });
    }
  }
  if (engineLog && stated.engineRpm === undefined) {
    const rpm = mean(engineLog.value);
    if (rpm > 0) {
      condition = { ...condition, engineRpm: rpm };
      notes.push(taken('engine-speed-from-log', 'engine', engineLog));
    }
  }
  return { condition, speedLog, engineLog: stated.engineRpm === undefined ? engineLog : null, notes };
};
