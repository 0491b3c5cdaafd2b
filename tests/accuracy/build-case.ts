/** Puts a scenario's levels where they are wanted: faults felt, normal orders not. */
import type { Fault } from '../../src/core/simulate/fault.ts';
import type { RandomSource } from '../../src/core/simulate/random.ts';
import type { Scenario } from '../../src/core/simulate/scenario.ts';
import type { Lean } from './case.ts';
import { noiseDensity } from './detectability.ts';
import type { TrueFault } from './case.ts';
import { linesOf, normalPeak, trueFault } from './true-fault.ts';

/** Normal orders stay below this felt level, and above 75 Hz below this many m/s², however they are doubled. */
const NORMAL_FELT = 0.7;
const NORMAL_HEARD_MPS2 = 0.05;
/** Above this a line counts as heard rather than felt, and must be this strong. */
const HEARD_FROM_HZ = 80;
const HEARD_MPS2 = [0.2, 0.5] as const;
const MOST_MPS2 = 0.9;
/** Plain cases are clear ones: twice what can just be named. */
const CLEAR = 16;

/** Normal orders held below what is felt, after the lean's factor. */
export const withNormal = (scenario: Scenario, lean: Lean): Scenario => {
  const wanted = lean.normalLevel;
  const peak = normalPeak({ ...scenario, normalLevel: wanted });
  const over = Math.max(peak.felt / NORMAL_FELT, peak.heardMps2 / NORMAL_HEARD_MPS2, 1);
  return { ...scenario, normalLevel: wanted / over };
};

/** The fault at a level a person feels, drawn between the two felt levels, or hears where the seat feels little. */
export const feltFault = (
  scenario: Scenario,
  fault: Fault,
  random: RandomSource,
  felt: readonly [number, number] = [1.8, 8],
): Fault => {
  const strongest = linesOf(scenario, { ...fault, levelMps2: 1 })[0];
  if (strongest === undefined) return fault;
  const wanted = random.logBetween(...felt);
  const heard = random.logBetween(...HEARD_MPS2);
  const factor = strongest.hz >= HEARD_FROM_HZ ? heard / strongest.levelMps2 : wanted / strongest.felt;
  const most = MOST_MPS2 / strongest.levelMps2;
  return { ...fault, levelMps2: Math.min(factor, most) };
};

/** Smoother road, then stronger fault, until each fault is clear. Ramps lose time at each speed and need more. */
export const madeClear = (
  scenario: Scenario,
  clear = CLEAR,
): { readonly scenario: Scenario; readonly faults: readonly TrueFault[] } => {
  let now = scenario;
  for (let turn = 0; ; turn++) {
    const density = noiseDensity(now);
    const faults = now.faults.map((f) => trueFault(now, f, density));
    const weak = faults.some((f) => f.detectability < clear);
    if (!weak || turn === 6) return { scenario: now, faults };
    now = {
      ...now,
      roadM3: now.roadM3 / 2,
      faults: now.faults.map((f, i) =>
        faults[i]!.detectability < clear ? { ...f, levelMps2: Math.min(MOST_MPS2, f.levelMps2 * 1.5) } : f,
      ),
    };
  }
};

export const asIs = (scenario: Scenario): { readonly scenario: Scenario; readonly faults: readonly TrueFault[] } => {
  const density = noiseDensity(scenario);
  return { scenario, faults: scenario.faults.map((f) => trueFault(scenario, f, density)) };
};
