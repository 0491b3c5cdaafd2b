/** Measurements of runout and of wheels, judged. */
import type { Note, Result } from '../../note.ts';
import { failure, success } from '../../note.ts';
import { inchFromMm } from '../../units.ts';
import type { Vehicle } from '../../vehicle/vehicle.ts';
import { forceOfUnbalanceN } from '../balance/balance-grade.ts';
import { reindexByLevels } from '../runout/flange-reindex.ts';
import type { BenchConditions, JudgedMeasurement, Prediction } from './judged-measurement.ts';
import { judgedAs } from './judged-measurement.ts';
import type { LimitId } from '../limits/limit.ts';
import { judge, limitOf } from '../limits/limit.ts';
import type * as m from '../measurement.ts';
import type { RunoutFit } from '../runout/runout.ts';
import { evenReadings, fitRunout } from '../runout/runout.ts';
import { bowUnbalanceGmm, endUnbalanceGmm, radialForceN } from '../runout/runout-unbalance.ts';
import { pieceAtJoint, pieceMassKg } from '../shaft-tube.ts';

/** Limit that holds at a place. */
const runoutLimit = (place: m.RunoutPlace, wheelMaterial: 'steel' | 'alloy' = 'steel'): LimitId => {
  if (place === 'tube-middle') return 'tube-runout-middle';
  if (place.startsWith('tube')) return 'tube-runout-ends';
  if (place.startsWith('companion')) return 'flange-runout';
  return place.startsWith('tire') ? 'tire-runout' : `wheel-runout-${wheelMaterial}`;
};

/** 'tube, rear', 'companion flange, face': a place in words. */
export const placeText = (place: m.RunoutPlace): string => {
  const words = place.split('-');
  return `${words.slice(0, -1).join(' ')}, ${words.at(-1)}`;
};

/**
 * Runout held to its limit: the dial's total where only that was read; of readings around the clock the once-round part,
 * which is what shakes at 1×, told apart from ovality, from a dent and from scatter.
 */
export const judgeRunoutMeasurement = (
  measurement: m.RunoutMeasurement,
  vehicle: Vehicle,
  conditions: BenchConditions,
): Result<JudgedMeasurement> => {
  const { place, readingsMm, wheelMaterial } = measurement;
  const fit = readingsMm === undefined ? null : fitRunout(evenReadings(readingsMm));
  if (fit !== null && !fit.ok) return fit;
  const tirMm = fit?.value.tirMm ?? measurement.tirMm;
  if (tirMm === undefined || !(tirMm >= 0)) {
    return failure({
      code: 'runout-missing',
      key: 'tirMm',
      message: 'Neither a total indicator reading nor readings around the clock were given.',
      remedy: 'Enter how far the dial moved in a whole turn, or its readings at eight even steps.',
    });
  }
  const limit = limitOf(runoutLimit(place, wheelMaterial), conditions.limits);
  const title = `runout, ${placeText(place)}`;
  const spoiled = fit === null ? null : spoiledNote(fit.value, limit.value);
  if (fit !== null && spoiled !== null) {
    const onceMm = fit.value.oneOff?.restTirMm ?? fit.value.runoutTirMm;
    const judged = judge(onceMm, limit, `${title}, ${fit.value.oneOff ? 'by the other places' : 'once round'}`);
    return success(judgedAs('runout', 'runout', [judged], { verdict: 'cannot-tell', notes: [spoiled] }));
  }
  const ovalMm = fit?.value.ovalityTirMm ?? null;
  const onceMm = fit?.value.runoutTirMm ?? tirMm;
  const judged = ovalMm === null ? judge(tirMm, limit, title) : judge(onceMm, limit, `${title}, once round`);
  const text = `Most of the movement is ovality (${dialText(ovalMm ?? 0)} twice round), not runout (${dialText(onceMm)} once round): out of round does not shake once a turn, and turning the part on its seat does not cure it. Look for crushing.`;
  return success(
    judgedAs('runout', 'runout', [judged], {
      predicted: forceOfRunout(place, onceMm, vehicle, conditions),
      notes: (ovalMm ?? 0) > MOSTLY * onceMm ? [{ code: 'oval', severity: 'info', text }] : [],
    }),
  );
};

/** '0.30 mm (0.012 in)': both, since a note is read in both worlds. */
const dialText = (mm: number): string => `${mm.toFixed(2)} mm (${inchFromMm(mm).toFixed(3)} in)`;

/** Ovality that is so many times the runout is most of the movement; judgment. */
const MOSTLY = 1.2;

/** Why readings around the clock say nothing of runout: one place that stands out, or scatter as large as they are. */
const spoiledNote = ({ oneOff, runoutTirMm, runoutTirSdMm, tirMm }: RunoutFit, limitMm: number): Note | null => {
  if (tirMm <= limitMm / 2) return null;
  if (oneOff !== null) {
    const { angleDeg, deviationMm } = oneOff;
    const text = `One place stands out, at ${Math.round(angleDeg)}°, ${dialText(Math.abs(deviationMm))} ${deviationMm < 0 ? 'below' : 'above'} where the others put it: a dent, weld spatter, paint or a balance weight under the tip. Look there, clean it, and read beside it; this is not bow.`;
    return { code: 'one-place', severity: 'warning', text };
  }
  if (runoutTirSdMm === null || runoutTirSdMm <= Math.max(runoutTirMm, limitMm / 2) / 2) return null;
  const text = `The readings scatter as much as they run out (${dialText(runoutTirMm)} once round, give or take ${dialText(runoutTirSdMm)}): clean the track, hold the tip square, and read again.`;
  return { code: 'readings-scatter', severity: 'warning', text };
};

const forceOfRunout = (
  place: m.RunoutPlace,
  onceMm: number,
  vehicle: Vehicle,
  { driveshaftRpm: rpm }: BenchConditions,
): Prediction[] => {
  if (place === 'tire-radial' || place === 'wheel-radial') {
    const where = 'at the wheel, from its stiffness, at any speed';
    return [{ part: 'tire', order: 1, quantity: 'force', value: radialForceN(onceMm), unit: 'N', where }];
  }
  const piece = pieceAtJoint(vehicle, place === 'tube-front' ? 'front' : 'rear');
  const mass = piece === undefined ? null : pieceMassKg(piece);
  const carriesShaft = place.startsWith('tube') || place === 'companion-flange-radial';
  if (rpm === null || rpm <= 0 || mass === null || !carriesShaft) return [];
  const unbalance =
    place === 'tube-middle' ? bowUnbalanceGmm(onceMm, mass.massKg) : endUnbalanceGmm(onceMm, mass.massKg);
  const where = place === 'tube-middle' ? 'along the tube, as bow' : 'along the tube, held off center at this end';
  const value = forceOfUnbalanceN(unbalance, rpm);
  return [{ part: 'driveshaft', order: 1, quantity: 'force', value, unit: 'N', where }];
};

/** Least change of the level, as a share, that says the pairing of shaft and flange matters; judgment. */
const CHANGE_THAT_COUNTS = 1 / 3;

/**
 * A shaft turned on its flange: 'outside' where the level changed by a third or more between positions, that is where
 * the way the two are paired matters.
 */
export const judgeReindex = ({ levels, boltCount }: m.FlangeReindexMeasurement): Result<JudgedMeasurement> => {
  const amplitudes = levels.map(({ steps, amplitudeMps2 }) => ({ steps, amplitude: amplitudeMps2 }));
  const positions = reindexByLevels(amplitudes, boltCount);
  if (!positions.ok) return positions;
  const highest = Math.max(...amplitudes.map(({ amplitude }) => amplitude));
  const change = highest > 0 ? positions.value.spread / highest : 0;
  const best = positions.value.positions[0]!;
  const least = `The lowest level is ${best.tried ? 'found' : 'foretold'} with the shaft turned on by ${best.steps} of ${boltCount} bolt positions (${best.amplitude.toFixed(3)} m/s²).`;
  const text =
    change >= CHANGE_THAT_COUNTS
      ? `The level changed by ${Math.round(100 * change)} % between positions, so shaft and flange add up. ${least}`
      : `The level changed by only ${Math.round(100 * change)} % between positions, so how shaft and flange are paired hardly matters.`;
  return success(
    judgedAs('flange-reindex', 'flange-reindex', [], {
      verdict: change >= CHANGE_THAT_COUNTS ? 'outside' : 'inside',
      notes: [{ code: 'reindexed', severity: 'info', text }],
    }),
  );
};

export const judgeWheelUnbalance = (
  { innerG, outerG, radiusMm }: m.WheelUnbalanceMeasurement,
  { wheelRpm, limits }: BenchConditions,
): JudgedMeasurement => {
  const limit = limitOf('wheel-unbalance', limits);
  const plane = (grams: number, name: string) => judge(Math.abs(grams), limit, `wheel unbalance, ${name} plane`);
  const predicted: Prediction[] = [];
  if (wheelRpm !== null) {
    const value = forceOfUnbalanceN((Math.abs(innerG) + Math.abs(outerG)) * radiusMm, wheelRpm);
    predicted.push({ part: 'tire', order: 1, quantity: 'force', value, unit: 'N', where: 'at the wheel, at most' });
  }
  return judgedAs('wheel-unbalance', 'wheel-balance', [plane(innerG, 'inner'), plane(outerG, 'outer')], { predicted });
};
