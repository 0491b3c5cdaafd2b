/** A finding in each run, in words: the order where it has one, else the peak of the same origin. */
import type { UnitSystem } from '../../core/report/format.ts';
import { accelerationText, feltText, frequencyText } from '../../core/report/format.ts';
import type { FindingReport, Report } from '../../core/report/report.ts';
import { orderCells } from '../sheet/order-cells.ts';

export interface RunCells {
  readonly run: string;
  readonly frequency: string;
  readonly level: string;
  readonly felt: string;
}

/** Of a fixed tone a run's reading lies this near to the finding's, as a share. */
const SAME_TONE = 0.02;

export function runCells(
  { orders, peaks }: Report,
  { order, label, frequencyHz }: FindingReport,
  units: UnitSystem,
): RunCells[] {
  if (order !== null) {
    return orders
      .filter((one) => one.label === label)
      .map((one) => {
        const { level, felt } = orderCells(one, units);
        return { run: one.run, frequency: frequencyText(one.frequencyHz), level, felt };
      });
  }
  return peaks
    .filter((peak) => peak.matches[0]?.label === label && Math.abs(peak.frequencyHz / frequencyHz - 1) < SAME_TONE)
    .map((peak) => ({
      run: peak.run,
      frequency: frequencyText(peak.frequencyHz, peak.frequencySdHz),
      level: accelerationText(peak.amplitudeMps2),
      felt: feltText(peak.feltLevel),
    }));
}
