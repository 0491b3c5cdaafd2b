/**
 * Every reason for which a recording is refused, each with its sentence and its remedy. Nothing else in this folder
 * makes a Problem, so the list is complete; a test reads every member aloud.
 */
import type { Problem } from '../note.ts';

const megabytes = (bytes: number): string => `${Math.round(bytes / 1048576)} MB`;
const hz = (value: number): string => `${Number(value.toPrecision(3))} Hz`;
/** Names from a file are quoted and cut short, so that a broken header cannot flood a message. */
const quoted = (text: string): string => `"${text.length > 40 ? `${text.slice(0, 40)}…` : text}"`;
const listed = (names: readonly string[]): string =>
  names.slice(0, 6).map(quoted).join(', ') + (names.length > 6 ? ` and ${names.length - 6} more` : '');

const make = (code: string, file: string, message: string, remedy: string, line?: number): Problem =>
  line === undefined ? { code, file, message, remedy } : { code, file, line, message, remedy };

const EXPORT_AGAIN = 'Export the recording again as CSV text, one row per sample, and open that file.';
const GIVE_RATE =
  'Add a time column, write the rate above the table ("sampling rate: 1000 Hz"), or give the rate by hand.';

export const readingProblems = {
  emptyFile: (file: string) => make('empty-file', file, `${file} is empty.`, EXPORT_AGAIN),

  binaryFile: (file: string, line: number) =>
    make('binary-file', file, `${file}, line ${line}: holds bytes that are not text.`, EXPORT_AGAIN, line),

  packedFile: (file: string, kind: string) =>
    make(
      'packed-file',
      file,
      `${file} is ${kind}, not CSV text.`,
      'Unpack it, or save the sheet as CSV, and open the CSV file (a .csv.gz is read as it is).',
    ),

  damagedGzip: (file: string) =>
    make(
      'damaged-gzip',
      file,
      `${file} is compressed and breaks off, and no recording could be unpacked from it.`,
      'Copy the file again, or unpack it first and open the CSV inside.',
    ),

  sourceFailed: (file: string, because: string) =>
    make(
      'source-failed',
      file,
      `${file} could not be read to its end: ${because}.`,
      'Copy the file to this computer and try again.',
    ),

  cancelled: (file: string) =>
    make('cancelled', file, `Reading ${file} was stopped.`, 'Open the file again to read it.'),

  notATable: (file: string, line: number, found: string) =>
    make(
      'not-a-table',
      file,
      `${file}, line ${line}: no rows of numbers found; it reads ${quoted(found)}.`,
      EXPORT_AGAIN,
      line,
    ),

  headerOnly: (file: string, line: number, names: readonly string[]) =>
    make(
      'header-only',
      file,
      `${file}, line ${line}: a header (${listed(names)}) with no rows under it.`,
      'Record again, and make sure the recording is stopped before it is exported.',
      line,
    ),

  metadataOnly: (file: string, line: number) =>
    make(
      'metadata-only',
      file,
      `${file}, line ${line}: holds settings or remarks about a recording, not the recording.`,
      'Open the file of the same export that holds the acceleration, often named after the accelerometer.',
      line,
    ),

  gyroscopeOnly: (file: string, line: number, names: readonly string[]) =>
    make(
      'gyroscope-only',
      file,
      `${file}, line ${line}: holds turning rates (${listed(names)}) and no acceleration.`,
      'Open the accelerometer file of the same export, or record again with the accelerometer switched on.',
      line,
    ),

  locationOnly: (file: string, line: number, names: readonly string[]) =>
    make(
      'location-only',
      file,
      `${file}, line ${line}: holds positions (${listed(names)}) and no acceleration.`,
      'Open the accelerometer file of the same export, or record again with the accelerometer switched on.',
      line,
    ),

  noAcceleration: (file: string, line: number, names: readonly string[]) =>
    make(
      'no-acceleration',
      file,
      `${file}, line ${line}: none of the columns ${listed(names)} is acceleration.`,
      'Name the acceleration columns in the header, for instance "acc x (g)", "acc y (g)", "acc z (g)".',
      line,
    ),

  accelerationUnclear: (file: string, line: number, columns: number) =>
    make(
      'acceleration-unclear',
      file,
      `${file}, line ${line}: ${columns} columns of numbers, and nothing tells which are acceleration.`,
      'Add a header line such as "time (s),acc x (g),acc y (g),acc z (g)" above the rows.',
      line,
    ),

  commasUnclear: (file: string, line: number, headers: number, cells: number) =>
    make(
      'commas-unclear',
      file,
      `${file}, line ${line}: ${cells} cells under ${headers} names; the comma seems to be both separator and decimal mark.`,
      'Export again with a semicolon or tab as the separator, or with a decimal point.',
      line,
    ),

  lineTooLong: (file: string, line: number, limitBytes: number) =>
    make(
      'line-too-long',
      file,
      `${file}, line ${line}: longer than ${megabytes(limitBytes)} without a line end.`,
      EXPORT_AGAIN,
      line,
    ),

  tooManyColumns: (file: string, line: number, columns: number, limit: number) =>
    make(
      'too-many-columns',
      file,
      `${file}, line ${line}: ${columns} columns, more than the ${limit} that are looked through.`,
      'Export one row per sample, with time and acceleration columns only.',
      line,
    ),

  noUsableRows: (file: string, line: number, because: string) =>
    make('no-usable-rows', file, `${file}, from line ${line}: no row can be used: ${because}.`, EXPORT_AGAIN, line),

  fewReadable: (file: string, line: number, rows: number) =>
    make(
      'few-readable',
      file,
      `${file}, from line ${line}: only ${rows} of the lines can be read as a row of numbers.`,
      EXPORT_AGAIN,
      line,
    ),

  tooFewRows: (file: string, line: number, rows: number, needed: number) =>
    make(
      'too-few-rows',
      file,
      `${file}, from line ${line}: ${rows} usable ${rows === 1 ? 'row' : 'rows'}, and at least ${needed} are needed.`,
      'Record for 20 seconds or longer at a steady speed.',
      line,
    ),

  noSamplingRate: (file: string, line: number) =>
    make(
      'no-sampling-rate',
      file,
      `${file}, line ${line}: no time column, and no sampling rate stated.`,
      GIVE_RATE,
      line,
    ),

  timeStandsStill: (file: string, line: number, name: string) =>
    make(
      'time-stands-still',
      file,
      `${file}, from line ${line}: the time column ${quoted(name)} does not run, and no sampling rate is stated.`,
      GIVE_RATE,
      line,
    ),

  timeUnitUnclear: (file: string, line: number, name: string, step: number) =>
    make(
      'time-unit-unclear',
      file,
      `${file}, from line ${line}: the time column ${quoted(name)} moves in steps of ${Number(step.toPrecision(4))} and names no unit.`,
      'Write the unit into the header, for instance "time (ms)", or give the sampling rate by hand.',
      line,
    ),

  rateTooLow: (file: string, line: number, rateHz: number, limitHz: number) =>
    make(
      'rate-too-low',
      file,
      `${file}, from line ${line}: ${hz(rateHz)}, too slow: below ${hz(limitHz)} not even a wheel's turning can be seen.`,
      'Record again at 200 Hz or faster; 100 Hz is the least that shows a driveshaft.',
      line,
    ),

  rateNotUsable: (file: string, rateHz: number) =>
    make(
      'rate-not-usable',
      file,
      `${file}: the sampling rate given by hand, ${rateHz} Hz, is not a usable rate.`,
      'Give the number of samples per second, such as 1000.',
    ),

  unitUnclear: (file: string, line: number, name: string, size: number) =>
    make(
      'unit-unclear',
      file,
      `${file}, from line ${line}: ${quoted(name)} names no unit, and its steady part of ${Number(size.toPrecision(3))} is not gravity in any usual one.`,
      'Write the unit into the header, for instance "acc x (g)" or "acc x (m/s²)", or give the unit by hand.',
      line,
    ),

  constantAcceleration: (file: string, line: number) =>
    make(
      'constant-acceleration',
      file,
      `${file}, from line ${line}: the acceleration has the same value in every row.`,
      'Check the sensor and its cable, and record again.',
      line,
    ),
} as const satisfies Record<string, (...args: never[]) => Problem>;
