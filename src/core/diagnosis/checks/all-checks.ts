/** The catalogue of checks, and how likely each is to find something wrong under a given cause. */
import type { Part } from '../../vehicle/line.ts';
import type { Vehicle } from '../../vehicle/vehicle.ts';
import type { Check } from './check.ts';
import { accessoryChecks } from './accessory.ts';
import { driveshaftChecks } from './driveshaft.ts';
import { engineChecks } from './engine.ts';
import { fixedChecks } from './fixed.ts';
import { jointChecks } from './joint.ts';
import { runChecks } from './further-run.ts';
import { supportChecks } from './support.ts';
import { suspensionChecks } from './suspension.ts';
import { wheelChecks } from './wheel.ts';
import type { CheckId, CheckWeights } from '../weights.ts';
import { CHECK_WEIGHTS } from '../weights.ts';

export const ALL_CHECKS: readonly Check[] = [
  ...driveshaftChecks,
  ...supportChecks,
  ...jointChecks,
  ...wheelChecks,
  ...suspensionChecks,
  ...engineChecks,
  ...accessoryChecks,
  ...fixedChecks,
  ...runChecks,
];

const BY_ID = new Map<string, Check>(ALL_CHECKS.map((check) => [check.id, check]));

/** The check with this id; undefined where a job file names one that is not in the catalogue. */
export const checkOf = (id: string): Check | undefined => BY_ID.get(id);

export const checkWeights = (id: CheckId): CheckWeights => CHECK_WEIGHTS[id];

/**
 * P(the check finds something wrong | this cause, or this part where the cause is not known): the part's
 * by its name, else the cause's own value, else its part's, else the share of healthy vehicles.
 *
 * @param causeId cause, 'something-else', or null where only the part is known
 * @param name of several parts of a kind: 'front driveshaft'
 */
export function wrongProbability(id: CheckId, causeId: string | null, part: Part, name?: string): number {
  const { wrong, parts, names, rest } = checkWeights(id);
  const byCause: Readonly<Record<string, number | undefined>> = wrong;
  const byName = name === undefined ? undefined : names?.[name];
  return byName ?? (causeId === null ? undefined : byCause[causeId]) ?? parts?.[part] ?? rest;
}

/**
 * Likelihood of an outcome of which it is only known with probability `wrongness` that something is truly wrong. The
 * one formula by which outcomes are expected and by which they move causes.
 */
export const outcomeLikelihood = (wrongness: number, wrongProbability: number): number =>
  wrongness * wrongProbability + (1 - wrongness) * (1 - wrongProbability);

/** The checks that can be made on a vehicle. */
export const checksOn = (vehicle: Vehicle): readonly Check[] =>
  ALL_CHECKS.filter(({ applies }) => applies?.(vehicle) ?? true);

/** Checks that speak to a cause and can be made on the vehicle, the most telling first. */
export function checksFor(causeId: string, part: Part, vehicle: Vehicle): CheckId[] {
  return checksOn(vehicle)
    .map(({ id }) => ({ id, tells: contrast(id, causeId, part) }))
    .filter(({ tells }) => tells > 0)
    .sort((a, b) => b.tells - a.tells || (a.id < b.id ? -1 : 1))
    .map(({ id }) => id);
}

/** How far the cause's value stands from what other causes of its part would show; 0 where it is not listed. */
function contrast(id: CheckId, causeId: string, part: Part): number {
  const { wrong, parts, rest } = checkWeights(id);
  const own = (wrong as Readonly<Record<string, number | undefined>>)[causeId];
  return own === undefined ? 0 : Math.abs(own - (parts?.[part] ?? rest));
}
