/** Signs in how the run was driven: load, road speed, engine speed. */
import { kmhFromMps, mphFromMps, rpmFromHz } from '../../units.ts';
import type { RunCondition } from '../../vehicle/vehicle.ts';
import type { CaseContext, FindingBasis } from './case.ts';
import type { Sign } from '../signs.ts';
import type { Clue } from './clue.ts';

/** Below this road speed, m/s, a vehicle is moving off rather than cruising (about 30 mph). */
const MOVING_OFF_MPS = 13.5;
/** Below this engine speed, rev/min, a high gear can lug; above the other it does not. */
const LUGGING_RPM = 1400;
const NOT_LUGGING_RPM = 1900;

const LOAD_SIGNS: Readonly<Partial<Record<NonNullable<RunCondition['load']>, { sign: Sign; text: string }>>> = {
  pull: { sign: 'found-pulling', text: 'It was recorded pulling' },
  cruise: { sign: 'found-cruising', text: 'It was recorded at steady cruise' },
  brake: { sign: 'found-braking', text: 'It was recorded under braking' },
  standing: { sign: 'found-standing', text: 'It was recorded standing' },
};

const runOf = (basis: FindingBasis, context: CaseContext): CaseContext['runs'][number] | undefined =>
  context.runs.find(({ name }) => name === basis.run);

/** Engine speed of the finding: from its own order, which is surer than the dial. */
const engineRpm = (basis: FindingBasis): number | null =>
  basis.part === 'engine' && basis.order ? rpmFromHz(basis.frequencyHz / basis.order) : null;

export const conditionClues: readonly Clue[] = [
  {
    signs: ['found-pulling', 'found-cruising', 'found-braking', 'found-standing'],
    missing: 'The load of the run (cruise, pull, coast, brake) was not given.',
    asks: () => true,
    read: (basis, context) => {
      const load = runOf(basis, context)?.load;
      if (load === undefined) return null;
      const sign = LOAD_SIGNS[load];
      return sign ? { ...sign, strength: 1 } : 'neither';
    },
  },
  {
    signs: ['low-speed', 'road-speed'],
    missing: 'The road speed of the run is not known.',
    asks: ({ part }) => part === 'driveshaft',
    read: (basis, context) => {
      const speedMps = runOf(basis, context)?.usedSpeedMps ?? null;
      if (speedMps === null) return null;
      const text = `It was recorded at ${Math.round(mphFromMps(speedMps))} mph (${Math.round(kmhFromMps(speedMps))} km/h)`;
      return { sign: speedMps < MOVING_OFF_MPS ? 'low-speed' : 'road-speed', text, strength: 1 };
    },
  },
  {
    signs: ['low-engine-speed', 'engine-speed-not-low'],
    missing: 'The engine speed is not known.',
    asks: ({ part }) => part === 'engine',
    read: (basis) => {
      const rpm = engineRpm(basis);
      if (rpm === null) return null;
      if (rpm > LUGGING_RPM && rpm < NOT_LUGGING_RPM) return 'neither';
      const text = `The engine turned at ${Math.round(rpm / 10) * 10} rpm`;
      return { sign: rpm <= LUGGING_RPM ? 'low-engine-speed' : 'engine-speed-not-low', text, strength: 1 };
    },
  },
];
