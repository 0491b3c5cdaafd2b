/** A pinion whose reading may be the wrong way round: shops name its nose, an inclinometer read by part its rear end. */
import type { LimitId } from '../limits/limit.ts';
import type { WorkingAngles, WorkingAnglesInput } from './working-angles.ts';
import { workingAngles } from './working-angles.ts';

/** What tells joints that cancel from joints that do not. */
const CANCEL: readonly LimitId[] = ['residual-acceleration', 'joint-angle-difference'];
const ofCancelling = ({ judged }: WorkingAngles) => judged.filter(({ limit }) => CANCEL.includes(limit.id));

/**
 * The driveline with the pinion sloping the other way, where its joints cancel so and do not as read: then the reading
 * is more likely the wrong way round than the axle. Null where there is no such doubt.
 */
export const pinionOtherWay = (input: WorkingAnglesInput): WorkingAngles | null => {
  const turned = input.shafts.map((shaft) =>
    shaft.part === 'pinion' ? { ...shaft, slopeDeg: -shaft.slopeDeg } : shaft,
  );
  const [asRead, otherWay] = [workingAngles(input), workingAngles({ ...input, shafts: turned })];
  if (!asRead.ok || !otherWay.ok || ofCancelling(asRead.value).every(({ inside }) => inside)) return null;
  return ofCancelling(otherWay.value).every(({ inside }) => inside) ? otherWay.value : null;
};
