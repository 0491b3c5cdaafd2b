/**
 * The outcome of a check, as entered. Judged by driveline/ (numbers against limits) and weighed by diagnosis/
 * (what it says for or against a cause). Readings are kept as read; everything derived is computed again.
 */
export type Measurement =
  | {
      readonly kind: 'working-angles';
      /** Inclinometer and plan readings, front to rear: transmission, each shaft piece, pinion. */
      readonly shafts: readonly ShaftReading[];
      /** Fork twist of each shaft piece, degrees; 0 = forks in line. */
      readonly phasingDeg?: readonly number[];
    }
  | {
      readonly kind: 'end-play';
      readonly joint: 'front' | 'centre' | 'rear';
      /** Dial reading along each of the joint's two axes, mm. */
      readonly axisPlayMm: readonly [number, number];
    }
  | {
      readonly kind: 'rings';
      readonly joint: 'front' | 'centre' | 'rear';
      readonly axes: readonly RingAxis[];
    }
  | {
      readonly kind: 'runout';
      readonly place: RunoutPlace;
      /** Total indicator reading, mm. */
      readonly tirMm?: number;
      /** Dial readings at even steps around the clock, mm, where they were taken. */
      readonly readingsMm?: readonly number[];
    }
  | {
      readonly kind: 'observation';
      /** Id of the check that was made, and whether it found something wrong. */
      readonly checkId: string;
      readonly outcome: 'fine' | 'wrong';
      readonly note?: string;
    };

export type RunoutPlace =
  | 'tube-front'
  | 'tube-middle'
  | 'tube-rear'
  | 'companion-flange-radial'
  | 'companion-flange-face'
  | 'wheel-radial'
  | 'wheel-lateral'
  | 'tire-radial'
  | 'tire-lateral';

export interface ShaftReading {
  readonly part: 'transmission' | 'shaft' | 'pinion';
  /** Slope in degrees, positive where the rear end is lower (down to the rear). */
  readonly slopeDeg: number;
  /** Plan angle in degrees, positive where the rear end lies to the right; 0 where in line with the vehicle. */
  readonly planDeg?: number;
}

export interface RingAxis {
  /** Groove span in the yoke, mm; cross with cups, mm; the two retaining rings, mm. */
  readonly grooveSpanMm: number;
  readonly crossAndCupsMm: number;
  readonly ring1Mm: number;
  readonly ring2Mm: number;
}
