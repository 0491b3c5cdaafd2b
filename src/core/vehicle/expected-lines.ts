/** Where every order of every turning part is expected in a run's spectrum, and how surely. */
import { failure, success } from '../note.ts';
import type { Result } from '../note.ts';
import { visibilityOf } from './alias.ts';
import type { ExpectedLines, Line } from './line.ts';
import type { LineTemplate } from './line-template.ts';
import { missingData } from './missing-data.ts';
import { positive } from './ratios.ts';
import { lineTemplates } from './templates.ts';
import { totalShare, turningSpeeds } from './turning-speeds.ts';
import type { Shares } from './turning-speeds.ts';
import type { LoggedCondition, Vehicle } from './vehicle.ts';

export interface ExpectedLinesOptions {
  /** Rate of the recording, Hz; without it every line counts as below half the rate. */
  readonly samplingRateHz?: number;
  /** True where condition.engineRpm is the mean of a logged track rather than read by a person. */
  readonly engineLogged?: boolean;
}

const placeLine = (template: LineTemplate, groupHz: number, shares: Shares, samplingRateHz?: number): Line => {
  const frequencyHz = template.perTurn * groupHz;
  return {
    ...template,
    frequencyHz,
    frequencySdHz: frequencyHz * totalShare(shares),
    uncertainty: shares,
    ...visibilityOf(frequencyHz, samplingRateHz),
  };
};

/**
 * The lines of one run.
 *
 * Frequency = perTurn × wheel speed (group 'road') or × engine speed (group 'engine'); its standard uncertainty is
 * the root-sum-square of the relative shares of speed, circumference, slip and engine. Errors of speed and
 * circumference are common to all lines of a group.
 *
 * @returns The lines that can be had from what is known: without a road speed only the engine's, and so on. A Problem
 *   where not one line can be computed, or where the tire that was given cannot be read.
 */
export const expectedLines = (
  vehicle: Vehicle,
  condition: LoggedCondition,
  options: ExpectedLinesOptions = {},
): Result<ExpectedLines> => {
  const speeds = turningSpeeds(vehicle, condition, options.engineLogged);
  if (!speeds.ok) return speeds;
  const { wheel, engine } = speeds.value;
  const samplingRateHz = positive(options.samplingRateHz) ?? undefined;
  const lines = lineTemplates(vehicle).flatMap((template) => {
    const group = template.group === 'road' ? wheel : engine;
    return group === null ? [] : [placeLine(template, group.hz, group.shares, samplingRateHz)];
  });
  if (lines.length === 0) {
    const missing = missingData(vehicle, condition)
      .filter((datum) => datum.blocks)
      .map((datum) => datum.text);
    return failure({
      code: 'no-lines',
      message: 'Not one expected frequency can be computed: neither wheel nor engine speed is known.',
      remedy: missing.length > 0 ? missing.join(' ') : 'Give road speed and tire size, or the engine speed.',
    });
  }
  return success({
    wheelHz: wheel?.hz ?? null,
    wheelRelativeSd: wheel === null ? 0 : totalShare(wheel.shares),
    engineHz: engine?.hz ?? null,
    engineRelativeSd: engine === null ? 0 : totalShare(engine.shares),
    engineTiedToRoad: engine?.tiedToRoad ?? false,
    engineTurnsPerWheelTurn: speeds.value.engineTurnsPerWheelTurn,
    lines,
  });
};

/**
 * The same lines at other turning speeds, as found in the recording: frequencies and uncertainties scaled,
 * visibility judged anew.
 *
 * @param wheelHz Wheel turning speed, or null to leave the road lines out; engineHz likewise.
 */
export const linesAt = (
  lines: readonly Line[],
  wheelHz: number | null,
  engineHz: number | null,
  samplingRateHz?: number,
): Line[] =>
  lines.flatMap((line) => {
    const groupHz = line.group === 'road' ? wheelHz : engineHz;
    return groupHz === null ? [] : [placeLine(templateOf(line), groupHz, line.uncertainty, samplingRateHz)];
  });

const templateOf = ({ part, name, order, label, role, group, perTurn }: Line): LineTemplate => ({
  part,
  ...(name === undefined ? {} : { name }),
  order,
  label,
  ...(role === undefined ? {} : { role }),
  group,
  perTurn,
});
