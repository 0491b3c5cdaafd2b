/**
 * Faults as a person would describe them. Each has a level: the 0-to-peak acceleration its main order makes at the
 * sensor, root-sum-square over the axes, m/s², at the speed and load it is stated for. From there the physics takes
 * over: how the force grows with speed and torque, and what the resonances on its way make of it.
 */
import type { Load } from '../vehicle/vehicle.ts';

export type Wheel = 'front-left' | 'front-right' | 'rear-left' | 'rear-right';
export const WHEELS: readonly Wheel[] = ['front-left', 'front-right', 'rear-left', 'rear-right'];

/** The condition a level is stated for. */
export interface Reference {
  readonly speedMps: number;
  readonly load: Load;
  readonly gearRatio?: number;
  /** Engine speed where it does not follow from the gear, rev/min. */
  readonly engineRpm?: number;
}

interface Described {
  readonly levelMps2: number;
  /** Default: the mean condition of the run simulated. Give it where several runs share a fault. */
  readonly at?: Reference;
}

export type Fault = Described &
  (
    | { readonly kind: 'tire-unbalance'; readonly wheel: Wheel }
    /** Run-out or force variation: orders 1, 2, 3 in the given proportion (largest is the stated level). */
    | { readonly kind: 'tire-force-variation'; readonly wheel: Wheel; readonly orders: readonly number[] }
    /** Rotor thickness variation: felt under braking only. */
    | { readonly kind: 'rotor-thickness'; readonly wheel: Wheel }
    | { readonly kind: 'driveshaft-unbalance'; readonly shaft?: 'rear' | 'front' }
    /** Unequal working angles: twice a turn, by the shaft's uneven speed (∝ speed²) and by the torque couple. */
    | { readonly kind: 'driveshaft-angle'; readonly shaft?: 'rear' | 'front'; readonly coupleShare?: number }
    /** One cylinder's strength, 0 (dead) to 1 (sound); level stated for the half order. */
    | { readonly kind: 'misfire'; readonly cylinder: number; readonly strength: number }
    /** Crankshaft, flexplate or converter out of balance; motor out of balance in an electric. */
    | { readonly kind: 'engine-unbalance' }
    /** Worn or grounded mounts let the firing order through. */
    | { readonly kind: 'firing-through-mounts' }
    /** Worn tripod joint under drive torque: three times a half-shaft turn. */
    | { readonly kind: 'half-shaft-tripod'; readonly side: 'left' | 'right' }
    /** Index into vehicle.accessories. */
    | { readonly kind: 'accessory-unbalance'; readonly accessory: number }
    /** A tone of its own that follows no part: a fan, a pump, a hum. */
    | { readonly kind: 'fixed-tone'; readonly frequencyHz: number; readonly wander: number }
    /** A loose panel or bracket shaken by road and wind; level is its root mean square times √2. */
    | { readonly kind: 'resonance'; readonly frequencyHz: number; readonly damping: number }
  );
