import type { Fault } from './fault.ts';
import { mountFilter, runningFilter } from './modes.ts';
import type { RandomSource } from './random.ts';

/** Loose things shaken by noise: white noise growing with speed, through a resonance, in one direction. */
export const shakersOf = (
  faults: readonly Fault[],
  meanSpeed: number,
  rateHz: number,
  ofRun: (name: string) => RandomSource,
): readonly ((speedMps: number, out: Float64Array) => void)[] =>
  faults.flatMap((fault, i) => {
    if (fault.kind !== 'resonance') return [];
    const random = ofRun(`shaker ${i}`);
    const filter = runningFilter(mountFilter(fault, rateHz));
    const direction = [random.normal(), random.normal(), random.normal()];
    const length = Math.hypot(...direction);
    // Mean square behind the resonance is density · π·f/(4ζ); white noise at the inner rate has density 2·sd²/rate.
    const meanSquare = fault.levelMps2 ** 2 / 2;
    const sd = Math.sqrt(((meanSquare * 4 * fault.damping) / (Math.PI * fault.frequencyHz)) * (rateHz / 2));
    const reference = fault.at?.speedMps ?? meanSpeed;
    return [
      (speedMps, out) => {
        const a = filter(sd * random.normal() * (reference > 0 ? speedMps / reference : 1));
        for (let axis = 0; axis < 3; axis++) out[axis] = out[axis]! + (a * direction[axis]!) / length;
      },
    ];
  });
