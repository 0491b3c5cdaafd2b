import { describe, expect, it } from 'vitest';
import { balanceCommand } from '../../../src/cli/bench/balance.ts';
import { jsonOf, runBench, spoken } from './bench-io.ts';

const textOf = async (...args: readonly string[]) => spoken((await runBench(balanceCommand, args)).stdout);
const SHAFT = ['--mass', '9kg', '--shaft-rpm', '3000'];

describe('runs too poor to balance by', () => {
  // Amplitudes that rise by a fortieth cannot tell a trial's effect from a drift of speed; no rotor answers so evenly.
  const POOR = ['--found', '0.40', '--trial', '500g·mm', '--at', '0=0.41', '--at', '120=0.40', '--at', '240=0.39'];

  it('name no weight, nor a place for one', async () => {
    const text = await textOf(...POOR, '--clamp', '600g·mm', ...SHAFT);
    expect(text).toContain('No correction can be worked out from these runs.');
    expect(text).not.toMatch(/Add |Two clamps|The unbalance found/);
    expect(jsonOf(await runBench(balanceCommand, [...POOR, '--clamp', '600g·mm', '--json']))).toMatchObject({
      amplitudes: { usable: false },
      placings: [],
    });
  });

  it('are refused with phase too, where the answer is many times the trial', async () => {
    const weak = await textOf('--found', '0.42@65', '--run', '1:600g·mm@30=0.41@66');
    expect(weak).toContain('No correction can be worked out');
    expect(weak).not.toContain('add ');
    const buried = await textOf('--found', '0.42±0.05@65', '--run', '1:600g·mm@30=0.50±0.05@70');
    expect(buried).toContain('No correction can be worked out');
  });
});

describe('weights', () => {
  const runs = (trial: string) =>
    textOf('--found', '0.40', '--trial', trial, '--at', '0=0.57', '--at', '120=0.64', '--at', '240=0.13', ...SHAFT);

  it('are told with what they push with: U·Ω², and the tenth of the shaft’s weight', async () => {
    const text = await runs('500g·mm');
    expect(text).toContain('A trial weight of 0.69 oz·in (500 g·mm) pushes with 11.1 lbf (49.3 N).');
    expect(text).toContain('The unbalance found pushes with 14.8 lbf (65.6 N).');
    expect(text).toContain('A first trial weight of a tenth of the shaft’s weight in force: 0.12 oz·in (89.4 g·mm)');
    expect(text).not.toContain('First');
  });

  it('that no balancing needs are warned of before anything else', async () => {
    const text = await runs('5000g·mm');
    expect(text).toMatch(/^First At this speed the trial weight pushes with 56 times the usual tenth/);
    expect(text).toContain(
      'The correction is 15 times what the grade allows. That much comes of a bent or dented tube',
    );
  });

  it('are fitted at ride height: the hanging suspension overworks the joints', async () => {
    expect(await runs('500g·mm')).toContain('support the vehicle by its axles or wheels');
  });
});

it('takes several readings in one word, as for the trial runs', async () => {
  const runs = ['--run', '1:100g·mm@0=200@120/60@60', '--run', '2:100g·mm@0=150@100/80@90'];
  const [one, two] = await Promise.all([
    textOf('--found', '170@112/53@78', ...runs),
    textOf('--found', '170@112', '--found', '53@78', ...runs),
  ]);
  expect(one).toBe(two);
  expect(one).toContain('Plane 2: add');
});
