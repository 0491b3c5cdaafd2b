/** Invented logger layouts, in four languages. */
import type { AccelerationUnit, CsvColumn, CsvLayout } from './csv-layout.ts';

const axes = (headers: readonly [string, string, string], unit: AccelerationUnit, digits: number): CsvColumn[] =>
  headers.map((header, i) => ({ kind: 'axis', header, axis: i as 0 | 1 | 2, unit, digits }));
const gyro = (headers: readonly [string, string, string], digits: number): CsvColumn[] =>
  headers.map((header, i) => ({ kind: 'gyro', header, axis: i as 0 | 1 | 2, digits }));
/** {unit} in a speed header is replaced by the log's unit. */
const speed = (header: string, write: 'held' | 'fresh' = 'held'): CsvColumn => ({
  kind: 'speed',
  header,
  write,
  digits: 1,
});
const engine = (header: string, write: 'held' | 'fresh' = 'held'): CsvColumn => ({
  kind: 'engine',
  header,
  write,
  digits: 1,
});

const point = { delimiter: ',', decimal: '.', lineEnd: '\n', header: {} } as const;
const comma = { delimiter: ';', decimal: ',', lineEnd: '\r\n', header: {} } as const;

export const CSV_LAYOUTS: readonly CsvLayout[] = [
  {
    ...point,
    name: 'plain',
    columns: [
      { kind: 'time', header: 'time_s', as: 's', digits: 4 },
      ...axes(['accel_x_mps2', 'accel_y_mps2', 'accel_z_mps2'], 'm/s²', 4),
      speed('road_speed_{unit}'),
      engine('engine_rpm'),
    ],
  },
  {
    ...comma,
    name: 'german',
    byteOrderMark: true,
    columns: [
      { kind: 'time', header: 'Zeit (s)', as: 's', digits: 4 },
      ...axes(['Beschleunigung X (m/s²)', 'Beschleunigung Y (m/s²)', 'Beschleunigung Z (m/s²)'], 'm/s²', 4),
      speed('Geschwindigkeit ({unit})'),
      engine('Motordrehzahl (1/min)'),
    ],
  },
  {
    delimiter: '\t',
    decimal: ',',
    lineEnd: '\n',
    header: {},
    name: 'french',
    preamble: ['Enregistrement de route', 'Fréquence : {rate} Hz', ''],
    columns: [
      { kind: 'time', header: 'Temps [s]', as: 's', digits: 4 },
      ...axes(['Accélération X [g]', 'Accélération Y [g]', 'Accélération Z [g]'], 'g', 5),
      speed('Vitesse [{unit}]'),
      engine('Régime moteur [tr/min]'),
    ],
  },
  {
    ...point,
    delimiter: ';',
    name: 'spanish',
    columns: [
      { kind: 'time', header: 'Tiempo (ms)', as: 'ms', digits: 2 },
      ...axes(['Aceleración X (m/s2)', 'Aceleración Y (m/s2)', 'Aceleración Z (m/s2)'], 'm/s²', 4),
      speed('Velocidad ({unit})'),
      engine('Régimen del motor (rpm)'),
    ],
  },
  {
    ...point,
    name: 'bare-blanks',
    delimiter: ' ',
    header: 'none',
    columns: [{ kind: 'time', header: '', as: 's', digits: 5 }, ...axes(['', '', ''], 'g', 5)],
  },
  {
    ...point,
    name: 'commented-header',
    preamble: ['# bench logger, three axes', '# rate {rate} Hz'],
    header: { prefix: '# ' },
    columns: [
      { kind: 'time', header: 't [s]', as: 's', digits: 5 },
      ...axes(['a_x [mg]', 'a_y [mg]', 'a_z [mg]'], 'mg', 2),
      speed('speed [{unit}]'),
      engine('engine speed [rpm]'),
    ],
  },
  {
    ...point,
    name: 'rate-in-preamble',
    preamble: ['Road recorder', 'Sample rate: {rate} Hz', 'Range: 4 g', ''],
    columns: [...axes(['X (g)', 'Y (g)', 'Z (g)'], 'g', 5), speed('Speed ({unit})'), engine('Engine (rpm)')],
  },
  {
    ...point,
    name: 'epoch-with-gyro',
    columns: [
      { kind: 'time', header: 'timestamp_ms', as: 'epoch-ms', digits: 1 },
      ...gyro(['gyro_x', 'gyro_y', 'gyro_z'], 4),
      ...axes(['acc_x', 'acc_y', 'acc_z'], 'm/s²', 4),
      speed('speed_{unit}'),
      engine('rpm'),
    ],
  },
  {
    ...point,
    name: 'epoch-nanoseconds',
    columns: [
      { kind: 'time', header: 'time_ns', as: 'epoch-ns' },
      ...axes(['ax', 'ay', 'az'], 'm/s²', 5),
      { kind: 'magnitude', header: 'a_total', unit: 'm/s²', digits: 5 },
      speed('vehicle_speed_{unit}', 'fresh'),
      engine('engine_speed_rpm', 'fresh'),
    ],
  },
  {
    ...point,
    name: 'date-and-time',
    columns: [
      { kind: 'time', header: 'date_time', as: 'iso' },
      ...axes(['accel x (g)', 'accel y (g)', 'accel z (g)'], 'g', 5),
      speed('vehicle speed ({unit})'),
      engine('engine speed (rpm)'),
    ],
  },
  {
    ...comma,
    name: 'time-of-day',
    lineEnd: '\n',
    columns: [
      { kind: 'count', header: 'Nr.' },
      { kind: 'time', header: 'Uhrzeit', as: 'clock' },
      ...axes(['Beschl. x [g]', 'Beschl. y [g]', 'Beschl. z [g]'], 'g', 5),
      speed('Geschw. [{unit}]'),
      engine('Drehzahl [U/min]'),
    ],
  },
  {
    ...comma,
    name: 'separator-line',
    preamble: ['sep=;'],
    columns: [
      { kind: 'time', header: 'Time (s)', as: 's', digits: 4 },
      ...axes(['Acceleration X (m/s²)', 'Acceleration Y (m/s²)', 'Acceleration Z (m/s²)'], 'm/s²', 4),
      speed('Speed ({unit})'),
      engine('Engine speed (rpm)'),
    ],
  },
  {
    ...point,
    name: 'quoted-trailing',
    lineEnd: '\r\n',
    quoted: true,
    trailingDelimiter: true,
    columns: [
      { kind: 'time', header: 'Elapsed time, s', as: 's', digits: 4 },
      ...axes(['Acceleration, x (m/s^2)', 'Acceleration, y (m/s^2)', 'Acceleration, z (m/s^2)'], 'm/s²', 4),
      speed('Road speed, {unit}'),
      engine('Engine speed, rpm'),
    ],
  },
  {
    ...point,
    name: 'mixed-order',
    columns: [
      { kind: 'axis', header: 'z_acc (m/s^2)', axis: 2, unit: 'm/s²', digits: 4 },
      { kind: 'axis', header: 'x_acc (m/s^2)', axis: 0, unit: 'm/s²', digits: 4 },
      { kind: 'axis', header: 'y_acc (m/s^2)', axis: 1, unit: 'm/s²', digits: 4 },
      { kind: 'magnitude', header: 'total (m/s^2)', unit: 'm/s²', digits: 4 },
      { kind: 'time', header: 'time (us)', as: 'us', digits: 0 },
      speed('speed ({unit})'),
      engine('rpm'),
    ],
  },
  {
    ...point,
    name: 'pocket-recorder',
    columns: [
      { kind: 'time', header: 'seconds_elapsed', as: 's', digits: 6 },
      { kind: 'word', header: 'activity', words: ['driving'] },
      ...axes(['acceleration_x', 'acceleration_y', 'acceleration_z'], 'm/s²', 5),
      { kind: 'place', header: 'latitude', which: 'latitude' },
      { kind: 'place', header: 'longitude', which: 'longitude' },
      speed('speed ({unit})', 'fresh'),
    ],
  },
  {
    ...point,
    name: 'several-times',
    delimiter: '\t',
    columns: [
      { kind: 'count', header: 'sample' },
      { kind: 'time', header: 'clock', as: 'clock' },
      { kind: 'time', header: 'time [s]', as: 's', digits: 4 },
      ...axes(['acc x [mm/s²]', 'acc y [mm/s²]', 'acc z [mm/s²]'], 'mm/s²', 1),
      speed('road speed [{unit}]'),
      engine('engine [rpm]'),
    ],
  },
  {
    ...point,
    name: 'raw-counts',
    preamble: ['# raw sensor words'],
    columns: [{ kind: 'time', header: 'ms', as: 'ms', digits: 1 }, ...axes(['raw_x', 'raw_y', 'raw_z'], 'counts', 0)],
  },
];

/** @throws Never for the names above; a wrong name is a bug. */
export const csvLayout = (name: string): CsvLayout => {
  const found = CSV_LAYOUTS.find((layout) => layout.name === name);
  if (found === undefined) throw new Error(`no CSV layout called ${name}`);
  return found;
};
