/** A judged measurement in words and units. */
import type { JudgedMeasurement, Prediction } from '../../core/driveline/judging/judged-measurement.ts';
import type { JudgedNumber, Limit } from '../../core/driveline/limits/limit.ts';
import type { Measurement } from '../../core/driveline/measurement.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { lengthText, percentText, significant } from '../../core/report/format.ts';
import { texts } from '../texts.ts';
import { MEASURE_FORMS } from './all-forms.ts';

const words = texts.bench;

/** A figure in the limit's unit, in the reader's system. */
export function figureText(value: number, unit: Limit['unit'], units: UnitSystem): string {
  if (unit === 'mm') return lengthText(value, units);
  if (unit === 'share') return percentText(value);
  if (unit === '°') return `${value.toFixed(2)}°`;
  return `${significant(value, 3)} ${unit}`;
}

/** 'at most 0.05 mm (common practice, no source)'. */
export function limitText({ sense, value, unit, source }: Limit, units: UnitSystem): string {
  return `${words.limit(sense, figureText(value, unit, units))} (${source})`;
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

export function numberLine({ title, measured, limit, inside, share }: JudgedNumber, units: UnitSystem): NumberLine {
  const limitAt = LIMIT_AT[limit.sense];
  const ofLimit = limit.sense === 'at-most' ? share : 1 / share;
  return {
    title,
    measured: figureText(measured, limit.unit, units),
    limit: limitText(limit, units),
    inside,
    bar: Math.min(1, Math.max(0, ofLimit) * limitAt),
    limitAt,
  };
}

export function predictionText({ part, order, quantity, value, unit, where }: Prediction): string {
  const label = `${part} ${order}×`;
  return words.prediction(words.quantities[quantity], `${significant(value, 2)} ${unit}`, label, where);
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
