/** What a measurement says of the checks it belongs to: the bench's judgment, sorted by check. */
import { isTwisted, withForksInLine } from '../../driveline/angles/forks.ts';
import { judgeAt } from '../../driveline/judging/judge-measurement.ts';
import type { JudgedMeasurement } from '../../driveline/judging/judged-measurement.ts';
import { worstOf } from '../../driveline/judging/judged-measurement.ts';
import type { JudgedNumber, LimitId, LimitOverrides } from '../../driveline/limits/limit.ts';
import { limitOf } from '../../driveline/limits/limit.ts';
import type { Measurement, ObservationMeasurement, RingsMeasurement } from '../../driveline/measurement.ts';
import { READING_ERROR_MM, seatAxis } from '../../driveline/rings/ring-seat.ts';
import type { Vehicle } from '../../vehicle/vehicle.ts';
import { checkOf } from '../checks/all-checks.ts';
import { inchText, limitInchText, withUnit } from '../checks/limit-text.ts';
import { coverageOf } from './measured-coverage.ts';
import type { MeasuredFact } from './measured-fact.ts';
import type { CheckId } from '../weights.ts';
import { capitalized } from '../../words.ts';

/** Speeds of the finding, rev/min, null where it is of another part; and whether it is once a turn. */
export interface FindingSpeeds {
  readonly driveshaftRpm: number | null;
  readonly wheelRpm: number | null;
  readonly once: boolean;
}

/** End play over which belief in a tight joint turns, mm: about what a micrometer leaves unsure. */
const TIGHT_BLUR_MM = 0.01;
/** A verdict without a number counts as this far from the limit; trial runs that fit no rotor as a weak 'fine'. */
const CLEAR_SHARE = 2;
const UNFIT_SHARE = 0.8;
/** A trial weight too light to be sure of. */
const LIGHT_SHARE = 1.2;
/** What a person saw is as sure as a reading can be. */
const SEEN_SHARE = 10;

/** Which check a limit of the bench belongs to. */
const CHECK_OF_LIMIT: Readonly<Partial<Record<LimitId, CheckId>>> = {
  'residual-acceleration': 'working-angles',
  'joint-angle-difference': 'working-angles',
  'inertia-drive': 'joint-angle-size',
  'inertia-coast': 'joint-angle-size',
  'joint-angle-most': 'joint-angle-size',
  'fork-twist': 'phasing-marks',
  'double-cardan-split': 'double-cardan-play',
  'ride-height': 'ride-height',
  'end-play': 'joint-end-play',
  'ring-difference': 'ring-thickness',
  'slip-yoke-play': 'slip-yoke-play',
  'center-bearing-play': 'center-bearing-inspection',
  'tube-runout-middle': 'tube-runout',
  'tube-runout-ends': 'tube-runout',
  'flange-runout': 'companion-flange-runout',
  'wheel-runout-steel': 'rim-runout',
  'wheel-runout-alloy': 'rim-runout',
  'tire-runout': 'tire-runout',
  'wheel-unbalance': 'wheel-balancer',
};

/** Facts of one measurement; none where its readings make no sense or say nothing (angles with hanging suspension). */
export function factsOf(
  measurement: Measurement,
  vehicle: Vehicle,
  speeds: FindingSpeeds,
  limits: LimitOverrides = {},
): MeasuredFact[] {
  if (measurement.kind === 'observation') return observedFacts(measurement);
  const { driveshaftRpm, wheelRpm } = speeds;
  const judgment = judgeAt(measurement, vehicle, { driveshaftRpm, wheelRpm, limits });
  if (!judgment.ok) return [];
  const forks = judgment.value.judged.filter(({ limit }) => limit.id === 'fork-twist');
  if (measurement.kind === 'working-angles' && forks.some(({ measured }) => isTwisted(measured))) {
    // Twisted forks are one fault, unequal angles another: angles are told as they stand with the forks in line.
    const inLine = factsOf(withForksInLine(measurement), vehicle, speeds, limits)
      .filter(({ checkId }) => checkId !== 'phasing-marks')
      .map((fact) =>
        fact.checkId === 'working-angles' ? { ...fact, text: `With the forks in line: ${fact.text}` } : fact,
      );
    return [...inLine, factOf('phasing-marks', worstOf(forks)!)];
  }
  const forceN = speeds.once ? greatestForceN(judgment.value) : null;
  const place = 'joint' in measurement ? `${measurement.joint} joint, ` : '';
  const coverage = coverageOf(measurement, vehicle);
  return [
    ...numberFacts(judgment.value).map(([checkId, number]) => {
      // Only play and offset make the force; angles and wear of other kinds do not.
      const isFace = checkId === 'companion-flange-runout' && /face/.test(number.title);
      return factOf(checkId, number, { place, coverage, forceN: isFace ? null : forceN });
    }),
    ...verdictFacts(measurement, judgment.value),
    ...(measurement.kind === 'rings' ? [tightFact(measurement, coverage, limits)] : []),
  ];
}

const factOf = (
  checkId: CheckId,
  number: JudgedNumber,
  { place = '', coverage = 1, forceN = null }: { place?: string; coverage?: number; forceN?: number | null } = {},
): MeasuredFact => ({
  checkId,
  share: number.share,
  text: numberText(number, place),
  // A large angle is a fact of many sound vehicles; it asks for no repair by itself.
  isFault: !number.inside && number.limit.id !== 'joint-angle-most',
  coverage,
  forceN,
});

/** Numbers that only advise and yet tell of a cause: angles too large for one joint, halves of a double-Cardan unequal. */
const TELLING_ADVICE: readonly LimitId[] = ['double-cardan-split', 'joint-angle-most'];

/** The worst number of each check. */
function numberFacts({ judged, advisory }: JudgedMeasurement): [CheckId, JudgedNumber][] {
  const telling = [...judged, ...advisory.filter(({ limit }) => TELLING_ADVICE.includes(limit.id))];
  const checks = new Set(telling.map(({ limit }) => CHECK_OF_LIMIT[limit.id]).filter((id) => id !== undefined));
  return [...checks].map((id) => [id, worstOf(telling.filter(({ limit }) => CHECK_OF_LIMIT[limit.id] === id))!]);
}

/** Measurements the bench answers with a verdict and a sentence. */
function verdictFacts({ kind, ...rest }: Measurement, { verdict, notes }: JudgedMeasurement): MeasuredFact[] {
  const ofTire = 'part' in rest && rest.part === 'tire';
  const checkId = kind === 'flange-reindex' ? 'reindex-shaft' : ofTire ? 'wheel-balancer' : 'clamp-trial';
  if (kind !== 'flange-reindex' && kind !== 'balance-amplitudes' && kind !== 'balance-phasors') return [];
  const unfit = notes.find(({ code }) => code === 'inconsistent-runs');
  if (verdict === 'cannot-tell' && !unfit) return [];
  const light = notes.some(({ code }) => code === 'light-trial');
  const share = unfit ? UNFIT_SHARE : verdict === 'inside' ? 1 / CLEAR_SHARE : light ? LIGHT_SHARE : CLEAR_SHARE;
  const text = (unfit ?? notes[0])?.text.replace(/\.$/, '') ?? '';
  return [{ checkId, share, text, isFault: false, forceN: null, coverage: 1 }];
}

function tightFact({ joint, axes }: RingsMeasurement, coverage: number, limits: LimitOverrides): MeasuredFact {
  const least = Math.min(...axes.map((axis) => seatAxis(axis).endPlayMm));
  const room = lengthText((least < -READING_ERROR_MM ? -least : Math.max(least, 0)).toFixed(3));
  // As on the bench: what four readings leave unsure decides against no ring.
  const wanted = limitOf('end-play-least', limits).value - READING_ERROR_MM;
  const rings = `The ${joint} joint’s rings leave ${room}`;
  const text =
    least < -READING_ERROR_MM
      ? `${rings} too little room: it is pressed together`
      : `${rings} of end play${least < wanted ? ', so little that it may bind' : ''}`;
  const share = Math.exp((wanted - least) / TIGHT_BLUR_MM);
  return { checkId: 'ring-fit', share, text, isFault: share > 1, forceN: null, coverage };
}

function observedFacts({ checkId, outcome }: ObservationMeasurement): MeasuredFact[] {
  const check = checkOf(checkId);
  if (!check) return [];
  const share = outcome === 'wrong' ? SEEN_SHARE : 1 / SEEN_SHARE;
  const text = check[outcome].replace(/\.$/, '');
  return [{ checkId: check.id, share, text, isFault: outcome === 'wrong', forceN: null, coverage: 1 }];
}

/** Greatest once-a-turn force the measurement predicts at the finding's speed, N. */
function greatestForceN({ predicted }: JudgedMeasurement): number | null {
  const forces = predicted.filter(({ quantity, order }) => quantity === 'force' && order === 1);
  return forces.length === 0 ? null : Math.max(...forces.map(({ value }) => value));
}

/** 'Runout, companion flange, radial: 0.05 mm (0.0020 in), inside the limit of 0.13 mm (0.0051 in; common practice, no source)'. */
function numberText(number: JudgedNumber, place: string): string {
  const { title, limit, inside } = number;
  const measured = limit.unit === 'mm' ? lengthText(measuredFigure(number)) : withUnit(measuredFigure(number), limit);
  const inch = limit.unit === 'mm' ? `${limitInchText(limit)}; ` : '';
  const head = `${place}${title}`;
  // The table's own remark in brackets stands on the check's card; here it would be brackets within brackets.
  const source = limit.source.replace(/ \(.*\)$/, '');
  const verdict = `${inside ? 'inside' : 'outside'} the limit of ${withUnit(limit.value, limit)} (${inch}${source})`;
  return `${capitalized(head)}: ${measured}, ${verdict}`;
}

const MOST_DIGITS = 5;
/** Less than this share of the limit is what arithmetic leaves of nothing. */
const NOTHING = 1e-6;

/** In two or three digits, or in as many as it takes to stand on its own side of the limit: 10.3 beside 10, not 10. */
function measuredFigure({ measured, limit }: JudgedNumber): string {
  if (measured < NOTHING * limit.value) return '0';
  const side = Math.sign(measured - limit.value);
  for (let digits = measured >= 100 ? 3 : 2; digits < MOST_DIGITS; digits++) {
    const rounded = Number(measured.toPrecision(digits));
    if (Math.sign(rounded - limit.value) === side) return String(rounded);
  }
  return String(Number(measured.toPrecision(MOST_DIGITS)));
}

/** '0.05 mm (0.0020 in)': in both units, as sentences are read by both kinds of readers. */
const lengthText = (mm: string): string => `${mm} mm (${inchText(Number(mm))})`;
