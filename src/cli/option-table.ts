/** Every option of the commands that take a vehicle and runs, in one table: parsing, help and errors read it. */

export interface OptionRow {
  readonly name: string;
  /** Shown after the name in help; absent for a switch. */
  readonly value?: string;
  /** May be given several times. */
  readonly many?: boolean;
  readonly help: string;
}

export const VEHICLE_OPTIONS: readonly OptionRow[] = [
  { name: 'tire', value: '265/70R17', help: 'tire size as on the sidewall' },
  { name: 'rolling-circumference', value: '2.36m', help: 'measured distance of one turn, instead of the size' },
  { name: 'revs-per-mile', value: '680', help: 'tire turns per mile, instead of the size' },
  { name: 'revs-per-km', value: '423', help: 'tire turns per kilometer, instead of the size' },
  {
    name: 'layout',
    value: 'rear-drive',
    help: 'rear-drive, front-drive, four-wheel-drive or electric (default rear-drive)',
  },
  { name: 'axle', value: '3.73', help: 'axle ratio: driveshaft turns per wheel turn' },
  { name: 'front-axle', value: '3.73', help: 'front axle ratio of a four-wheel drive' },
  { name: 'final-drive', value: '3.94', help: 'final drive of a front drive, or reduction of an electric one' },
  { name: 'transfer-ratio', value: '1', help: 'transfer case ratio in use (1 in high range)' },
  { name: 'cylinders', value: '8', help: 'cylinders of a four-stroke engine' },
  { name: 'converter', help: 'the transmission has a torque converter that may slip' },
  {
    name: 'accessory',
    value: 'alternator=2.84',
    many: true,
    help: 'name and turns per crankshaft turn; repeat for more',
  },
  { name: 'pinion-teeth', value: '11', help: 'teeth of the axle pinion' },
  { name: 'ring-teeth', value: '41', help: 'teeth of the ring gear' },
  { name: 'pole-pairs', value: '3', help: 'pole pairs of an electric motor' },
  { name: 'tripod', help: 'half-shafts have tripod inner joints' },
];

export const RUN_OPTIONS: readonly OptionRow[] = [
  { name: 'speed', value: '62mph', many: true, help: 'road speed (mph, km/h, m/s)' },
  {
    name: 'speed-source',
    value: 'dial',
    many: true,
    help: 'where it was read: dial, gps, obd or logged (not given: several percent of error allowed)',
  },
  { name: 'gear', value: '0.70', many: true, help: 'transmission ratio in use' },
  { name: 'rpm', value: '1850', many: true, help: 'engine speed' },
  { name: 'load', value: 'cruise', many: true, help: 'cruise, pull, coast, neutral, brake or standing' },
  { name: 'from', value: '140s', many: true, help: 'only what follows this time of the recording is used' },
  { name: 'to', value: '240s', many: true, help: 'only what comes before this time is used' },
  { name: 'rate', value: '400Hz', many: true, help: 'sampling rate of a file without time stamps' },
  {
    name: 'unit',
    value: 'g',
    many: true,
    help: 'unit of the acceleration where the file tells none: g, mg, m/s2 or mm/s2 (overrules its header)',
  },
];

export const JOB_OPTIONS: readonly OptionRow[] = [
  {
    name: 'work',
    value: 'joint-replaced-rear',
    many: true,
    help: 'work done before the complaint; repeat or part by commas',
  },
  {
    name: 'repaired',
    value: 'joint-off-center',
    many: true,
    help: 'cause, by its id in --json, that was put right before the runs after the repair; repeat or part by commas',
  },
];

export const OUTPUT_OPTIONS: readonly OptionRow[] = [
  { name: 'units', value: 'us|metric', help: 'units of the text and page (default us)' },
  { name: 'json', help: 'print the report as one JSON object' },
];

export const PAGE_OPTION: OptionRow = {
  name: 'page',
  value: 'report.html',
  help: 'also write one printable page with the pictures',
};

/** The option part of a usage text. */
export function optionHelp(title: string, rows: readonly OptionRow[]): string {
  const lines = rows.map(({ name, value, help }) => {
    const left = `  --${name}${value === undefined ? '' : ` ${value}`}`;
    return left.length > 30 ? `${left}\n${' '.repeat(32)}${help}` : `${left.padEnd(32)}${help}`;
  });
  return `${title}:\n${lines.join('\n')}`;
}
