/** On which axis the levels of trial runs are read. */
import type { AxisName } from '../reading/recording.ts';

/** 'all': all axes together, whose level does not depend on how the sensor lies. */
export type TrialAxis = AxisName | 'all';

export const axisText = (axis: TrialAxis): string => (axis === 'all' ? 'on all axes together' : `on axis ${axis}`);
