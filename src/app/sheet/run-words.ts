/** A run in words. */
import type { UnitSystem } from '../../core/report/format.ts';
import { durationText, rateText, speedText } from '../../core/report/format.ts';
import type { RunReport } from '../../core/report/report.ts';
import { kmhFromMps, mphFromMps } from '../../core/units.ts';
import { texts } from '../texts.ts';

/** '60 s · 400 Hz · 3 axes'. */
export function runLine({ samplingRateHz, durationS, axes }: RunReport): string {
  return texts.form.runFacts(rateText(samplingRateHz), durationText(durationS), axes.length);
}

/** 'The recording itself says 61.3 ± 0.1 mph. The dial said 62 mph.' Empty where no speed is known. */
export function speedSentence({ speed }: RunReport, units: UnitSystem): string {
  const words = texts.sheet;
  if (speed.usedMps === null) return '';
  const sd = speed.usedMps * speed.scaleSd;
  const [value, spread, unit] =
    units === 'us'
      ? [mphFromMps(speed.usedMps), mphFromMps(sd), 'mph']
      : [kmhFromMps(speed.usedMps), kmhFromMps(sd), 'km/h'];
  const says = words.recordingSays(`${value.toFixed(1)} ± ${Math.max(0.1, spread).toFixed(1)} ${unit}`);
  if (speed.statedMps === null) return says;
  const stated = speedText(speed.statedMps, units, 0);
  return `${says} ${speed.restated ? words.restated(stated) : words.stated(stated, words.sources[speed.source])}`;
}
