/** A line: where an order of a turning part is expected, and how surely. */

export type Part = 'tire' | 'driveshaft' | 'engine' | 'half-shaft' | 'accessory' | 'fixed' | 'unknown';

/**
 * Which unknown speed a line hangs on. All 'road' lines share one scale (speed, circumference, slip of the driven
 * wheel); all 'engine' lines share another, which in gear with the converter locked is tied to the first.
 */
export type SpeedGroup = 'road' | 'engine';

export interface Line {
  readonly part: Part;
  /** Which of several: 'front driveshaft', 'alternator'; absent where the part says it all. */
  readonly name?: string;
  /** Multiple of the part's turning speed: 0.5, 1, 1.5, 2 … */
  readonly order: number;
  /** 'driveshaft 2×', 'engine ½×', 'engine 4× (firing)'. */
  readonly label: string;
  /** What makes the engine's orders special, for causes: firing order, half order, … */
  readonly role?: 'firing' | 'mesh' | 'companion' | 'electric' | 'knock';
  readonly group: SpeedGroup;
  /** Multiple of the group's own turning speed (wheel, or crankshaft): frequency = perTurn × group speed in Hz. */
  readonly perTurn: number;
  readonly frequencyHz: number;
  /** Standard uncertainty, Hz, and the relative shares it is made of. */
  readonly frequencySdHz: number;
  readonly uncertainty: {
    readonly speed: number;
    readonly circumference: number;
    readonly slip: number;
    readonly engine: number;
  };
  /** 'below-half-rate' can be seen; 'above-half-rate' shows only as an alias image. */
  readonly visibility: 'below-half-rate' | 'above-half-rate';
  /** Where the alias image falls, Hz: |f − fs·round(f/fs)|. Only above half the rate. */
  readonly aliasHz?: number;
}

/** The expected lines of one run, with the speeds they were computed from. */
export interface ExpectedLines {
  /** Wheel turning speed, Hz, and its relative standard uncertainty; null where the speed is not known. */
  readonly wheelHz: number | null;
  readonly wheelRelativeSd: number;
  /** Crankshaft (or motor) turning speed, Hz; null where neither gear nor engine speed is known. */
  readonly engineHz: number | null;
  readonly engineRelativeSd: number;
  /** True where the engine speed was computed through the gear, so that it shares the road scale. */
  readonly engineTiedToRoad: boolean;
  /** Engine turns per wheel turn through the gear with no slip; null where the gear is not known. */
  readonly engineTurnsPerWheelTurn: number | null;
  readonly lines: readonly Line[];
}
