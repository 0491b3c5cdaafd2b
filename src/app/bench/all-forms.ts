/** Every measurement form, and which check each of them answers. */
import type { Measurement } from '../../core/driveline/measurement.ts';
import { anglesForm } from './forms/angles.ts';
import { amplitudesForm, phasorsForm } from './forms/balance.ts';
import { doubleCardanForm, rideHeightForm } from './forms/heights.ts';
import { endPlayForm, radialPlayForm, ringsForm } from './forms/joint.ts';
import { reindexForm, runoutForm, wheelForm } from './forms/runout.ts';
import { whirlForm } from './forms/whirl.ts';
import type { MeasureForm } from './measure-form.ts';

export const MEASURE_FORMS: readonly MeasureForm[] = [
  anglesForm,
  endPlayForm,
  ringsForm,
  runoutForm,
  radialPlayForm,
  rideHeightForm,
  doubleCardanForm,
  wheelForm,
  reindexForm,
  amplitudesForm,
  phasorsForm,
];

/** What the bench offers: measurements, and the critical speed, which is worked out from sizes. */
export const BENCH_FORMS: readonly MeasureForm[] = [...MEASURE_FORMS, whirlForm];

interface FormOfCheck {
  readonly form: MeasureForm;
  /** Choices that the check has already made: where to measure. */
  readonly preset: Readonly<Record<string, string>>;
}

const CHECKS: Readonly<Record<string, readonly [form: MeasureForm, preset?: Readonly<Record<string, string>>]>> = {
  'working-angles': [anglesForm],
  'joint-angle-size': [anglesForm],
  'ride-height': [rideHeightForm],
  'joint-end-play': [endPlayForm],
  'ring-thickness': [ringsForm],
  'tube-runout': [runoutForm, { place: 'tube-middle' }],
  'companion-flange-runout': [runoutForm, { place: 'companion-flange-radial' }],
  'tire-runout': [runoutForm, { place: 'tire-radial' }],
  'rim-runout': [runoutForm, { place: 'wheel-radial' }],
  'slip-yoke-play': [radialPlayForm, { place: 'slip-yoke' }],
  'center-bearing-inspection': [radialPlayForm, { place: 'center-bearing' }],
  'double-cardan-play': [doubleCardanForm],
  'reindex-shaft': [reindexForm],
  'clamp-trial': [amplitudesForm],
  'wheel-balancer': [wheelForm, {}],
};

/** The form a check is answered with; null where its outcome is seen rather than measured. */
export function formOfCheck(checkId: string): FormOfCheck | null {
  const found = Object.hasOwn(CHECKS, checkId) ? CHECKS[checkId] : undefined;
  return found ? { form: found[0], preset: found[1] ?? {} } : null;
}

/** Two measurements of one subject: the later replaces the earlier. */
export function subjectOf(measurement: Measurement): string {
  const about = measurement as { joint?: string; place?: string; axle?: string; part?: string; checkId?: string };
  const shaft = 'driveshaft' in measurement ? measurement.driveshaft : undefined;
  return [measurement.kind, about.joint, about.place, about.axle, about.part, about.checkId, shaft]
    .filter(Boolean)
    .join(' ');
}

export const withMeasurement = (all: readonly Measurement[], added: Measurement): Measurement[] => [
  ...all.filter((measurement) => subjectOf(measurement) !== subjectOf(added)),
  added,
];
