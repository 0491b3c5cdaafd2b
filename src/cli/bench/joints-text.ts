/** Working angles, and what would better them, in words. */
import type { AngleEffect, AngleSensitivity } from '../../core/driveline/angles/angle-sensitivity.ts';
import type { WhatIfAnswer } from '../../core/driveline/angles/angle-what-if.ts';
import type { WhatIf } from '../../core/driveline/angles/least-change.ts';
import type { WorkingAngles } from '../../core/driveline/angles/working-angles.ts';
import { residualOverSpeeds } from '../../core/driveline/angles/working-angles.ts';
import { jointName } from '../../core/driveline/angles/driveline-names.ts';
import type { ShaftReading } from '../../core/driveline/measurement.ts';
import { turningAccelerationText, cancelsText, changeText } from '../../core/report/angle-change-text.ts';
import { forceText, torqueText } from '../../core/report/bench-text.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { rpmText, significant } from '../../core/report/format.ts';
import { table } from '../../core/report/wrap.ts';
import { degFromRad } from '../../core/units.ts';
import { capitalized } from '../../core/words.ts';

const acceleration = (value: number | null): string => (value === null ? '' : turningAccelerationText(value));

/** One row a joint: kind, angle, halves, bending couple. */
export function jointTable(angles: WorkingAngles, shafts: readonly ShaftReading[], units: UnitSystem): string {
  const rows = angles.joints.map((joint, index) => [
    jointName(shafts, index),
    joint.kind.replaceAll('-', ' '),
    `${joint.angleDeg.toFixed(2)}°`,
    joint.crossAnglesDeg.length === 2
      ? `halves ${joint.crossAnglesDeg.map((half) => `${half.toFixed(2)}°`).join(' and ')}`
      : '',
    coupleText(joint.couple, units),
  ]);
  const header = ['', '', 'true angle', '', rows.some((row) => row[4] !== '') ? 'bending couple, steady and 2×' : ''];
  return table([header, ...rows], ['left', 'left', 'right', 'left', 'left']);
}

const coupleText = (couple: WorkingAngles['joints'][number]['couple'], units: UnitSystem): string => {
  if (couple === null) return '';
  const reaction = couple.doubleReactionN;
  const force = reaction === null ? '' : `, ${forceText(reaction, units)} on the bearings at 2×`;
  return `${torqueText(couple.steadyNm, units)} each${force}`;
};

/** '0.080°': small angles, as many figures as the readings are worth. */
const torsionText = (rad: number): string => `${significant(degFromRad(rad), 2)}°`;

/** What is left, and the speed at which it reaches its limit. */
export function residualLines(angles: WorkingAngles): string[] {
  const { residual, handResidualDeg, residualLimitRpm, driveshaftRpm } = angles;
  const lines = [
    `Left at the far end: as uneven as one joint of ${residual.equivalentAngleDeg.toFixed(2)}° (${handResidualDeg.toFixed(2)}° by the squared-angle rule worked by hand).`,
    `That is ${torsionText(residual.doubleAmplitudeRad)} of twist to either side, twice a turn.`,
  ];
  if (residualLimitRpm !== null && residualLimitRpm < 20_000) {
    lines.push(`It reaches its limit at ${rpmText(residualLimitRpm)} of the driveshaft.`);
  }
  if (driveshaftRpm === null) {
    lines.push('Give --shaft-rpm, or --speed with --tire and --axle, for the accelerations and their limits.');
  }
  if (driveshaftRpm !== null && driveshaftRpm > 0) {
    const speeds = [0.5, 0.75, 1, 1.25, 1.5].map((share) => share * driveshaftRpm);
    const columns = [residual, angles.inertiaDrive, angles.inertiaCoast].map((ripple) =>
      residualOverSpeeds(ripple, speeds).map((one) => acceleration(one.accelerationRadPerS2)),
    );
    const rows = speeds.map((rpm, k) => [rpmText(rpm), ...columns.map((column) => column[k] ?? '')]);
    const header = ['over the speed range', 'residual', 'inertia on drive', 'on coast'];
    lines.push(table([header, ...rows], ['right', 'right', 'right', 'right']));
  }
  return lines;
}

/** What would bring the residual under its limit, easiest first. */
export function whatIfLines(
  answer: WhatIfAnswer,
  angles: WorkingAngles,
  shafts: readonly ShaftReading[],
  units: UnitSystem,
): string[] {
  if (answer.alreadyInside) return [cancelsText(angles)];
  const lines = answer.single.map((one) => whatIfText(one, shafts, units));
  const { together } = answer;
  // Forks out of line are an assembly fault: putting them right comes before all else.
  if (together?.changes[0]?.kind === 'phasing') lines.unshift(whatIfText(together, shafts, units));
  else if (together !== null) lines.push(`Together: ${whatIfText(together, shafts, units)}`);
  if (answer.single.length > 0 && !answer.single.some((one) => one.reachesLimit) && together === null) {
    lines.push(
      'Neither one change nor two do it within reach: look for a wrong part, a wrong ride height or a lifted body first.',
    );
  }
  return lines;
}

/** Distances that the amounts rest on and nobody gave. */
export const assumedLines = ({ assumed }: AngleSensitivity): string[] =>
  assumed.length === 0 ? [] : [`Not measured, so assumed: ${assumed.join(', ')}. Heights are as good as these.`];

const SPOILS = {
  inertia: 'the inertia figure gets worse',
  'least-angle': 'a joint gets too straight for its needles to turn',
} as const;

function whatIfText(one: WhatIf, shafts: readonly ShaftReading[], units: UnitSystem): string {
  const text = one.changes.map((change) => changeText(change, units, shafts)).join(', and ');
  const head = capitalized(text);
  const left = `leaves ${turningAccelerationText(one.residualRadPerS2)}`;
  if (one.reachesLimit) {
    const [change] = one.changes;
    const practical =
      one.practicalAmount === null || change === undefined || one.changes.length > 1
        ? ''
        : changeText({ ...change, amount: one.practicalAmount }, units, shafts);
    const still = one.stillOutside.length === 0 ? '' : `, but ${one.stillOutside.join(' and ')} stays outside`;
    return `${head}: ${left}${still}.${practical === '' || practical === text ? '' : ` In whole steps: ${practical}.`}`;
  }
  const why =
    one.spoils.length > 0 ? one.spoils.map((what) => SPOILS[what]).join(' and ') : 'that is the best it can do';
  return `Not enough alone: ${text} ${left}, but ${why}.`;
}

/** What small steps, ride height and wind-up do. */
export function sensitivityTable(
  { smallSteps, rideHeight, windUp }: AngleSensitivity,
  shafts: readonly ShaftReading[],
  units: UnitSystem,
): string {
  const row = (effect: AngleEffect): string[] => [
    changeText(effect.change, units, shafts),
    `${effect.residualDeg.toFixed(2)}°`,
    acceleration(effect.residualRadPerS2),
    signed(effect.residualDifferenceRadPerS2, effect.residualDifferenceDeg),
  ];
  const rows = [...smallSteps, ...rideHeight, ...windUp].map(row);
  return table([['', 'residual', '', 'difference'], ...rows], ['left', 'right', 'right', 'right']);
}

const signed = (radPerS2: number | null, deg: number): string => {
  const value = radPerS2 ?? deg;
  const text = radPerS2 === null ? `${Math.abs(deg).toFixed(3)}°` : `${Math.abs(radPerS2).toFixed(1)} rad/s²`;
  if (!/[1-9]/u.test(text)) return text;
  return `${value < 0 ? '−' : '+'}${text}`;
};
