/** What the report says of a run: how it was driven, and the speed the recording itself implies. */
import { RAMP_WANDER } from '../../diagnosis/observing/run-evidence.ts';
import type { RunInference } from '../../diagnosis/matching/infer-run.ts';
import { rpmFromHz } from '../../units.ts';
import { axleRatioOf } from '../../vehicle/ratios.ts';
import { rollingCircumference } from '../../vehicle/rolling.ts';
import type { Vehicle } from '../../vehicle/vehicle.ts';
import type { RunReport, SpeedReport } from '../report.ts';
import { jointsNote } from './road-joints-words.ts';
import { speedMismatch } from './speed-mismatch.ts';

/**
 * In a straight launch or stop a log that is late looks much like one that reads high or low: half a second of it is worth
 * so much, relative. Judgment, by a stop from 65 to 20 mph in six seconds.
 */
const LAG_WORTH = 0.08;

const speedReport = (inference: RunInference, vehicle: Vehicle): SpeedReport => {
  const { run, posterior } = inference;
  const stated = run.condition.speedMps ?? null;
  const tire = vehicle.tire ? rollingCircumference(vehicle.tire) : null;
  const circumferenceM = tire?.ok ? tire.value.circumferenceM : null;
  const wheelHz = run.expected?.wheelHz ?? null;
  const base = {
    statedMps: stated,
    source: run.condition.speedSource ?? ('unknown' as const),
    circumferenceM,
  };
  if (wheelHz === null || stated === null || circumferenceM === null) {
    return {
      ...base,
      usedMps: stated,
      scale: 1,
      scaleSd: 0,
      impliedCircumferenceM: null,
      impliedCircumferenceSdM: null,
    };
  }
  const impliedWheelHz = wheelHz * Math.exp(posterior.road.mean);
  const scale = (impliedWheelHz * circumferenceM) / stated;
  const implied = stated / impliedWheelHz;
  return {
    ...base,
    usedMps: impliedWheelHz * circumferenceM,
    scale,
    scaleSd: scale * posterior.road.sd,
    impliedCircumferenceM: implied,
    impliedCircumferenceSdM: implied * posterior.road.sd,
  };
};

const engineReport = ({ run, posterior }: RunInference): RunReport['engine'] => {
  const { expected, condition } = run;
  if (!expected || expected.engineHz === null) return { usedRpm: null, source: 'unknown' };
  const usedRpm = rpmFromHz(expected.engineHz * Math.exp(posterior.engine.mean));
  if (expected.engineTiedToRoad) return { usedRpm, source: 'gear' };
  const logged = run.recording.engineSpeedRpm !== undefined && run.engineLogged;
  return { usedRpm, source: logged && condition.engineRpm !== undefined ? 'logged' : 'given' };
};

/** A run that a line's image made look like a ramp was none. */
const speedVaried = (inference: RunInference): RunReport['speedVaried'] => {
  const { speedVaried: seen, histories } = inference.run;
  if (seen === 'logged' || seen === 'steady') return seen;
  const { road, factor } = inference.model;
  if (road === null) return 'unknown';
  return Math.abs(factor) * (histories.wander[road] ?? 0) > RAMP_WANDER ? 'ramp' : 'drift';
};

export const runReport = (inference: RunInference, file: string, vehicle: Vehicle): RunReport => {
  const { recording, condition, name, notes, expected } = inference.run;
  const speed = speedReport(inference, vehicle);
  const statedSd = Math.hypot(expected?.wheelRelativeSd ?? 0, inference.run.changedFast ? LAG_WORTH : 0);
  const mismatch = expected && speedMismatch(speed, statedSd, axleRatioOf(vehicle));
  const joints = inference.run.roadJoints;
  const more = [mismatch, joints && jointsNote(joints)].filter((note) => note !== null);
  return {
    name,
    file,
    samplingRateHz: recording.samplingRateHz,
    durationS: recording.durationS,
    axes: recording.channels.map((channel) => channel.axis),
    load: condition.load ?? null,
    gearRatio: condition.gearRatio ?? null,
    speed,
    engine: engineReport(inference),
    speedVaried: speedVaried(inference),
    notes: [...notes, ...more],
  };
};
