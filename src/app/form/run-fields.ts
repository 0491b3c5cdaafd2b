/** A run's text fields. Each run has its own, numbered. */
import type { Problem, Result } from '../../core/note.ts';
import { failure, success } from '../../core/note.ts';
import type { Job, Run } from '../../core/job/job.ts';
import type { QuantityOptions } from '../../core/quantity/quantity.ts';
import { parseFrequencyHz, parseRatio, parseRpm, parseSpeedMps, parseTimeS } from '../../core/quantity/quantity.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { kmhFromMps, mphFromMps } from '../../core/units.ts';
import { texts } from '../texts.ts';
import type { FieldSpec } from './document.ts';
import { exampleOf, without, withRun } from './document.ts';

const { fields: words, quantities, problems } = texts.form;
type NumberKey = 'speedMps' | 'gearRatio' | 'engineRpm' | 'samplingRateHz' | 'fromS' | 'toS';
type Words = Pick<FieldSpec, 'label' | 'example' | 'metricExample' | 'hint'>;

interface NumberSpec {
  readonly key: NumberKey;
  readonly words: Words;
  readonly parse: (text: string, units: UnitSystem) => Result<number>;
  readonly show: (value: number, units: UnitSystem) => string;
  /** What is wrong with a number that can be read, in this run. */
  readonly refuses?: (value: number, run: Run) => Problem | null;
}

/** Round-trips what people type: 62 mph is held as 27.71648 m/s and shown as 62 again. */
const tidy = (value: number): string => `${+value.toFixed(3)}`;

const speedUnit = (units: UnitSystem): string => (units === 'us' ? 'mph' : 'km/h');
const speedFieldText = (mps: number, units: UnitSystem): string =>
  `${tidy(units === 'us' ? mphFromMps(mps) : kmhFromMps(mps))} ${speedUnit(units)}`;

const ranged = (low: number, high: number, name: string, { example }: Pick<Words, 'example'>): QuantityOptions => ({
  range: [low, high],
  name,
  example,
});

const SPEED: NumberSpec = {
  key: 'speedMps',
  words: words.speed,
  parse: (text, units) => {
    const example = exampleOf(words.speed, units);
    return parseSpeedMps(text, speedUnit(units), ranged(0, 90, quantities.speed, { example }));
  },
  refuses: (value, run) =>
    value === 0 && run.load !== 'standing'
      ? { code: 'stands', message: problems.zeroSpeed, remedy: problems.zeroSpeedRemedy }
      : null,
  show: speedFieldText,
};
const GEAR: NumberSpec = {
  key: 'gearRatio',
  words: words.gearRatio,
  parse: (text) => parseRatio(text, ranged(0.3, 25, quantities.gearRatio, words.gearRatio)),
  show: tidy,
};
const RPM: NumberSpec = {
  key: 'engineRpm',
  words: words.engineRpm,
  parse: (text) => parseRpm(text, 'rpm', ranged(100, 20_000, quantities.engineSpeed, words.engineRpm)),
  show: (value) => `${tidy(value)} rpm`,
};
const RATE: NumberSpec = {
  key: 'samplingRateHz',
  words: words.samplingRate,
  parse: (text) => parseFrequencyHz(text, 'Hz', ranged(1, 1e6, quantities.samplingRate, words.samplingRate)),
  show: (value) => `${tidy(value)} Hz`,
};

const part = (key: 'fromS' | 'toS'): NumberSpec => ({
  key,
  words: words[key],
  parse: (text) => parseTimeS(text, 's', ranged(0, 345_600, quantities.time, words[key])),
  show: (value) => `${tidy(value)} s`,
});
const FROM = part('fromS');
const TO = part('toS');

function numberField(index: number, spec: NumberSpec): FieldSpec {
  const { key, parse, show, refuses } = spec;
  return {
    id: `run.${index}.${key}`,
    ...spec.words,
    read: (job, units) => {
      const value = job.runs[index]?.[key];
      return value === undefined ? '' : show(value, units);
    },
    write: (job, text, units) => {
      if (text.trim() === '') return success(withRun(job, index, (run) => without(run, key) as Run));
      const parsed = parse(text, units);
      const run = job.runs[index];
      const refusal = parsed.ok && run ? (refuses?.(parsed.value, run) ?? null) : null;
      if (refusal) return failure(refusal);
      return parsed.ok ? success(withRun(job, index, (run) => ({ ...run, [key]: parsed.value }))) : parsed;
    },
  };
}

/** Told of the job, not of what was typed: either of the two times may have been written last. */
const endsTooSoon = ({ fromS = 0, toS }: Partial<Run> = {}): Problem | null =>
  toS !== undefined && toS <= fromS
    ? { code: 'ends-before', message: problems.endsBeforeItBegins, remedy: problems.endsBeforeItBeginsRemedy }
    : null;

const nameField = (index: number): FieldSpec => ({
  id: `run.${index}.name`,
  ...words.runName,
  read: (job) => job.runs[index]?.name ?? '',
  write: (job: Job, text: string) =>
    success(withRun(job, index, (run) => (text === '' ? without(run, 'name') : { ...run, name: text }) as Run)),
});

/** The fields of one run, by what they are for. */
export function runFields(
  index: number,
): Readonly<Record<'name' | 'speed' | 'gear' | 'rpm' | 'rate' | 'from' | 'to', FieldSpec>> {
  return {
    name: nameField(index),
    speed: { ...numberField(index, SPEED), isNeeded: true },
    gear: numberField(index, GEAR),
    rpm: numberField(index, RPM),
    rate: numberField(index, RATE),
    from: numberField(index, FROM),
    to: { ...numberField(index, TO), check: (job) => endsTooSoon(job.runs[index]) },
  };
}
