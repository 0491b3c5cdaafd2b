/** Angle readings as they were understood, said in one way only. */
import { noseEnd, partName } from '../driveline/angles/driveline-names.ts';
import type { WorkingAngles } from '../driveline/angles/working-angles.ts';
import type { ShaftReading } from '../driveline/measurement.ts';

const upOrDown = (isDown: boolean): string => (isDown ? 'down' : 'up');

/** 'nose 3.0° down (rear end up)', 'rear end 6.2° down, 1.5° right', 'level'. */
function slopeText(shafts: readonly ShaftReading[], index: number): string {
  const { part, slopeDeg = 0, planDeg = 0 } = shafts[index] ?? {};
  const sideways = planDeg === 0 ? '' : `, rear end ${Math.abs(planDeg).toFixed(1)}° ${planDeg > 0 ? 'right' : 'left'}`;
  const size = Math.abs(slopeDeg).toFixed(1);
  if (size === '0.0') return `level${sideways}`;
  const rearIsDown = slopeDeg > 0;
  if (part !== 'pinion') return `rear end ${size}° ${upOrDown(rearIsDown)}${sideways}`;
  const nose = noseEnd(shafts);
  const noseIsDown = rearIsDown === (nose === 'rear');
  const other = nose === 'rear' ? 'front' : 'rear';
  return `nose ${size}° ${upOrDown(noseIsDown)} (${other} end ${upOrDown(!noseIsDown)})${sideways}`;
}

/** One line a part: 'pinion: nose 3.0° down (rear end up)'. */
export const readingLines = (shafts: readonly ShaftReading[]): string[] =>
  shafts.map((_, index) => `${partName(shafts, index)}: ${slopeText(shafts, index)}`);

const anglesText = ({ joints }: WorkingAngles): string =>
  joints.map(({ angleDeg }) => `${angleDeg.toFixed(1)}°`).join(' and ');

/** What to ask before any advice, where the pinion sloping the other way would make the joints cancel. */
export function pinionDoubtText(shafts: readonly ShaftReading[], asRead: WorkingAngles, other: WorkingAngles): string {
  const index = shafts.findIndex(({ part }) => part === 'pinion');
  const turned = shafts.map((shaft, at) => (at === index ? { ...shaft, slopeDeg: -shaft.slopeDeg } : shaft));
  return `Check which end of the pinion is up. It was read as ${slopeText(shafts, index)}, which makes joint angles of ${anglesText(asRead)}. With ${slopeText(turned, index)} they are ${anglesText(other)} and cancel: the axle would be sound.`;
}
