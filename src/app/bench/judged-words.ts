/** A judged measurement in words and units. */
import type { JudgedMeasurement, Prediction } from '../../core/driveline/judging/judged-measurement.ts';
import type { JudgedNumber, Limit } from '../../core/driveline/limits/limit.ts';
import type { Measurement } from '../../core/driveline/measurement.ts';
import { limitFigureText, measuredText, predictedText } from '../../core/report/bench-text.ts';
import { capitalized } from '../../core/words.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { texts } from '../texts.ts';
import { MEASURE_FORMS } from './all-forms.ts';

const words = texts.bench;

/** 'at most 0.05 mm · common practice, no source'. A source may hold brackets of its own. */
export function limitText(limit: Limit, units: UnitSystem): string {
  return `${words.limit(limit.sense, limitFigureText(limit, units))} · ${limit.source}`;
}

export interface NumberLine {
  readonly title: string;
  readonly measured: string;
  readonly limit: string;
  readonly inside: boolean;
  /** Length of the bar, which grows with the number, and where on it the limit stands; both 0..1. */
  readonly bar: number;
  readonly limitAt: number;
}

/** Room to either side of the limit: for the usual number within it, and for one beyond. */
const LIMIT_AT = { 'at-most': 2 / 3, 'at-least': 1 / 3 } as const;

export function numberLine(number: JudgedNumber, units: UnitSystem): NumberLine {
  const { title, limit, inside, share } = number;
  const limitAt = LIMIT_AT[limit.sense];
  const ofLimit = limit.sense === 'at-most' ? share : 1 / share;
  return {
    title: capitalized(title),
    measured: measuredText(number, units).replaceAll(/-(?=\d)/gu, '−'),
    limit: limitText(limit, units),
    inside,
    bar: Math.min(1, Math.max(0, ofLimit) * limitAt),
    limitAt,
  };
}

export function predictionText(prediction: Prediction, units: UnitSystem): string {
  const { part, order, quantity, where } = prediction;
  return words.prediction(words.quantities[quantity], predictedText(prediction, units), `${part} ${order}×`, where);
}

/** 'Outside the limits'; where there are no limits, what the outcome says instead. */
export function verdictText({ kind, verdict }: JudgedMeasurement): string {
  if (kind === 'balance-amplitudes' || kind === 'balance-phasors') return words.balanceVerdicts[verdict];
  return kind === 'flange-reindex' ? words.reindexVerdicts[verdict] : words.verdicts[verdict];
}

/** What a kept measurement is called in the list. */
export function measurementTitle(measurement: Measurement): string {
  const { fields, places } = words;
  const form = MEASURE_FORMS.find(({ id }) => id === measurement.kind);
  const title =
    form?.title ?? (measurement.kind === 'observation' ? measurement.checkId.replaceAll('-', ' ') : measurement.kind);
  const detail =
    'joint' in measurement
      ? fields[measurement.joint]
      : measurement.kind === 'runout'
        ? places[measurement.place]
        : measurement.kind === 'radial-play'
          ? measurement.place === 'slip-yoke'
            ? fields.slipYoke
            : fields.centreBearing
          : '';
  return detail === '' ? title : `${title}: ${detail.toLowerCase()}`;
}

export type { JudgedMeasurement };
