import { describe, expect, it } from 'vitest';
import { expectPlainWords, perrev } from './run-cli.ts';

describe('how the command line treats its words', () => {
  it('leads with examples and lists its commands', () => {
    const outcome = perrev(['--help']);
    expect(outcome.status).toBe(0);
    expect(outcome.stdout).toContain('perrev diagnose recording.csv');
    for (const command of ['diagnose', 'batch', 'orders', 'spectrum', 'serve'])
      expect(outcome.stdout).toContain(`  ${command}`);
  });

  it('says of lines on one frequency what can part them: of one group no gear can', () => {
    const vehicle = ['--tire', '265/70R17', '--axle', '3.73', '--cylinders', '8', '--speed', '62mph'];
    const both = perrev([
      'orders',
      ...vehicle,
      '--layout',
      'four-wheel-drive',
      '--front-axle',
      '3.73',
      '--gear',
      '0.7',
    ]);
    expect(both.stdout.replaceAll(/\s+/g, ' ')).toContain(
      'driveshaft 1× and front driveshaft 1× fall on one frequency: no gear or speed parts them',
    );
    const direct = perrev(['orders', ...vehicle, '--gear', '1']).stdout.replaceAll(/\s+/g, ' ');
    expect(direct).toContain('driveshaft 1× and engine 1× fall on one frequency: another gear parts them.');
  });

  it('prints its version', () => {
    expect(perrev(['--version']).stdout).toMatch(/^perrev \d+\.\d+\.\d+\n$/);
  });

  it('gives every command a help text with two examples and every option', () => {
    for (const command of [
      'diagnose',
      'batch',
      'orders',
      'spectrum',
      'serve',
      'joints',
      'rings',
      'runout',
      'balance',
      'whirl',
    ]) {
      const outcome = perrev([command, '--help']);
      expect(outcome.status, command).toBe(0);
      expect(outcome.stdout.match(/^ {2}perrev /gm)?.length, command).toBeGreaterThanOrEqual(2);
      expectPlainWords(outcome);
    }
  });

  it.each([
    [['fly'], /no command "fly"/],
    [['diagnose'], /name a job file or at least one recording/],
    [['diagnose', 'x.csv', '--axel', '3.73'], /no option --axel\. Did you mean --axle\?/],
    [['diagnose', 'x.csv', '--work', 'wheel-balanced'], /Did you mean wheels-balanced\?/],
    [['diagnose', 'x.csv', '--load', 'cruising'], /Did you mean cruise\?/],
    [['rings', '--groove', '81.85mm', '--cross', '78.6mm', '--rings', '1.55/1.65in'], /"1.55in" is outside .* ring/],
    [['rings', '--play', '-0.03/0.06mm'], /"-0.03mm" is outside .* play/],
    [['rings', '--play', '0.03mm', '--mass', '9kg', '--shaft-rpm', '120000'], /120000 rpm" is outside/],
    [['runout', '--tube-middle', '5in'], /"5in" is outside/],
    [['whirl', '--length', '1524in', '--outer', '3.5in', '--wall', '0.083in'], /"1524in" is outside/],
    [['balance', '--found', '0.4', '--trial', '500kg', '--at', '0=0.6'], /"500kg" is outside/],
    [['balance', '--found', '-0.4', '--trial', '25g', '--at', '0=0.6'], /"-0.4" is outside .* reading/],
    [['diagnose', 'x.csv', '--axle'], /--axle needs a value/],
    [['diagnose', 'x.csv', '--axle', 'abc'], /--axle: "abc" is not a/],
    [['diagnose', 'x.csv', '--axle=-3'], /--axle/],
    [['diagnose', 'x.csv', '--layout', 'boat'], /--layout "boat" is not one of rear-drive/],
    [['diagnose', 'x.csv', '--cylinders', '7.5'], /--cylinders must be a whole number/],
    [['diagnose', 'x.csv', '--accessory', 'fan'], /--accessory "fan": give a name and a ratio/],
    [['diagnose', 'x.csv', '--speed', '62mph', '--speed', '50mph'], /--speed was given 2 times for 1 recordings/],
    [['diagnose', 'a.job.json', 'b.csv'], /a job file stands alone/],
    [['spectrum'], /name one recording/],
    [['serve', '--port', '99999'], /is not a port/],
  ])('%j is wrong usage: exit 2, one line of what was wrong', (args, sentence) => {
    const outcome = perrev(args);
    expect(outcome.stderr).toMatch(sentence);
    expect(outcome.status).toBe(2);
    expect(outcome.stdout).toBe('');
    expectPlainWords(outcome);
  });

  it('exits with 1 and names the file where a recording cannot be opened', () => {
    const outcome = perrev(['diagnose', 'no-such-file.csv', '--speed', '62mph']);
    expect(outcome.status).toBe(1);
    expect(outcome.stderr).toContain('no-such-file.csv could not be opened: there is no such file.');
    expect(outcome.stdout).toBe('');
  });
});
