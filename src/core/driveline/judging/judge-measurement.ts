/** Any measurement → inside or outside its limits, with the numbers, their sources, and what they predict at speed. */
import type { Result } from '../../note.ts';
import { assertNever, success } from '../../note.ts';
import { axleRatioOf, frontAxleRatioOf } from '../../vehicle/ratios.ts';
import { turningSpeeds } from '../../vehicle/turning-speeds.ts';
import type { RunCondition, Vehicle } from '../../vehicle/vehicle.ts';
import { rpmFromHz } from '../../units.ts';
import { judgeAmplitudeTrials, judgePhasorTrials } from './judge-balance.ts';
import {
  judgeAngleMeasurement,
  judgeDoubleCardan,
  judgeEndPlayMeasurement,
  judgeRadialPlay,
  judgeRideHeight,
  judgeRingsMeasurement,
} from './judge-joint.ts';
import { judgeReindex, judgeRunoutMeasurement, judgeWheelUnbalance } from './judge-runout.ts';
import type { BenchConditions, JudgedMeasurement } from './judged-measurement.ts';
import { judgedAs } from './judged-measurement.ts';
import type { Measurement, ShaftPlace } from '../measurement.ts';

/** Driveshaft and wheel speed, rev/min, of a run; null where speed, tire or ratio is not known. */
export const benchSpeeds = (
  vehicle: Vehicle,
  condition: RunCondition,
  shaft: ShaftPlace = 'rear-driveshaft',
): Result<Pick<BenchConditions, 'driveshaftRpm' | 'wheelRpm'>> => {
  const speeds = turningSpeeds(vehicle, condition);
  if (!speeds.ok) return speeds;
  const wheelRpm = speeds.value.wheel === null ? null : rpmFromHz(speeds.value.wheel.hz);
  const ratio = shaft === 'front-driveshaft' ? frontAxleRatioOf(vehicle) : axleRatioOf(vehicle);
  return success({ wheelRpm, driveshaftRpm: wheelRpm === null || ratio === null ? null : wheelRpm * ratio });
};

/** Judge a measurement at known turning speeds. */
export const judgeAt = (
  measurement: Measurement,
  vehicle: Vehicle,
  conditions: BenchConditions,
): Result<JudgedMeasurement> => {
  switch (measurement.kind) {
    case 'working-angles':
      return judgeAngleMeasurement(measurement, conditions);
    case 'double-cardan':
      return success(judgeDoubleCardan(measurement, conditions));
    case 'ride-height':
      return success(judgeRideHeight(measurement, conditions));
    case 'end-play':
      return judgeEndPlayMeasurement(measurement, vehicle, conditions);
    case 'rings':
      return judgeRingsMeasurement(measurement, vehicle, conditions);
    case 'radial-play':
      return success(judgeRadialPlay(measurement, conditions));
    case 'runout':
      return judgeRunoutMeasurement(measurement, vehicle, conditions);
    case 'flange-reindex':
      return judgeReindex(measurement);
    case 'balance-amplitudes':
      return judgeAmplitudeTrials(measurement, conditions);
    case 'balance-phasors':
      return judgePhasorTrials(measurement, conditions);
    case 'wheel-unbalance':
      return success(judgeWheelUnbalance(measurement, conditions));
    case 'observation':
      return success(
        judgedAs('observation', null, [], { verdict: measurement.outcome === 'wrong' ? 'outside' : 'inside' }),
      );
    default:
      return assertNever(measurement);
  }
};
