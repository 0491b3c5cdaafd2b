/** Outcomes of checks among a job's measurements: one for each check, the latest counts. */
import type { Measurement } from '../../core/driveline/measurement.ts';

export type Observation = Extract<Measurement, { kind: 'observation' }>;

const isOf =
  (checkId: string) =>
  (measurement: Measurement): measurement is Observation =>
    measurement.kind === 'observation' && measurement.checkId === checkId;

export function observationOf(measurements: readonly Measurement[], checkId: string): Observation | undefined {
  return measurements.find(isOf(checkId));
}

export function withoutObservation(measurements: readonly Measurement[], checkId: string): Measurement[] {
  const ofCheck = isOf(checkId);
  return measurements.filter((measurement) => !ofCheck(measurement));
}

export function withObservation(
  measurements: readonly Measurement[],
  checkId: string,
  outcome: Observation['outcome'],
): Measurement[] {
  return [...withoutObservation(measurements, checkId), { kind: 'observation', checkId, outcome }];
}
