/** A tone: one peak of one run as diagnosis weighs it, its frequency given at the run's reference speed. */
import type { Peak } from '../signal/peak.ts';

/**
 * How the tone moved while a turning speed moved: d(frequency)/d(ln speed), Hz. An order at frequency f moves by f, a
 * fixed tone by 0, the alias image of an order at F by +F or −F.
 */
export interface Slope {
  readonly hz: number;
  /** Standard uncertainty, Hz. */
  readonly sdHz: number;
}

export interface Tone {
  readonly peak: Peak;
  readonly feltLevel: number;
  /** Against the road speed's history; null where that was too steady or is not known. */
  readonly roadSlope: Slope | null;
  /** Against the engine's own logged speed, where it is not tied to the road. */
  readonly engineSlope: Slope | null;
}
