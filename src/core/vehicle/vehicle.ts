/** What is known of the vehicle. Every number carries its unit in its name; ratios have none. */

export type Layout = 'rear-drive' | 'front-drive' | 'four-wheel-drive' | 'electric';

/** How far the tire rolls in one turn, by whichever of these is known. */
export type TireSpec =
  | { readonly kind: 'size'; readonly size: string }
  | { readonly kind: 'rolling-circumference'; readonly circumferenceM: number }
  | { readonly kind: 'revs-per-mile'; readonly revsPerMile: number }
  | { readonly kind: 'revs-per-km'; readonly revsPerKm: number };

export interface Accessory {
  /** What the technician calls it: 'alternator', 'water pump'. */
  readonly name: string;
  /** Turns per crankshaft turn (crank pulley diameter over its own). */
  readonly ratio: number;
}

/** One piece of the driveshaft, front to rear. */
export interface ShaftPiece {
  readonly lengthMm?: number;
  readonly tubeOuterMm?: number;
  readonly wallMm?: number;
  readonly massKg?: number;
  readonly material?: 'steel' | 'aluminium';
  /** Joint at this piece's front and rear end. */
  readonly frontJoint?: JointKind;
  readonly rearJoint?: JointKind;
}

export type JointKind = 'cross' | 'double-cardan' | 'constant-velocity' | 'flexible-disc';

export interface Vehicle {
  /** Free text for the job sheet: 'long-bed work truck'. Never used in the analysis. */
  readonly description?: string;
  readonly tire?: TireSpec;
  readonly layout: Layout;
  /** Driveshaft turns per wheel turn (rear and four-wheel drive). */
  readonly axleRatio?: number;
  /** Front axle ratio of a four-wheel drive where it differs. */
  readonly frontAxleRatio?: number;
  /** Transmission output turns per half-shaft turn (front drive), or motor turns per wheel turn (electric). */
  readonly finalDrive?: number;
  /** Transmission ratios, input turns per output turn, first gear first. */
  readonly gearRatios?: readonly number[];
  /** Transfer case ratio in use, transmission output turns per driveshaft turn; 1 in high range. */
  readonly transferRatio?: number;
  readonly cylinders?: number;
  /** Torque converter present: engine may turn faster than gears say. */
  readonly converter?: boolean;
  readonly accessories?: readonly Accessory[];
  /** Pinion and ring gear tooth counts. */
  readonly pinionTeeth?: number;
  readonly ringTeeth?: number;
  /** Motor pole pairs (electric). */
  readonly polePairs?: number;
  readonly driveshaftPieces?: readonly ShaftPiece[];
  /** A driveshaft joined by cross joints between transaxle and wheels: tripod inner joints on the half-shafts. */
  readonly tripodJoints?: boolean;
}

export type SpeedSource = 'dial' | 'gps' | 'obd' | 'logged';
export type Load = 'cruise' | 'pull' | 'coast' | 'neutral' | 'brake' | 'standing';

/** How a run was driven. */
export interface RunCondition {
  /** Stated road speed, m/s; absent where the recording has its own track or the vehicle stood. */
  readonly speedMps?: number;
  readonly speedSource?: SpeedSource;
  /** Transmission ratio in use (input turns per output turn). */
  readonly gearRatio?: number;
  /** Engine speed, rev/min, as read by the driver or scan tool. */
  readonly engineRpm?: number;
  readonly load?: Load;
  readonly note?: string;
}

/** A condition with what is not known of its logs: relative standard uncertainties of their means. */
export interface LoggedCondition extends RunCondition {
  readonly speedLogSd?: number;
  readonly engineLogSd?: number;
}
