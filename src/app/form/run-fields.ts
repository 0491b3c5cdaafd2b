/** A run's text fields. Each run has its own, numbered. */
import type { Result } from '../../core/note.ts';
import { success } from '../../core/note.ts';
import type { Job, Run } from '../../core/job/job.ts';
import type { QuantityOptions } from '../../core/quantity.ts';
import { parseFrequencyHz, parseRatio, parseRpm, parseSpeedMps, parseTimeS } from '../../core/quantity.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { kmhFromMps, mphFromMps } from '../../core/units.ts';
import { texts } from '../texts.ts';
import type { FieldSpec } from './document.ts';
import { without, withRun } from './document.ts';

const { fields: words, quantities } = texts.form;
type NumberKey = 'speedMps' | 'gearRatio' | 'engineRpm' | 'samplingRateHz' | 'fromS' | 'toS';
type Words = { readonly label: string; readonly example: string; readonly hint: string };

interface NumberSpec {
  readonly key: NumberKey;
  readonly words: Words;
  readonly parse: (text: string, units: UnitSystem) => Result<number>;
  readonly show: (value: number, units: UnitSystem) => string;
}

/** Round-trips what people type: 62 mph is held as 27.71648 m/s and shown as 62 again. */
const tidy = (value: number): string => `${+value.toFixed(3)}`;

export const speedUnit = (units: UnitSystem): string => (units === 'us' ? 'mph' : 'km/h');
export const speedFieldText = (mps: number, units: UnitSystem): string =>
  `${tidy(units === 'us' ? mphFromMps(mps) : kmhFromMps(mps))} ${speedUnit(units)}`;

const ranged = (low: number, high: number, name: string): QuantityOptions => ({ range: [low, high], name });

const SPEED: NumberSpec = {
  key: 'speedMps',
  words: words.speed,
  parse: (text, units) => parseSpeedMps(text, speedUnit(units), ranged(0, 90, quantities.speed)),
  show: speedFieldText,
};
const GEAR: NumberSpec = {
  key: 'gearRatio',
  words: words.gearRatio,
  parse: (text) => parseRatio(text, ranged(0.3, 25, quantities.gearRatio)),
  show: tidy,
};
const RPM: NumberSpec = {
  key: 'engineRpm',
  words: words.engineRpm,
  parse: (text) => parseRpm(text, 'rpm', ranged(100, 20_000, quantities.engineSpeed)),
  show: (value) => `${tidy(value)} rpm`,
};
const RATE: NumberSpec = {
  key: 'samplingRateHz',
  words: words.samplingRate,
  parse: (text) => parseFrequencyHz(text, 'Hz', ranged(1, 1e6, quantities.samplingRate)),
  show: (value) => `${tidy(value)} Hz`,
};

const part = (key: 'fromS' | 'toS'): NumberSpec => ({
  key,
  words: words[key],
  parse: (text) => parseTimeS(text, 's', ranged(0, 345_600, quantities.time)),
  show: (value) => `${tidy(value)} s`,
});
const FROM = part('fromS');
const TO = part('toS');

function numberField(index: number, spec: NumberSpec): FieldSpec {
  const { key, parse, show } = spec;
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
      return parsed.ok ? success(withRun(job, index, (run) => ({ ...run, [key]: parsed.value }))) : parsed;
    },
  };
}

const nameField = (index: number): FieldSpec => ({
  id: `run.${index}.name`,
  label: words.runName.label,
  example: words.runName.example,
  hint: words.runName.hint,
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
    speed: numberField(index, SPEED),
    gear: numberField(index, GEAR),
    rpm: numberField(index, RPM),
    rate: numberField(index, RATE),
    from: numberField(index, FROM),
    to: numberField(index, TO),
  };
}
