import { describe, expect, it } from 'vitest';
import { ringsCommand } from '../../../src/cli/bench/rings.ts';
import { runoutCommand } from '../../../src/cli/bench/runout.ts';
import { jsonOf, runBench, spoken } from './bench-io.ts';

describe('rings at hand that do not center the joint', () => {
  const choose = (stock: string, ...more: readonly string[]) =>
    runBench(ringsCommand, ['--groove', '81.85mm', '--cross', '78.60mm', '--available', stock, ...more]);

  it('are not recommended: the rings that would are named instead', async () => {
    // The room is 3.25 mm and the play 0.01 to 0.05: two equal rings of 1.60 to 1.62.
    const text = spoken((await choose('1.45/1.50/1.55/1.70 mm', '--units', 'metric')).stdout);
    expect(text).toContain('None of these rings center the joint: OUTSIDE the limits.');
    expect(text).toContain('Needed: axis 1: two equal rings of 1.600 mm to 1.620 mm.');
    expect(text).toContain('The nearest at hand, not to be fitted: Axis 1: 1.500 mm at ring 1 and 1.700 mm at ring 2');
    expect(jsonOf(await choose('1.45/1.50/1.55/1.70 mm', '--json'))).toMatchObject({ selection: { centers: false } });
  });

  it('make up for grooves that sit off the axis, ring by ring', async () => {
    const text = spoken((await choose('1.45/1.50 mm x2', '--groove-offset', '0.04mm', '--units', 'metric')).stdout);
    expect(text).not.toContain('None of these rings center');
    const { selection } = jsonOf(await choose('1.60x2 mm', '--groove-offset', '0.04mm', '--json')) as unknown as {
      selection: { neededMm: { ring1Mm: number[]; ring2Mm: number[] }[]; centers: boolean };
    };
    // Off center by (ring 2 − ring 1)/2 + 0.04: on center with ring 1 thicker by 0.08.
    expect(selection.neededMm[0]!.ring1Mm[0]! - selection.neededMm[0]!.ring2Mm[0]!).toBeCloseTo(0.08, 9);
    expect(selection.centers).toBe(false);
  });
});

describe('readings around the clock', () => {
  const at = async (readings: string) =>
    spoken((await runBench(runoutCommand, ['--tube-middle', readings, '--mass', '9kg', '--shaft-rpm', '3000'])).stdout);

  it('with one place that stands out are a dent, not bow', async () => {
    const text = await at('0/0/0/-.6/0/0/0/0 mm');
    expect(text).toContain('Runout: not told by these readings');
    expect(text).toContain('One place stands out, at 135°, 0.60 mm (0.024 in) below where the others put it: a dent');
    expect(text).not.toMatch(/as bow|Most of the movement/);
    // The same beside true runout of 0.2 mm.
    expect(await at('.1/.07/0/-.67/-.1/-.07/0/.07 mm')).toContain('One place stands out, at 135°');
  });

  it('that go twice round are ovality, which does not shake once a turn', async () => {
    const text = await at('0/.3/.6/.3/0/.3/.6/.3 mm');
    expect(text).toContain('Runout: inside the limits');
    expect(text).toContain('Most of the movement is ovality (0.60 mm (0.024 in) twice round)');
    expect(text).not.toContain('°');
  });

  it('that scatter as much as they run out say nothing', async () => {
    const text = await at('0/.5/-.4/.6/-.3/.5/-.5/.4 mm');
    expect(text).toContain('The readings scatter as much as they run out');
    expect(text).not.toContain('as bow');
  });

  it('of plain runout are held to the limit by what goes once round', async () => {
    const wave = (mm: number) =>
      `${Array.from({ length: 8 }, (_, step) => ((mm / 2) * Math.cos((step * Math.PI) / 4)).toFixed(3)).join('/')} mm`;
    expect(await at(wave(0.4))).toContain('Runout: inside the limits');
    expect(await at(wave(0.7))).toContain('Runout: OUTSIDE the limits');
    expect(await at(wave(0.7))).toContain('as bow');
  });
});

describe('tire and rim around the clock', () => {
  const wave = (mm: number, at: number) =>
    `${Array.from({ length: 8 }, (_, place) => (mm * Math.cos(((45 * place - at) * Math.PI) / 180)).toFixed(4)).join('/')} mm`;
  const both = ['--tire-radial', wave(0.8, 90), '--wheel-radial', wave(0.3, 90)];

  // Hand case: 0.5 mm of the tire and 0.3 mm of the rim together; half a turn leaves 0.2 mm, 0.4 mm total reading.
  it('tell how far to turn the tire on its rim, with the cautions of breaking the bead', async () => {
    const text = spoken((await runBench(runoutCommand, [...both, '--units', 'metric'])).stdout);
    expect(text).toContain('Tire turned on its rim');
    expect(text).toContain('turn it on the rim by 180°');
    expect(text).toContain('0.40 mm should be left instead of 1.60 mm');
    expect(text).toContain('Let all the air out');
    expect(jsonOf(await runBench(runoutCommand, [...both, '--json']))).toMatchObject({
      matchMounting: { apartDeg: expect.closeTo(180, 1), left: { measured: expect.closeTo(0.4, 3) }, pays: true },
    });
  });

  it('of the tire alone leave it out', async () => {
    const alone = await runBench(runoutCommand, [...both.slice(0, 2)]);
    expect(spoken(alone.stdout)).not.toMatch(/turned on its rim|Let all the air out/u);
  });
});
