import { describe, expect, it } from 'vitest';
import { jointsCommand } from '../../../src/cli/bench/joints.ts';
import { jsonOf, runBench, spoken } from './bench-io.ts';

const joints = (transmission: string, shaft: string, pinion: string | null, ...more: readonly string[]) =>
  runBench(jointsCommand, [
    ...['--transmission', transmission, '--shaft', shaft, '--shaft-rpm', '3000'],
    ...(pinion === null ? [] : ['--pinion', pinion]),
    ...more,
  ]);
const textOf = async (...args: Parameters<typeof joints>) => spoken((await joints(...args)).stdout);

// Shops say the slope of a pinion by its nose, which points at the shaft: common practice, no source. A transmission and
// a pinion that slope alike are parallel: both joints then have one angle, by geometry.
describe('the slope of the pinion', () => {
  it('can be said by its nose or by an end, and is echoed both ways', async () => {
    for (const pinion of ['3 nose up', 'nose up 3°', '3 front up', '3 rear down', '87 rear down']) {
      const text = await textOf('3 down', '7 down', pinion);
      expect(text).toContain('pinion: nose 3.0° up (rear end down)');
      expect(text).toContain('joint at the pinion cross 4.00°');
      expect(text).not.toContain('It was not said');
    }
    expect(await textOf('3 down', '7 down', '3 nose down')).toContain('pinion: nose 3.0° down (rear end up)');
  });

  it('is told to have been taken from an upright face where it is too steep for a shaft', async () => {
    const said = '--pinion "87 rear down" is over 45°: taken as read on an upright face, such as a flange.';
    expect(await textOf('3 down', '7 down', '87 rear down')).toContain(said);
    expect(await textOf('3 down', '7 down', '3 rear down')).not.toContain('upright face');
  });

  it('asks before any advice where the other way round would make the joints cancel', async () => {
    const text = await textOf('3 down', '7 down', '3 up');
    expect(text).toMatch(/^First Check which end of the pinion is up\. It was read as nose 3\.0° down/);
    expect(text).toContain('joint angles of 4.0° and 10.0°');
    expect(text).toContain('they are 4.0° and 4.0° and cancel');
    expect(text).not.toContain('Turn the axle');
    expect(text).not.toContain('What would bring it inside');
    const json = jsonOf(await joints('3 down', '7 down', '3 up', '--json'));
    expect(Object.keys(json)).toEqual(['input', 'angles', 'pinionOtherWay']);
    // Said outright it is believed.
    expect(await textOf('3 down', '7 down', '3 nose down')).toContain('Turn the axle by 5.0°, pinion nose up');
  });

  it('without a word means the rear end, and says so', async () => {
    const text = await textOf('3 down', '7 down', '3');
    expect(text).toContain('nose 3.0° up (rear end down) It was not said which end of the pinion that is');
  });

  it('refuses a minus beside a word, a nose of what has none, and an end without up or down', async () => {
    for (const [pinion, why] of [
      ['-2 down', 'give the minus sign or the word "down", not both'],
      ['3 front', 'write it like "3 nose up"'],
      ['nose 3 rear up', 'write it like "3 nose up"'],
      ['87', 'Say which end is lower'],
    ] as const) {
      const { status, stderr } = await joints('3 down', '7 down', pinion);
      expect([status, stderr]).toEqual([2, expect.stringContaining(why)]);
    }
    const { stderr } = await joints('3 nose up', '7 down', '3 nose up');
    expect(stderr).toContain('only a pinion has a nose');
  });

  it('on a front axle is by its rear end, where the nose is; drive torque lowers it there', async () => {
    const { stdout } = await runBench(jointsCommand, [
      ...['--front-driveshaft', '--pinion', '2 nose up', '--shaft', '6 rear up', '--transfer-case', '0'],
      ...['--shaft-rpm', '3000'],
    ]);
    const text = spoken(stdout);
    expect(text).toContain('pinion: nose 2.0° up (front end down)');
    expect(text).toContain('joint at the pinion cross 4.00° joint at the transfer case cross 6.00°');
    expect(text).toContain('pinion nose down 0.5° by drive torque');
    expect(text).toContain('the transfer case mount by');
    expect(text).not.toContain('transmission mount');
  });
});

describe('a driveline read in part', () => {
  it('is not judged as one with a single joint', async () => {
    const { status, stderr, stdout } = await joints('3 down', '7 down', null);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toContain('the pinion (--pinion) was not read');
  });

  it('is one with a single joint where that is said', async () => {
    const text = await textOf('3 down', '7 down', null, '--one-joint');
    expect(text).toContain('joint at the transmission cross 4.00°');
    expect(text).toContain('The pinion was not read, so this is one joint with nothing to cancel it');
  });
});

describe('joints whose angles are too large', () => {
  it('are told from joints that do not cancel', async () => {
    const text = await textOf('3 down', '10.5 down', '3 nose up');
    expect(text).toContain('OUTSIDE the limits');
    expect(text).toContain('The joints cancel, but their angles are too large (inertia acceleration on drive');
    expect(text).not.toContain('Nothing: residual');
  });

  it('of flexible discs are outside: common practice, no source', async () => {
    const discs = ['--joint', 'flexible-disc', '--joint', 'flexible-disc'];
    const bent = await textOf('3 down', '9 down', '3 nose up', ...discs);
    expect(bent).toContain('OUTSIDE the limits');
    expect(bent).toContain('6.00°, OUTSIDE the limit of 2° [common practice, no source');
    expect(bent).toContain('A flexible disc flexed this far tears');
    expect(await textOf('3 down', '4 down', '3 nose up', ...discs)).toContain('of the driveshaft: inside the limits');
  });

  it('of constant-velocity joints are not judged, so nothing is called inside', async () => {
    const ball = ['--joint', 'constant-velocity', '--joint', 'constant-velocity'];
    const text = await textOf('3 down', '23 down', '3 nose up', ...ball);
    expect(text).toContain('of the driveshaft: not judged');
    expect(text).toContain('The angle of a constant-velocity joint is not judged');
    expect(text).not.toContain('What would bring it inside');
  });
});

it('shows steps only where something is to be changed, in what a shop can fit', async () => {
  expect(await textOf('3 down', '7 down', '3 nose up')).not.toContain('What a step does');
  const text = await textOf('3 down', '9 down', '3 nose down');
  expect(text).toContain('turn the axle by 0.5°, pinion nose up');
  expect(text).toContain('raise the transmission mount by 0.12 in (3.0 mm)');
});
