/** Which checks a case has behind it: those measured, and those its runs have answered. */
import { tubeOf } from '../../driveline/shaft-tube.ts';
import type { CaseContext } from '../evidence/case.ts';
import { checksAnswered } from '../evidence/measured-outcomes.ts';
import type { Load } from '../../vehicle/vehicle.ts';
import { ONE_SPEED, OTHER_SPEED, speedsApart } from '../speeds-apart.ts';
import type { CheckId } from '../weights.ts';

/** Ratios further apart than this (ln) are two gears: the next gear is a fifth away at the least (common practice, no source). */
const OTHER_GEAR = 0.05;

type Run = CaseContext['runs'][number];

/** Ids of the checks that need not be proposed again. */
export function checksDone(context: CaseContext): ReadonlySet<CheckId> {
  const { vehicle, runs } = context;
  const done = new Set<CheckId>(checksAnswered(context));
  if (vehicle.driveshaftPieces?.some((piece) => tubeOf(piece) !== null)) done.add('critical-speed');
  // That it was changed is known; whether it stands at the maker's figure settles nothing.
  if (context.work.includes('ride-height-changed')) done.add('ride-height');
  const drivenAlike = (load: Load, ...others: Load[]): boolean =>
    runs.some((a) => a.load === load && runs.some((b) => b.load && others.includes(b.load) && atOneSpeed(a, b)));
  if (drivenAlike('pull', 'coast')) done.add('run-pull-coast');
  if (drivenAlike('neutral', 'cruise', 'pull')) done.add('run-neutral');
  if (drivenAlike('brake', 'cruise', 'pull', 'coast')) done.add('run-braking');
  if (runs.length > 1 && runs.some(({ load }) => load === 'standing')) done.add('run-standing');
  if (somePair(runs, (a, b) => speedsApart(a.usedSpeedMps, b.usedSpeedMps) <= ONE_SPEED && gearsDiffer(a, b)))
    done.add('run-other-gear');
  if (somePair(runs, (a, b) => speedsApart(a.usedSpeedMps, b.usedSpeedMps) >= OTHER_SPEED && !gearsDiffer(a, b)))
    done.add('run-other-speed');
  return done;
}

const somePair = (runs: readonly Run[], holds: (a: Run, b: Run) => boolean): boolean =>
  runs.some((a, index) => runs.slice(index + 1).some((b) => holds(a, b)));

/** Unknown speeds count as alike: the driver was asked for one speed. */
const atOneSpeed = (a: Run, b: Run): boolean => !(speedsApart(a.usedSpeedMps, b.usedSpeedMps) > ONE_SPEED);

const gearsDiffer = (a: Run, b: Run): boolean =>
  speedsApart(a.gearRatio, b.gearRatio) > OTHER_GEAR || speedsApart(engineOverRoad(a), engineOverRoad(b)) > OTHER_GEAR;

const engineOverRoad = ({ engineRpm, usedSpeedMps }: Run): number | null =>
  engineRpm && usedSpeedMps ? engineRpm / usedSpeedMps : null;
