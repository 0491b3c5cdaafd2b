/** A kept measurement back into the fields of its form: what would have to be typed to make it. */
import type { AmplitudeReading, Measurement, PhasorReading, ShaftReading } from '../../core/driveline/measurement.ts';
import type { Typed } from './entry.ts';
import { clearForm, typedKey } from './entry.ts';
import type { MeasureForm } from './measure-form.ts';

type Fields = Record<string, string>;

const mm = (value: number): string => `${value} mm`;
const withSd = (value: number, sd: number | undefined): string => (sd === undefined ? `${value}` : `${value} ± ${sd}`);
const level = ({ amplitude, amplitudeSd }: AmplitudeReading): string => withSd(amplitude, amplitudeSd);

/** An entry only where there is something to enter. */
const some = (id: string, value: number | undefined, text: (value: number) => string = String): Fields =>
  value === undefined ? {} : { [id]: text(value) };

const merged = (parts: readonly Fields[]): Fields => Object.assign({}, ...parts) as Fields;

function anglesTyped(measurement: Extract<Measurement, { kind: 'working-angles' }>): Fields {
  const { shafts, phasingDeg, joints, splitErrorDeg, driveshaft, atRideHeight } = measurement;
  const idOf = ({ part }: ShaftReading, index: number): string =>
    part === 'shaft' ? `shaft${index}` : part === 'pinion' ? 'pinion' : 'transmission';
  return merged([
    {
      driveshaft: driveshaft ?? 'rear-driveshaft',
      pieces: ['one', 'two', 'three'][shafts.length - 3] ?? 'one',
      height: atRideHeight === false ? 'hung' : 'loaded',
    },
    ...shafts.map((shaft, index) => {
      const id = idOf(shaft, index);
      const isPiece = index > 0 && index < shafts.length - 1;
      return {
        [`${id}.slope`]: String(Math.abs(shaft.slopeDeg)),
        [`${id}.low`]: shaft.slopeDeg < 0 ? 'front' : 'rear',
        ...some(`${id}.plan`, shaft.planDeg),
        ...(isPiece ? some(`${id}.twist`, phasingDeg?.[index - 1]) : {}),
        ...(joints?.[index] === undefined ? {} : { [`${id}.joint`]: joints[index] }),
        ...some(`${id}.split`, splitErrorDeg?.[index]),
      };
    }),
  ]);
}

function phasorsTyped({
  part,
  weightUnit,
  baseline,
  trials,
}: Extract<Measurement, { kind: 'balance-phasors' }>): Fields {
  const reading = (id: string, one: PhasorReading): Fields => ({
    [`${id}.amplitude`]: level(one),
    [`${id}.phase`]: withSd(one.phaseDeg, one.phaseSdDeg),
  });
  return merged([
    { part, unit: weightUnit, planes: trials.length > 1 ? 'two' : 'one' },
    ...baseline.map((one, sensor) => reading(`base${sensor + 1}`, one)),
    ...trials.flatMap(({ plane, weight, angleDeg, readings }) => [
      { [`weight${plane + 1}`]: `${weight} ${weightUnit}`, [`angle${plane + 1}`]: String(angleDeg) },
      ...readings.map((one, sensor) => reading(`trial${plane + 1}.${sensor + 1}`, one)),
    ]),
  ]);
}

function fieldsOf(measurement: Measurement): Fields {
  switch (measurement.kind) {
    case 'working-angles':
      return anglesTyped(measurement);
    case 'double-cardan':
      return {
        joint: measurement.joint,
        half1: String(measurement.halfAnglesDeg[0]),
        half2: String(measurement.halfAnglesDeg[1]),
      };
    case 'ride-height':
      return { axle: measurement.axle, measured: mm(measurement.measuredMm), specified: mm(measurement.specifiedMm) };
    case 'end-play':
      return { joint: measurement.joint, axis1: mm(measurement.axisPlayMm[0]), axis2: mm(measurement.axisPlayMm[1]) };
    case 'rings':
      return merged([
        { joint: measurement.joint },
        ...measurement.axes.map((axis, index) => {
          const id = `axis${index + 1}`;
          return {
            [`${id}.span`]: mm(axis.grooveSpanMm),
            [`${id}.cross`]: mm(axis.crossAndCupsMm),
            [`${id}.ring1`]: mm(axis.ring1Mm),
            [`${id}.ring2`]: mm(axis.ring2Mm),
            ...some(`${id}.offset`, axis.grooveOffsetMm, mm),
          };
        }),
      ]);
    case 'radial-play':
      return { place: measurement.place, play: mm(measurement.playMm) };
    case 'runout': {
      const { place, tirMm, readingsMm = [], wheelMaterial } = measurement;
      return merged([
        { place, ...some('tir', tirMm, mm), ...(wheelMaterial && { material: wheelMaterial }) },
        ...(readingsMm.length > 0 ? [{ stations: String(readingsMm.length) }] : []),
        ...readingsMm.map((value, index) => ({ [`at${(360 * index) / readingsMm.length}`]: mm(value) })),
      ]);
    }
    case 'flange-reindex':
      return merged([
        { bolts: String(measurement.boltCount) },
        ...measurement.levels.map(({ steps, amplitudeMps2 }) => ({ [`level${steps}`]: `${amplitudeMps2} m/s²` })),
      ]);
    case 'balance-amplitudes':
      return merged([
        {
          part: measurement.part,
          unit: measurement.weightUnit,
          base: level(measurement.baseline),
          weight: `${measurement.trialWeight} ${measurement.weightUnit}`,
        },
        ...measurement.positions.map((one, index) => ({
          [`angle${index + 1}`]: String(one.angleDeg),
          [`level${index + 1}`]: level(one),
        })),
      ]);
    case 'balance-phasors':
      return phasorsTyped(measurement);
    case 'wheel-unbalance':
      return {
        inner: `${measurement.innerG} g`,
        outer: `${measurement.outerG} g`,
        radius: mm(measurement.radiusMm),
      };
    case 'observation':
      return {};
  }
}

/** The typed text of a document with a form's fields as they were for this measurement, and nothing else in them. */
export function reopened(form: MeasureForm, typed: Typed, measurement: Measurement): Typed {
  const fields = Object.entries(fieldsOf(measurement)).map(([id, text]) => [typedKey(form, id), text] as const);
  return { ...clearForm(form, typed), ...Object.fromEntries(fields) };
}

/** No reading that was typed goes where these fields come. */
export const losesNothing = (typed: Typed, reopened: Typed): boolean =>
  Object.entries(typed).every(([key, text]) => reopened[key] === text);
