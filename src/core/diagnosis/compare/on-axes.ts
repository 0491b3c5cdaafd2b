/** Runs read on the same axes, by name: more axes show more of one motion, and loggers name them in any order. */
import type { AxisName } from '../../reading/recording.ts';
import type { RunInference } from '../matching/infer-run.ts';

/** Axes of a run, in the order of its recording. */
export const axesOf = ({ run }: RunInference): readonly AxisName[] => run.recording.channels.map(({ axis }) => axis);

/** Axes that all of the runs have, in the order of the first one's recording. */
export const sharedAxes = ([first, ...others]: readonly RunInference[]): readonly AxisName[] =>
  first ? axesOf(first).filter((axis) => others.every((other) => axesOf(other).includes(axis))) : [];

/**
 * The run with these of its axes in this order. Which way is up is not known by a part of them.
 * @param axes that the run has
 */
export function onAxes(inference: RunInference, axes: readonly AxisName[]): RunInference {
  const all = axesOf(inference);
  if (axes.length === all.length && axes.every((axis, k) => axis === all[k])) return inference;
  const places = axes.map((axis) => all.indexOf(axis));
  const { prepared } = inference.run;
  const pieces = prepared.pieces.map((piece) => ({ ...piece, axes: places.map((k) => piece.axes[k]!) }));
  const up = prepared.up && axes.length === all.length ? places.map((k) => prepared.up![k]!) : null;
  return { ...inference, run: { ...inference.run, prepared: { ...prepared, pieces, up } } };
}
