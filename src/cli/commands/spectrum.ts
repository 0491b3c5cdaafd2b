/** `perrev spectrum`: amplitude and power density of a recording, as CSV or JSON. */
import type { Given } from '../../core/reading/given.ts';
import { prepare } from '../../core/signal/prepare/prepare.ts';
import type { Prepared } from '../../core/signal/spectra/spectrum.ts';
import { welchBoth } from '../../core/signal/spectra/welch.ts';
import type { WindowName } from '../../core/signal/spectra/windows.ts';
import { parseFrequencyHz, parseRatio } from '../../core/quantity/quantity.ts';
import type { Arguments } from '../arguments.ts';
import { choiceOf, readArguments, valueOf } from '../arguments.ts';
import type { Command, ExitCode, Io } from '../io.ts';
import { UsageError } from '../io.ts';
import { loadRecording, problemText } from '../load.ts';
import { optionHelp } from '../option-table.ts';
import { accelerationUnitOf } from '../options.ts';

const WINDOWS: readonly WindowName[] = ['hann', 'hamming', 'blackman-harris', 'flat-top', 'rectangular'];
const AXES = ['x', 'y', 'z', 'all'] as const;
/** Length of a segment when none is asked for: fine enough for orders, short enough to average. */
const DEFAULT_SEGMENT_S = 8;

const OPTIONS = [
  { name: 'window', value: 'hann', help: 'hann, hamming, blackman-harris, flat-top or rectangular (default hann)' },
  { name: 'segment', value: '4096', help: `samples a segment (default about ${DEFAULT_SEGMENT_S} s)` },
  { name: 'overlap', value: '0.5', help: 'share of a segment the next one shares, 0 to 0.95 (default 0.5)' },
  { name: 'axis', value: 'all', help: 'x, y, z or all (root-sum-square); default every axis and all' },
  { name: 'rate', value: '400Hz', help: 'sampling rate of a file without time stamps' },
  { name: 'unit', value: 'g', help: 'unit of the acceleration where the file tells none: g, mg, m/s2 or mm/s2' },
  { name: 'json', help: 'print one JSON object instead of CSV' },
] as const;

interface Columns {
  readonly axis: string;
  readonly amplitudeMps2: Float64Array;
  readonly density: Float64Array;
}

/** What the options say about the file itself. */
function saidOf(given: Arguments): Given {
  const rate = given.text('rate');
  const unit = given.text('unit');
  return {
    ...(rate === undefined ? {} : { samplingRateHz: valueOf('rate', parseFrequencyHz(rate, 'Hz')) }),
    ...(unit === undefined ? {} : { accelerationUnit: accelerationUnitOf(unit) }),
  };
}

async function run(args: string[], io: Io): Promise<ExitCode> {
  const given = readArguments(args, OPTIONS);
  const [file, more] = given.files;
  if (file === undefined || more !== undefined)
    throw new UsageError('name one recording. Try: perrev spectrum recording.csv');
  const window = choiceOf('window', given.text('window') ?? 'hann', WINDOWS);
  const askedLength = askedSegment(given);
  const overlap = overlapOf(given);
  const axisText = given.text('axis');
  const askedAxis = axisText === undefined ? null : choiceOf('axis', axisText, AXES);
  const recording = await loadRecording(io, file, saidOf(given));
  if (!recording.ok) {
    io.stderr(problemText(recording.problem));
    return 1;
  }
  const prepared = prepare(recording.value);
  const segmentLength = segmentOf(askedLength, prepared);
  const names = recording.value.channels.map(({ axis }) => axis as string);
  const axes = axesOf(askedAxis, names);
  const columns = axes.map(({ name, axis }): Columns & { stepHz: number } => {
    const { amplitude, density } = welchBoth(prepared, { window, segmentLength, overlap, axis });
    return {
      axis: name,
      stepHz: amplitude.stepHz,
      amplitudeMps2: amplitude.amplitudeMps2,
      density: density.density,
    };
  });
  const stepHz = columns[0]?.stepHz ?? 0;
  const settings = {
    recording: recording.value.name,
    samplingRateHz: prepared.samplingRateHz,
    window,
    segmentLength,
    overlap,
    stepHz,
  };
  io.stdout(given.flag('json') ? json(settings, columns) : csv(stepHz, columns));
  return 0;
}

/** The length asked for, null where none is. */
function askedSegment(given: Arguments): number | null {
  const text = given.text('segment');
  if (text === undefined) return null;
  const length = valueOf('segment', parseRatio(text, { range: [0, 1e9], name: 'number' }));
  if (!Number.isInteger(length) || length < 16)
    throw new UsageError(`--segment ${text} is not a whole number of samples from 16 on.`);
  return length;
}

function segmentOf(asked: number | null, prepared: Prepared): number {
  const longest = Math.max(0, ...prepared.pieces.map(({ axes }) => axes[0]?.length ?? 0));
  if (asked === null) {
    const wanted = 2 ** Math.round(Math.log2(prepared.samplingRateHz * DEFAULT_SEGMENT_S));
    return Math.max(16, Math.min(wanted, 2 ** Math.floor(Math.log2(Math.max(16, longest)))));
  }
  if (asked > longest)
    throw new UsageError(`--segment ${asked} is longer than the recording's ${longest} samples without a gap.`);
  return asked;
}

function overlapOf(given: Arguments): number {
  const text = given.text('overlap');
  const overlap = text === undefined ? 0.5 : valueOf('overlap', parseRatio(text, { range: [0, 1e9], name: 'number' }));
  if (!(overlap >= 0 && overlap <= 0.95)) throw new UsageError('--overlap is a share from 0 to 0.95.');
  return overlap;
}

function axesOf(asked: string | null, names: readonly string[]): { name: string; axis: number | 'all' }[] {
  const every = [...names.map((name, axis) => ({ name, axis })), { name: 'all', axis: 'all' as const }];
  if (asked === null) return every;
  const found = every.find(({ name }) => name === asked);
  if (!found) throw new UsageError(`--axis ${asked}: the recording has ${names.join(', ')}.`);
  return [found];
}

function csv(stepHz: number, columns: readonly Columns[]): string {
  const header = [
    'frequency_hz',
    ...columns.flatMap(({ axis }) => [`amplitude_${axis}_mps2`, `density_${axis}_m2s4_per_hz`]),
  ];
  const lines = [header.join(',')];
  const bins = columns[0]?.amplitudeMps2.length ?? 0;
  for (let bin = 0; bin < bins; bin += 1) {
    const cells = columns.flatMap(({ amplitudeMps2, density }) => [
      number6(amplitudeMps2[bin] ?? 0),
      number6(density[bin] ?? 0),
    ]);
    lines.push(`${Number((bin * stepHz).toPrecision(10))},${cells.join(',')}`);
  }
  return `${lines.join('\n')}\n`;
}

/** Six significant digits: more than any accelerometer is worth. */
const number6 = (value: number): string => String(Number(value.toPrecision(6)));

function json(settings: object, columns: readonly Columns[]): string {
  const axes = columns.map(({ axis, amplitudeMps2, density }) => ({
    axis,
    amplitudeMps2: [...amplitudeMps2],
    densityM2s4PerHz: [...density],
  }));
  return `${JSON.stringify({ ...settings, axes })}\n`;
}

export const spectrumCommand: Command = {
  name: 'spectrum',
  summary: 'print amplitude and power density of a recording as CSV or JSON',
  usage: `Prints the spectrum of one recording: frequency in Hz, amplitude (0 to peak) in m/s², power density in (m/s²)²/Hz.
Read tones in the amplitude columns, noise and road in the density columns.

  perrev spectrum cruise.csv > spectrum.csv
  perrev spectrum cruise.csv --window flat-top --segment 4096 --axis z --json

${optionHelp('Options', OPTIONS)}`,
  run,
};
