/** The words of the command line, with files that are not there, not recordings, or short: an exit status and a sentence. */
import { commands } from '../../../src/cli/commands.ts';
import type { Io } from '../../../src/cli/io.ts';
import {
  JOB_OPTIONS,
  OUTPUT_OPTIONS,
  PAGE_OPTION,
  RUN_OPTIONS,
  VEHICLE_OPTIONS,
} from '../../../src/cli/option-table.ts';
import { run } from '../../../src/cli/run.ts';
import { seedFiles } from '../csv-seeds.ts';
import type { Dice } from '../dice.ts';
import { anyNumber, anyText, edited } from '../odd-text.ts';
import { must, target } from '../target.ts';

const ROWS = [...VEHICLE_OPTIONS, ...RUN_OPTIONS, ...JOB_OPTIONS, ...OUTPUT_OPTIONS, PAGE_OPTION];
/** serve listens on a port, and batch starts threads of the built program; both take their words through the same reader. */
const LIST = commands.filter(({ name }) => name !== 'serve' && name !== 'batch');
const recording = seedFiles(64)[0]!.text;
const FILES: Readonly<Record<string, string>> = {
  'short.csv': recording,
  'words.csv': 'Dear reader,\nno table.\n',
  'empty.csv': '',
  'good.job.json':
    '{"schemaVersion":1,"vehicle":{"layout":"rear-drive","axleRatio":3.73},"runs":[{"file":"words.csv","speed":"62 mph"}]}',
  'bad.job.json': '{"vehicle":',
  '-': recording,
};

interface Input {
  readonly args: readonly string[];
}

function make(dice: Dice): Input {
  const command = dice.below(LIST.length);
  const words: string[] = [dice.chance(0.98) ? LIST[command]!.name : anyText(dice)];
  for (let left = dice.below(3); left > 0; left--)
    words.push(
      dice.chance(0.15)
        ? anyText(dice)
        : (dice.pick(Object.keys(FILES).filter((name) => dice.chance(0.1) || !['short.csv', '-'].includes(name))) ??
            'x.csv'),
    );
  const own = [...LIST[command]!.usage.matchAll(/--([a-z-]+)/g)].map(([, name]) => name!);
  for (let left = dice.below(6); left > 0; left--) {
    const row = dice.pick(ROWS);
    const name = dice.chance(0.5) && own.length > 0 ? dice.pick(own) : row.name;
    const example = ROWS.find((other) => other.name === name)?.value ?? '1';
    const value = dice.pick([
      example,
      example,
      edited(example, dice),
      anyNumber(dice),
      anyText(dice),
      `${anyNumber(dice)} ${anyNumber(dice)}`,
    ]);
    words.push(
      ...(dice.chance(0.2) ? [`--${name}=${value}`] : dice.chance(0.1) ? [`--${name}`] : [`--${name}`, value]),
    );
  }
  if (dice.chance(0.05)) words.push(dice.pick(['--', '-x', '--=', '---', '-', '--no-json', '--tire=']));
  return { args: words };
}

export const words = target<Input>({
  name: 'words',
  cases: 200,
  make,
  check: async ({ args }) => {
    let out = '';
    let err = '';
    const bytes = (path: string): Uint8Array => {
      const text = FILES[path];
      if (text === undefined) throw Object.assign(new Error('no such file'), { code: 'ENOENT' });
      return Buffer.from(text);
    };
    async function* once(path: string): AsyncGenerator<Uint8Array> {
      yield bytes(path);
    }
    const io: Io = {
      stdout: (text) => void (out += text),
      stderr: (text) => void (err += text),
      readFile: async (path) => bytes(path),
      openFile: async (path) => ({ chunks: (bytes(path), once(path)) }),
      writeFile: async () => undefined,
      terminalColumns: null,
      emphasis: false,
      progress: false,
    };
    const status = await run(args, io);
    must(err.length < 3000 || args.join('').length > 1000, `${err.length} characters on standard error`);
    must(status !== 2 || args.length === 0 || out === '', 'wrong usage, and still something printed');
    const given = args.join(' ');
    must([0, 1, 2].includes(status), `status ${status}`);
    must(status === 0 ? out.length > 0 : err.length > 0, `status ${status} without a word`);
    must(
      !/\bundefined\b|\bNaN\b|\[object |\bInfinity\b|\n {4}at .*:\d+:\d+/.test(out + err) ||
        /undefined|nan|object|infinity/i.test(given),
      `unformatted: ${(out + err).slice(0, 300)}`,
    );
  },
  show: ({ args }) => args.map((word) => JSON.stringify(word)).join(' '),
});
