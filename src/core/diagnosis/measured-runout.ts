/** Runout and balance, as measured, turned into facts about checks. */
import { balanceByAmplitudes } from '../driveline/balance-amplitude.ts';
import { forceOfUnbalanceN } from '../driveline/balance-grade.ts';
import { polar, size, subtract } from '../driveline/complex.ts';
import type { LimitId } from '../driveline/limit.ts';
import { judge, limitOf } from '../driveline/limit.ts';
import type {
  BalanceAmplitudesMeasurement,
  BalancePhasorsMeasurement,
  FlangeReindexMeasurement,
  PhasorReading,
  RunoutMeasurement,
  RunoutPlace,
  WheelUnbalanceMeasurement,
} from '../driveline/measurement.ts';
import { bowUnbalanceGmm, endUnbalanceGmm, radialForceN } from '../driveline/runout-unbalance.ts';
import { evenReadings, fitRunout } from '../driveline/runout.ts';
import type { MeasuredFact } from './measured-fact.ts';
import { numberText, type ShaftAtSpeed } from './measured-shaft.ts';
import type { CheckId } from './weights.ts';

/** A change of the level by a third counts as an answer (common practice, no source). */
const ANSWERED = 1 / 3;
/** A trial weight whose effect is this share of the level settles the question; below it is too light. */
const LEAST_EFFECT = 0.3;
/** Trial readings that do not fit one rotor: weights are not what is wrong. */
const INCONSISTENT_SHARE = 0.6;
const WHEELS = 4;

const PLACES: Readonly<Record<RunoutPlace, { check: CheckId; limit: LimitId; coverage: number }>> = {
  'tube-front': { check: 'tube-runout', limit: 'tube-runout-ends', coverage: 1 / 3 },
  'tube-middle': { check: 'tube-runout', limit: 'tube-runout-middle', coverage: 1 / 3 },
  'tube-rear': { check: 'tube-runout', limit: 'tube-runout-ends', coverage: 1 / 3 },
  'companion-flange-radial': { check: 'companion-flange-runout', limit: 'flange-runout', coverage: 0.6 },
  'companion-flange-face': { check: 'companion-flange-runout', limit: 'flange-runout', coverage: 0.4 },
  'wheel-radial': { check: 'rim-runout', limit: 'wheel-runout-steel', coverage: 0.6 / WHEELS },
  'wheel-lateral': { check: 'rim-runout', limit: 'wheel-runout-steel', coverage: 0.4 / WHEELS },
  'tire-radial': { check: 'tire-runout', limit: 'tire-runout', coverage: 0.7 / WHEELS },
  'tire-lateral': { check: 'tire-runout', limit: 'tire-runout', coverage: 0.3 / WHEELS },
};

export function runoutFacts(measurement: RunoutMeasurement, shaft: ShaftAtSpeed): MeasuredFact[] {
  const { place, wheelMaterial } = measurement;
  const tirMm = tirOf(measurement);
  if (tirMm === null) return [];
  const { check, limit, coverage } = PLACES[place];
  const id = limit === 'wheel-runout-steel' && wheelMaterial === 'alloy' ? 'wheel-runout-alloy' : limit;
  const number = judge(tirMm, limitOf(id), `runout, ${place.replaceAll('-', ' ')}`);
  return [
    { checkId: check, share: number.share, text: numberText(number), coverage, forceN: forceN(place, tirMm, shaft) },
  ];
}

/** Once-a-turn part of the readings where they were taken around the clock, else the dial's total. */
function tirOf({ tirMm, readingsMm }: RunoutMeasurement): number | null {
  if (readingsMm && readingsMm.length >= 3) {
    const fit = fitRunout(evenReadings(readingsMm));
    if (fit.ok) return fit.value.runoutTirMm;
  }
  return tirMm ?? null;
}

function forceN(place: RunoutPlace, tirMm: number, { rpm, wheelRpm, massKgAt }: ShaftAtSpeed): number | null {
  if (place === 'tire-radial' || place === 'wheel-radial') return wheelRpm === null ? null : radialForceN(tirMm);
  const massKg = massKgAt(place === 'tube-front' ? 'front' : 'rear');
  if (rpm === null || massKg === null) return null;
  if (place === 'tube-middle') return forceOfUnbalanceN(bowUnbalanceGmm(tirMm, massKg), rpm);
  const carriesTheEnd = place === 'tube-front' || place === 'tube-rear' || place === 'companion-flange-radial';
  return carriesTheEnd ? forceOfUnbalanceN(endUnbalanceGmm(tirMm, massKg), rpm) : null;
}

export function reindexFacts({ levels }: FlangeReindexMeasurement): MeasuredFact[] {
  const found = levels.find(({ steps }) => steps === 0) ?? levels[0];
  if (!found || levels.length < 2 || found.amplitudeMps2 <= 0) return [];
  const change = Math.max(...levels.map(({ amplitudeMps2 }) => Math.abs(amplitudeMps2 / found.amplitudeMps2 - 1)));
  const text = `Turning the shaft on its flange changed the level by up to ${Math.round(100 * change)} %`;
  return [{ checkId: 'reindex-shaft', share: change / ANSWERED, text, forceN: null, coverage: 1 }];
}

const trialCheck = (part: 'driveshaft' | 'tire'): CheckId => (part === 'driveshaft' ? 'clamp-trial' : 'wheel-balancer');

export function amplitudeTrialFacts(measurement: BalanceAmplitudesMeasurement): MeasuredFact[] {
  const { part, baseline } = measurement;
  const solved = balanceByAmplitudes(measurement);
  if (!solved.ok) return [];
  const { trialEffect, verdict } = solved.value;
  if (verdict === 'inconsistent') {
    const text = 'The trial weight’s readings do not fit a heavy spot that a weight could balance';
    return [{ checkId: trialCheck(part), share: INCONSISTENT_SHARE, text, forceN: null, coverage: 1 }];
  }
  return [effectFact(part, trialEffect / baseline.amplitude)];
}

export function phasorTrialFacts({ part, baseline, trials }: BalancePhasorsMeasurement): MeasuredFact[] {
  const vector = ({ amplitude, phaseDeg }: PhasorReading) => polar(amplitude, phaseDeg);
  const effects = trials.flatMap(({ readings }) =>
    readings.map((reading, index) => {
      const before = baseline[index];
      return before && before.amplitude > 0 ? size(subtract(vector(reading), vector(before))) / before.amplitude : 0;
    }),
  );
  return effects.length === 0 ? [] : [effectFact(part, Math.max(...effects))];
}

/** A weight that moves the level moves it whatever the cause; that it does so by one rotor's law is what speaks. */
function effectFact(part: 'driveshaft' | 'tire', effect: number): MeasuredFact {
  const text = `The trial weight alone makes ${Math.round(100 * effect)} % of the level found, so a weight can take it away`;
  return { checkId: trialCheck(part), share: Math.min(3, effect / LEAST_EFFECT), text, forceN: null, coverage: 1 };
}

export function wheelUnbalanceFacts(
  measurement: WheelUnbalanceMeasurement,
  { wheelRpm }: ShaftAtSpeed,
): MeasuredFact[] {
  const { innerG, outerG, radiusMm } = measurement;
  const number = judge(Math.max(innerG, outerG), limitOf('wheel-unbalance'));
  const force = wheelRpm === null ? null : forceOfUnbalanceN((innerG + outerG) * radiusMm, wheelRpm);
  return [
    { checkId: 'wheel-balancer', share: number.share, text: numberText(number), forceN: force, coverage: 1 / WHEELS },
  ];
}
