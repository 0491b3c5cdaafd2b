import { describe, expect, it } from 'vitest';
import { balanceCommand } from '../../../src/cli/bench/balance.ts';
import { jointsCommand } from '../../../src/cli/bench/joints.ts';
import { ringsCommand } from '../../../src/cli/bench/rings.ts';
import { runoutCommand } from '../../../src/cli/bench/runout.ts';
import { whirlCommand } from '../../../src/cli/bench/whirl.ts';
import type { Command } from '../../../src/cli/io.ts';
import { jsonOf, runBench, spoken } from './bench-io.ts';

const job = JSON.stringify({
  schemaVersion: 1,
  vehicle: {
    layout: 'rear-drive',
    tire: { kind: 'rolling-circumference', circumferenceM: 2 },
    axleRatio: 4,
    driveshaftPieces: [{ lengthMm: 1524, tubeOuterMm: 88.9, wallMm: 2.1082, massKg: 9 }],
  },
  runs: [{ file: 'cruise.csv', speedMps: 25, speedSource: 'gps' }],
  measurements: [
    {
      kind: 'working-angles',
      shafts: [
        { part: 'transmission', slopeDeg: 3 },
        { part: 'shaft', slopeDeg: 6.2, planDeg: 1.5 },
        { part: 'pinion', slopeDeg: 2.4 },
      ],
    },
    {
      kind: 'rings',
      joint: 'rear',
      axes: [{ grooveSpanMm: 81.85, crossAndCupsMm: 78.6, ring1Mm: 1.55, ring2Mm: 1.65 }],
    },
    { kind: 'end-play', joint: 'front', axisPlayMm: [0.02, 0.07] },
    { kind: 'runout', place: 'tube-middle', tirMm: 0.5 },
    {
      kind: 'balance-amplitudes',
      part: 'driveshaft',
      weightUnit: 'g·mm',
      baseline: { amplitude: 0.4 },
      trialWeight: 500,
      positions: [
        { angleDeg: 0, amplitude: 0.5658349663 },
        { angleDeg: 120, amplitude: 0.6431792957 },
        { angleDeg: 240, amplitude: 0.1270873103 },
      ],
    },
  ],
  limits: { 'end-play': { value: 0.1, source: 'service data' } },
});
const files = { 'shop.job.json': job };

// Worked numbers as in the tests of the core; here the way from words to them and back.
describe('perrev joints', () => {
  const typed = [
    '--transmission',
    '3 down',
    '--shaft',
    '6.2 down 1.5 right',
    '--pinion',
    '2.4° down',
    '--shaft-rpm',
    '3000',
  ];

  it('takes slopes as people say them, and tells residual, inertia, limits and cautions', async () => {
    const { status, stdout } = await runBench(jointsCommand, typed);
    expect(status).toBe(0);
    expect(spoken(stdout)).toContain('Working angles at 3000 rpm of the driveshaft: inside the limits');
    for (const figure of ['3.53°', '4.08°', '2.14°', '138 rad/s²', '375 rad/s²', '502 rad/s²']) {
      expect(spoken(stdout)).toContain(figure);
    }
    expect(spoken(stdout)).toContain('common practice, no source');
    // tan²(2.137°/2) rad are 0.01994°; half the speed has a quarter of the acceleration.
    expect(spoken(stdout)).toContain('That is 0.020° of twist to either side, twice a turn.');
    expect(spoken(stdout)).toMatch(/1500 rpm 34\.4 rad\/s² 93\.8 rad\/s² 125 rad\/s²/);
    // What does not decide is not called a limit.
    expect(spoken(stdout)).toContain('at road speed: 3.53°, above the preferred 3°');
    expect(spoken(stdout)).toContain('Joint angles count only at ride height');
    expect(spoken(stdout)).toContain('Local codes, the maker’s procedure and licensed practice come first.');
  });

  it('does not depend on reference, facing or sign convention', async () => {
    const shifted = [
      '--reference',
      '1 down',
      '--transmission',
      '4 down',
      '--shaft',
      '7.2 1.5 right',
      '--pinion',
      '3.4',
    ];
    const both = await Promise.all(
      [typed, [...shifted, '--shaft-rpm', '3000']].map(async (args) =>
        jsonOf(await runBench(jointsCommand, [...args, '--json'])),
      ),
    );
    const residual = ({ angles }: Record<string, never>) =>
      (angles as unknown as { residual: { accelerationRadPerS2: number } }).residual;
    expect(residual(both[0]!).accelerationRadPerS2).toBeCloseTo(137.515, 3);
    expect(residual(both[1]!).accelerationRadPerS2).toBeCloseTo(137.515, 3);
  });

  it('works from a job file: 25 m/s on 2 m and 4:1 is 3000 rev/min', async () => {
    const result = jsonOf(await runBench(jointsCommand, ['shop.job.json', '--json'], files));
    expect(result).toMatchObject({
      angles: { driveshaftRpm: 3000, residual: { accelerationRadPerS2: expect.closeTo(137.515, 2) } },
      whatIf: { alreadyInside: true },
    });
  });

  it('proposes the forks first where they are out of line, and says what it assumed', async () => {
    const { stdout } = await runBench(jointsCommand, [
      ...['--transmission', '3 down', '--shaft', '9 down', '--pinion', '5 down', '--shaft-rpm', '3600'],
      ...['--phasing', '11', '--units', 'metric'],
    ]);
    const after = stdout.slice(stdout.indexOf('What would bring it inside'));
    expect(after.split('\n')[1]).toMatch(/^ {2}Turn the rear fork of piece 1 by 11\.0° clockwise/);
    expect(after).toContain('Not measured, so assumed: length of shaft piece 1 at 1300 mm (51 in)');
  });

  it('offers nothing but the forks where they alone are at fault, by teeth of the spline', async () => {
    const { stdout } = await runBench(jointsCommand, [
      ...['--transmission', '3 down', '--shaft', '7 down', '--pinion', '3 down', '--shaft-rpm', '2800'],
      ...['--phasing', '90', '--spline-teeth', '16'],
    ]);
    const [remedy] = stdout.split('What would bring it inside\n')[1]!.split('\n\n');
    expect(spoken(remedy!).trim()).toBe(
      'Turn the rear fork of piece 1 by 90.0° (4 teeth) counter-clockwise, seen from behind: leaves 0 rad/s².',
    );
    expect(spoken(stdout)).toContain('Forks of shaft piece 1 out of line: 90.00°, OUTSIDE the limit of 3°');
  });

  it('reads a front driveshaft with its pinion first, double-Cardan halves and the bending couple', async () => {
    const result = jsonOf(
      await runBench(jointsCommand, [
        ...['--front-driveshaft', '--pinion', '2', '--shaft', '2', '--transfer-case', '22', '--shaft-rpm', '3000'],
        ...['--joint', 'cross', '--joint', 'double-cardan', '--split-error', '0', '--split-error', '0.2'],
        ...['--torque', '300Nm', '--bearing-span', '400mm', '--json'],
      ]),
    ) as unknown as { angles: { joints: { crossAnglesDeg: number[] }[]; residual: { accelerationRadPerS2: number } } };
    expect(result.angles.joints[1]!.crossAnglesDeg[0]).toBeCloseTo(10.2, 9);
    expect(result.angles.residual.accelerationRadPerS2).toBeCloseTo(242.99, 2);
  });
});

describe('perrev rings', () => {
  const axis = ['--groove', '81.85mm', '--cross', '78.60mm', '--rings', '1.55/1.65mm'];

  it('judges end play and ring difference, and tells unbalance, share and force', async () => {
    const { status, stdout } = await runBench(ringsCommand, [
      ...axis,
      '--mass',
      '9kg',
      '--shaft-rpm',
      '3000',
      '--units',
      'metric',
    ]);
    expect(status).toBe(0);
    expect(spoken(stdout)).toContain('The joint: OUTSIDE the limits');
    expect(spoken(stdout)).toContain('Ring difference, axis 1: 0.100 mm, OUTSIDE the limit of 0.05 mm');
    expect(spoken(stdout)).toContain(
      '150 g·mm, 65 % of the allowance, 14.8 N; at the other end: 75.0 g·mm, 33 % of the allowance, 7.40 N',
    );
  });

  it('tells inches on the same side of the limit as the verdict', async () => {
    const { stdout } = await runBench(ringsCommand, ['--play', '0.05/0.0508mm']);
    expect(spoken(stdout)).toContain('0.0020 in (0.050 mm), inside the limit of 0.002 in (0.05 mm)');
    expect(spoken(stdout)).toContain('0.0020 in (0.051 mm), just OUTSIDE the limit of 0.002 in (0.05 mm)');
  });

  it('takes the joint in the middle by either spelling, and says it one way', async () => {
    for (const place of ['center', 'centre']) {
      const { status, stdout } = await runBench(ringsCommand, [...axis, '--at', place]);
      expect([status, stdout]).toEqual([0, expect.stringContaining('The center joint')]);
    }
    const { status, stderr } = await runBench(ringsCommand, [...axis, '--at', 'middle']);
    expect([status, stderr]).toEqual([2, expect.stringContaining('is not one of front, center, rear')]);
  });

  it('chooses rings out of those at hand, minding how many there are', async () => {
    const choose = async (stock: string) =>
      jsonOf(await runBench(ringsCommand, [...axis, '--available', stock, '--json'])) as unknown as {
        selection: { best: { axes: { ring1Mm: number; ring2Mm: number }[]; offsetMm: number } | null };
      };
    expect((await choose('1.50/1.55/1.60/1.65 mm')).selection.best).toMatchObject({
      axes: [{ ring1Mm: 1.6, ring2Mm: 1.6 }],
    });
    expect((await choose('1.58x1/1.60x1/1.62x1mm')).selection.best!.offsetMm).toBeCloseTo(0.01, 9);
    expect((await choose('1.50mmx2')).selection.best).toBeNull();
  });

  it('never fits rings that leave no end play, and prints no nothing with a minus', async () => {
    const choose = async (groove: string, cross: string, stock: string) =>
      spoken((await runBench(ringsCommand, ['--groove', groove, '--cross', cross, '--available', stock])).stdout);
    const metric = await choose('81.80mm', '78.60mm', '1.55x2/1.60x2 mm');
    expect(metric).toContain('0.0610 in (1.550 mm) at ring 1 and 0.0630 in (1.600 mm) at ring 2; end play 0.0020 in');
    const inches = await choose('3.222in', '3.094in', '0.061x2/0.063x2/0.065x2 in');
    expect(inches).toContain('0.0630 in (1.600 mm) at ring 1 and 0.0630 in (1.600 mm) at ring 2; end play 0.0020 in');
    expect(inches).toContain('(over the limit by no more than a reading error), on center');
    const full = await choose('81.80mm', '78.60mm', '1.60x2 mm');
    expect(full).toContain('No rings at hand leave an end play between 0.0004 in (0.010 mm) and 0.0020 in (0.050 mm)');
    expect(full).toContain('Two rings together must measure, axis 1: 0.1240 in (3.150 mm) to 0.1256 in (3.190 mm).');
    const fitted = ['--groove', '3.222in', '--cross', '3.094in', '--rings', '0.063/0.065in'];
    const none = spoken((await runBench(ringsCommand, fitted)).stdout);
    expect(none).toContain('End play, axis 1: 0.0000 in (0.000 mm), BELOW the least of 0.0004 in (0.01 mm)');
    for (const text of [metric, inches, full, none]) expect(text).not.toMatch(/[-−]0\.0+ /);
  });

  it('takes what the job holds, and the shop’s limit before the default', async () => {
    const rear = jsonOf(await runBench(ringsCommand, ['shop.job.json', '--json'], files));
    expect(rear).toMatchObject({ centring: { near: { unbalanceGmm: expect.closeTo(150, 6) } } });
    const front = await runBench(ringsCommand, ['shop.job.json', '--at', 'front'], files);
    expect(spoken(front.stdout)).toContain('inside the limits');
    expect(spoken(front.stdout)).toContain('[service data]');
    const strict = await runBench(
      ringsCommand,
      ['shop.job.json', '--at', 'front', '--limit', 'end-play=0.06mm'],
      files,
    );
    expect(spoken(strict.stdout)).toContain('OUTSIDE the limits');
    expect(spoken(strict.stdout)).toContain('[maker’s figure]');
  });

  it('tells what the chosen rings leave, and that small play is not felt by hand', async () => {
    const choose = [
      ...['--groove', '81.85mm', '--groove', '81.88mm', '--cross', '78.60mm', '--cross', '78.61mm'],
      ...['--available', '1.50x2/1.55/1.60/1.65 mm', '--mass', '9kg', '--end-mass', '0.8kg', '--shaft-rpm', '3000'],
    ];
    // The pair 1.60 and 1.65 leaves 0.025 mm: a third of 9 kg and 0.8 kg of yoke times that are 95 g·mm, 9.376 N.
    expect(spoken((await runBench(ringsCommand, choose)).stdout)).toContain(
      '95.0 g·mm), 41 % of the allowance, 2.11 lbf (9.38 N)',
    );
    const felt = async (play: string) => spoken((await runBench(ringsCommand, ['--play', play])).stdout);
    expect(await felt('0.03/0.06mm')).toContain('too little to feel by hand: trust the dial');
    expect(await felt('0.3/0.3mm')).not.toContain('too little to feel');
  });

  it('calls parts that do not fit outside, and says how much room is missing', async () => {
    const tight = ['--groove', '81.85mm', '--cross', '78.60mm', '--rings', '1.65/1.65mm'];
    const text = spoken((await runBench(ringsCommand, tight)).stdout);
    expect(text).toContain('The joint: OUTSIDE the limits');
    expect(text).not.toMatch(/End play, axis 1: [^[]*inside the limit/);
    expect(text).toContain('0.050 mm) longer than the room between the grooves');
    expect(text).not.toContain('Both axes together');
  });
});

describe('perrev runout', () => {
  it('judges totals and tells the force of a bow', async () => {
    const { stdout } = await runBench(runoutCommand, [
      '--tube-middle',
      '0.5mm',
      '--mass',
      '9kg',
      '--shaft-rpm',
      '3000',
    ]);
    expect(spoken(stdout)).toContain('Runout: inside the limits');
    expect(spoken(stdout)).toContain('about 32 lbf (141 N) at driveshaft 1×');
  });

  it('foretells the best bolt position from flange and tube read around the clock', async () => {
    const at = (amplitude: number, highDeg: number) =>
      Array.from({ length: 8 }, (_, step) =>
        (amplitude * Math.cos(((45 * step - highDeg) * Math.PI) / 180)).toFixed(6),
      ).join(' ');
    const args = ['--tube-rear', `${at(0.12, 0)} mm`, '--flange-radial', `${at(0.05, 0)} mm`, '--bolts', '4'];
    const result = jsonOf(await runBench(runoutCommand, [...args, '--json'])) as unknown as {
      positions: { steps: number; tirMm: number }[];
    };
    // Flange 0.05 and shaft 0.07 at the same place: half a turn leaves 0.02, so a total of 0.04 mm.
    expect(result.positions[0]).toEqual({ steps: 2, tirMm: expect.closeTo(0.04, 5) });
    const { stdout } = await runBench(runoutCommand, [...args, '--units', 'metric']);
    expect(spoken(stdout)).toContain('Turn the shaft on by 2 of 4 bolt positions');
    const turned = jsonOf(
      await runBench(runoutCommand, [
        ...[
          '--tube-rear',
          `${at(0.12, 0)} mm`,
          '--bolts',
          '4',
          '--turned',
          `${at(0.02, 180)} mm`,
          '--turned-by',
          '2',
          '--json',
        ],
      ]),
    ) as unknown as { positions: { steps: number; tirMm: number }[] };
    expect(turned.positions[0]).toEqual({ steps: 2, tirMm: expect.closeTo(0.04, 5) });
  });

  it('takes what the job holds', async () => {
    const result = jsonOf(await runBench(runoutCommand, ['shop.job.json', '--json'], files));
    expect(result).toMatchObject({ places: [{ place: 'tube-middle', verdict: 'inside' }] });
  });
});

describe('perrev whirl', () => {
  it('takes aluminum by either spelling, and says it one way', async () => {
    const piece = ['--length', '1700mm', '--outer', '101.6mm', '--wall', '3mm', '--material'];
    const [american, british] = await Promise.all(
      ['aluminum', 'aluminium'].map((material) => runBench(whirlCommand, [...piece, material])),
    );
    expect(american!.stdout).toBe(british!.stdout);
    expect(american!.stdout).toContain('5750 rpm');
    expect((await runBench(whirlCommand, [...piece, 'wood'])).stderr).toContain('not one of steel, aluminum');
  });

  it('tells critical, half-critical and safe speed, and the margin', async () => {
    const { stdout } = await runBench(whirlCommand, [
      ...['--length', '60in', '--outer', '3.5in', '--wall', '0.083in', '--shaft-rpm', '3100', '--top-rpm', '5000'],
    ]);
    expect(spoken(stdout)).toContain('6400 rpm');
    expect(spoken(stdout)).toContain('106.6 Hz');
    expect(spoken(stdout)).toContain('at top speed: 78 %, OUTSIDE the limit of 75 %');
    expect(spoken(stdout)).toContain('near half the critical speed');
    expect(spoken(stdout)).toContain('Do not run this piece above 4800 rpm');
  });

  it('says on which side of the limit a figure lies where rounding hides it, and forbids nothing inside', async () => {
    const at = (rpm: string) =>
      runBench(whirlCommand, ['--length', '1524mm', '--outer', '88.9mm', '--wall', '2.1082mm', '--top-rpm', rpm]);
    // Three quarters of 6396.07 rev/min are 4797.1.
    expect(spoken((await at('4800')).stdout)).toContain('75 %, just OUTSIDE the limit of 75 %');
    expect(spoken((await at('4790')).stdout)).toContain('75 %, inside the limit of 75 %');
    expect(spoken((await at('4790')).stdout)).not.toContain('Do not run');
  });

  // Order of the remedies: common practice, no source.
  it('names what helps where the margin is too small, in order, and says plainly where it is enough', async () => {
    const at = async (rpm: string) =>
      spoken(
        (
          await runBench(whirlCommand, [
            ...['--length', '1524mm', '--outer', '88.9mm', '--wall', '2.1082mm', '--top-rpm', rpm],
          ])
        ).stdout,
      );
    expect(await at('5000')).toMatch(
      /in this order: a lower top speed.*two shorter pieces with a center bearing.*larger tube/u,
    );
    expect(await at('5000')).not.toContain('margin is enough');
    expect(await at('4500')).toContain('The margin is enough up to top speed');
    expect(await at('4500')).not.toContain('What helps');
  });

  it('works from a job, and from a top speed', async () => {
    const result = jsonOf(await runBench(whirlCommand, ['shop.job.json', '--top-speed', '40m/s', '--json'], files));
    expect(result).toMatchObject({
      input: { complaintRpm: 3000, topRpm: expect.closeTo(4800, 6) },
      pieces: [{ criticalRpm: expect.closeTo(6396.07, 2) }],
    });
  });
});

describe('perrev balance', () => {
  const runs = ['--found', '0.40', '--trial', '500g·mm', '--at', '0=0.57', '--at', '120=0.64', '--at', '240=0.13'];

  it('solves runs without phase and splits the correction', async () => {
    const result = jsonOf(await runBench(balanceCommand, [...runs, '--clamp', '600g·mm', '--json']));
    expect(result).toMatchObject({
      amplitudes: { correction: { size: expect.closeTo(664.945, 3), angleDeg: expect.closeTo(251.8251, 4) } },
      unit: 'g·mm',
      placings: [{ way: 'clamps', left: 0 }],
    });
    const { stdout } = await runBench(balanceCommand, [
      ...runs,
      '--units',
      'metric',
      '--mass',
      '9kg',
      '--shaft-rpm',
      '3000',
    ]);
    expect(spoken(stdout)).toContain('Add 665 g·mm at 252°. The trial weight comes off first');
    const phase = ['--found', '0.42@65', '--run', '1:600g·mm@30=0.31@122'];
    const off = spoken((await runBench(balanceCommand, phase)).stdout);
    expect(off).toContain('Every trial weight comes off first. Angles count as those of the trial weights did.');
    const on = spoken((await runBench(balanceCommand, [...phase, '--left-on'])).stdout);
    expect(on).toContain('The trial weight that was left on stays on');
    expect(spoken(stdout)).toContain('458 g·mm in all, 229 g·mm in each of two planes');
    expect(spoken(stdout)).toContain('A trial weight’s force grows with the square of speed');
  });

  it('solves runs with phase, two planes, with their uncertainty', async () => {
    const two = jsonOf(
      await runBench(balanceCommand, [
        ...['--found', '170@112', '--found', '53@78', '--run', '1:1.15g@0=235@94/58@68'],
        ...['--run', '2:1.15g@0=185@115/77@104', '--json'],
      ]),
    );
    expect(two).toMatchObject({
      unit: 'g',
      phasors: { corrections: [{ size: expect.closeTo(1.97947, 5) }, { angleDeg: expect.closeTo(121.8439, 4) }] },
    });
    const { stdout } = await runBench(balanceCommand, [
      ...['--found', '0.42±0.01@65±2', '--run', '1:600g·mm@30=0.31±0.01@122±2', '--units', 'metric'],
    ]);
    expect(spoken(stdout)).toContain('Plane 1: add 697 g·mm at 76° (give or take');
  });

  it('keeps the unit of the trial weight, ounces as grams', async () => {
    const ounces = jsonOf(
      await runBench(balanceCommand, ['--found', '0.4', '--trial', '1oz', ...runs.slice(4), '--json']),
    );
    expect(ounces).toMatchObject({ unit: 'g', input: { trialWeight: expect.closeTo(28.3495, 4) } });
  });

  it('takes what the job holds', async () => {
    const result = jsonOf(await runBench(balanceCommand, ['shop.job.json', '--json'], files));
    expect(result).toMatchObject({ amplitudes: { correction: { size: expect.closeTo(666.6667, 3) } } });
  });

  it('takes the amplitudes out of recordings of the trial runs, with their uncertainty', async () => {
    // 40 s at 200 Hz: driveshaft 1× at 50 Hz on z, a weak tire 1× at 12.5 Hz, noise; 25 m/s, 2 m, 4:1.
    let seed = 4711;
    const uniform = () => (seed = (seed * 48271) % 2147483647) / 2147483647;
    const recording = (amplitude: number): string => {
      const rows = ['time (s),x (m/s²),y (m/s²),z (m/s²)'];
      for (let row = 0; row < 8000; row++) {
        const at = row / 200;
        const noise = () => 0.05 * (uniform() + uniform() + uniform() + uniform() - 2);
        const shaft = amplitude * Math.sin(2 * Math.PI * 50 * at + 1);
        const tire = 0.03 * Math.sin(2 * Math.PI * 12.5 * at);
        rows.push(
          [at.toFixed(3), noise().toFixed(5), noise().toFixed(5), (9.81 + shaft + tire + noise()).toFixed(5)].join(','),
        );
      }
      return rows.join('\n');
    };
    const recordings = Object.fromEntries(
      [0.4, 0.5658349663, 0.6431792957, 0.1270873103].map((amplitude, run) => [
        `run-${run}.csv`,
        recording(0.25 * amplitude),
      ]),
    );
    const result = jsonOf(
      await runBench(
        balanceCommand,
        [
          ...[
            '--found',
            'run-0.csv',
            '--trial',
            '500g·mm',
            '--at',
            '0=run-1.csv',
            '--at',
            '120=run-2.csv',
            '--at',
            '240=run-3.csv',
          ],
          ...['--rolling-circumference', '2m', '--axle', '4', '--speed', '25m/s', '--speed-source', 'gps', '--json'],
        ],
        recordings,
      ),
    ) as unknown as {
      amplitudes: { correction: { size: number; sizeSd: number; angleDeg: number; angleSdDeg: number } };
    };
    const { size, sizeSd, angleDeg, angleSdDeg } = result.amplitudes.correction;
    expect(sizeSd).toBeGreaterThan(0);
    expect(sizeSd / size).toBeLessThan(0.15);
    expect(Math.abs(size - 666.6667)).toBeLessThan(4 * sizeSd);
    expect(Math.abs(angleDeg - 253)).toBeLessThan(4 * angleSdDeg);
  });
});

describe('bench commands', () => {
  const all: readonly Command[] = [jointsCommand, ringsCommand, runoutCommand, balanceCommand, whirlCommand];

  it.each(all)('$name has a summary and a help with two examples', ({ summary, usage, name }) => {
    expect(summary).not.toBe('');
    expect(usage.match(/^ {2}perrev /gm)!.length).toBeGreaterThanOrEqual(2);
    expect(usage).toContain(`perrev ${name}`);
    expect(usage).toContain('--json');
  });

  it.each([
    [jointsCommand, [], /give the slopes front to rear/],
    [jointsCommand, ['shop.csv'], /is not a job file/],
    [jointsCommand, ['--shaft', 'steep'], /write it like "6\.2 down"/],
    [
      jointsCommand,
      ['--transmission', '95 down', '--shaft', '3', '--pinion', '3'],
      /--transmission: An inclinometer reading of 95°/,
    ],
    [jointsCommand, ['--transmission', '3', '--shaft', '3', '--joint', 'rigid'], /is not one of cross/],
    [ringsCommand, [], /give rings as in/],
    [ringsCommand, ['--groove', '81.85'], /has no unit/],
    [ringsCommand, ['--groove', '81mm', '--cross', '78mm', '--rings', '1.5mm'], /--rings needs two thicknesses/],
    [ringsCommand, ['--groove', '81mm', '--rings', '1.5/1.5mm'], /once for each axis/],
    [jointsCommand, ['--transmission', '3'], /the shaft and the pinion \(--shaft and --pinion\) were not read/],
    [ringsCommand, ['--available', '1.5mm'], /give rings as in|needs --groove/],
    [ringsCommand, ['--play', '0.1mm', '--limit', 'play=3'], /no limit is called "play"/],
    [ringsCommand, ['--play', '0.1mm', '--limit', 'end-play=none'], /--limit/],
    [runoutCommand, [], /give a reading as in/],
    [runoutCommand, ['--tube-middle', '1mm', '--bolts', '1'], /--bolts must be a whole number/],
    [
      runoutCommand,
      ['--tube-middle', '1mm', '--bolts', '4', '--turned', '0 1 2 mm'],
      /--turned and --turned-by go together/,
    ],
    [runoutCommand, ['--tube-middle', 'round'], /is not a number/],
    [balanceCommand, [], /give runs as in/],
    [balanceCommand, ['--found', '0.4'], /without phase, --found and --trial/],
    [balanceCommand, ['--found', '0.4', '--trial', '5', '--at', '0=1'], /has no unit/],
    [
      balanceCommand,
      ['--found', '0.4', '--trial', '5g', '--at', '0=1', '--at', '1=x.csv', '--at', '2=1'],
      /all as recordings/,
    ],
    [balanceCommand, ['--found', '0.4', '--run', '1:5g@0=1@2'], /has no phase/],
    [balanceCommand, ['--found', '0.4@3', '--run', 'heavy'], /write plane:weight@angle/],
    [whirlCommand, [], /give each piece as in/],
    [
      whirlCommand,
      ['--length', '1m', '--length', '1m', '--outer', '70mm', '--outer', '70mm', '--outer', '70mm'],
      /--outer was given 3 times/,
    ],
    [
      whirlCommand,
      ['--length', '1m', '--outer', '70mm', '--wall', '2mm', '--top-speed', '100mph'],
      /--top-speed needs --tire/,
    ],
  ] as const)('%# is wrong usage, told in a sentence', async (command, args, sentence) => {
    const outcome = await runBench(command, args);
    expect(outcome.stderr).toMatch(sentence);
    expect(outcome.status).toBe(2);
    expect(outcome.stdout).toBe('');
  });

  it.each([
    [jointsCommand, ['none.job.json'], /there is no such file/],
    [ringsCommand, ['--groove', '31mm', '--cross', '78mm', '--rings', '1.5/1.5mm'], /do not belong together/],
    [runoutCommand, ['--tube-middle', '0.1 0.2 mm'], /2 dial readings/],
    [balanceCommand, ['--found', '0.4', '--trial', '5g', '--at', '0=1', '--at', '90=1'], /mirror image/],
    [
      balanceCommand,
      ['--found', 'x.csv', '--trial', '5g', '--at', '0=a.csv', '--at', '90=b.csv', '--at', '180=c.csv'],
      /x\.csv could not be opened/,
    ],
    [whirlCommand, ['--length', '1m', '--outer', '70mm'], /make a tube/],
  ] as const)('%# cannot be worked out: exit 1, with a way out', async (command, args, sentence) => {
    const outcome = await runBench(command, args);
    expect(outcome.stderr).toMatch(sentence);
    expect(outcome.stderr.trim().split('\n').length).toBeGreaterThanOrEqual(2);
    expect(outcome.status).toBe(1);
    expect(outcome.stdout).toBe('');
  });
});
