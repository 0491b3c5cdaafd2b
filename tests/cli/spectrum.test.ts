import { describe, expect, it } from 'vitest';
import { expectPlainWords, perrev } from './run-cli.ts';
import { shortCsv } from './short-recording.ts';

const G = 9.80665;
const RATE_HZ = 200;

interface Printed {
  readonly stepHz: number;
  readonly segmentLength: number;
  readonly axes: readonly {
    readonly axis: string;
    readonly amplitudeMps2: number[];
    readonly densityM2s4PerHz: number[];
  }[];
}

describe('perrev spectrum', () => {
  it('reads a tone off the amplitude and noise off the density, with a segment of any length', () => {
    const args = ['spectrum', '-', '--segment', '1000', '--window', 'flat-top', '--json'];
    const outcome = perrev(args, shortCsv(60));
    expectPlainWords(outcome);
    const { stepHz, segmentLength, axes } = JSON.parse(outcome.stdout) as Printed;
    expect(segmentLength).toBe(1000);
    expect(stepHz).toBeCloseTo(0.2, 9);
    const [x, , z] = axes;
    // 0.1 g at 20 Hz; the top of a flat-top window is flat to 0.1 % (Heinzel, Rüdiger & Schilling 2002).
    expect(z!.amplitudeMps2[100]! / (0.1 * G)).toBeCloseTo(1, 2);
    // White noise of standard deviation σ has the one-sided density 2σ²/fs.
    const beside = x!.densityM2s4PerHz.slice(200, 450);
    const mean = beside.reduce((sum, v) => sum + v, 0) / beside.length;
    expect(mean / ((2 * (0.01 * G) ** 2) / RATE_HZ)).toBeCloseTo(1, 1);
  });

  it('prints the same numbers as CSV, one axis or all', () => {
    const recording = shortCsv(10);
    const all = perrev(['spectrum', '-', '--segment', '256'], recording).stdout.trim().split('\n');
    const one = perrev(['spectrum', '-', '--segment', '256', '--axis', 'z'], recording).stdout.trim().split('\n');
    expect(all[0]!.split(',')).toContain('amplitude_all_mps2');
    expect(one[0]).toBe('frequency_hz,amplitude_z_mps2,density_z_m2s4_per_hz');
    const column = all[0]!.split(',').indexOf('amplitude_z_mps2');
    expect(one.slice(1).map((line) => line.split(',')[1])).toEqual(all.slice(1).map((line) => line.split(',')[column]));
  });

  it.each([
    [['--segment', '8'], /--segment 8 is not a whole number of samples from 16 on/],
    [['--segment', '256.5'], /--segment 256.5 is not a whole number of samples/],
    [['--overlap', '1.2'], /--overlap is a share from 0 to 0.95/],
    [['--window', 'square'], /--window "square"/],
    [['--axis', 'w'], /--axis "w"/],
  ])('%j is wrong usage, said before the file is opened', (words, sentence) => {
    const outcome = perrev(['spectrum', 'no-such-file.csv', ...words]);
    expect(outcome.stderr).toMatch(sentence);
    expect(outcome.status).toBe(2);
  });

  it('says where a segment is longer than what was recorded', () => {
    const outcome = perrev(['spectrum', '-', '--segment', '4096'], shortCsv(10));
    expect(outcome.stderr).toMatch(/--segment 4096 is longer than the recording's 2000 samples/);
    expect(outcome.status).toBe(2);
  });
});
