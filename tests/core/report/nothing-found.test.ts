import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/core/analyse.ts';
import { plainRecording } from '../../accuracy/plain-recording.ts';
import { normals } from '../signal/made.ts';
import { madeJob } from '../../support/made-job.ts';
import { must } from '../../support/must.ts';

/** 3.05 times the outer diameter of P235/75R15, 733.5 mm, at 60 mph. */
const WHEEL_HZ = 26.8224 / (3.05 * 0.7335);

const JOB = madeJob(
  {
    tire: { kind: 'size', size: 'P235/75R15' },
    layout: 'rear-drive',
    axleRatio: 3.55,
    cylinders: 8,
  },
  { speedMps: 26.8224, speedSource: 'gps', gearRatio: 0.75, load: 'cruise' },
);

/** The answer to noise of a density, and tire 1× as every sound vehicle has it. */
const answerAt = (rateHz: number, densityMps2: number, durationS = 40) => {
  const normal = normals(11);
  const sd = densityMps2 * Math.sqrt(rateHz / 2);
  const samples = Float64Array.from(
    { length: durationS * rateHz },
    (_, i) => 0.008 * Math.cos((2 * Math.PI * WHEEL_HZ * i) / rateHz) + sd * normal(),
  );
  return must(analyse(JOB, [plainRecording([samples], rateHz)])).report;
};

describe('a recording in which nothing stands out', () => {
  it('shows that nothing is felt, where it could have shown all that is', () => {
    const { verdict, sentence } = answerAt(400, 0.002);
    expect(verdict).toBe('nothing-felt');
    expect(sentence).toContain('The strongest is tire 1× at 12.0 Hz');
  });

  it('cannot clear what turns faster than half its rate', () => {
    const { verdict, sentence, why } = answerAt(100, 0.002);
    expect(verdict).toBe('cannot-tell');
    // Above 50 Hz (sampling theorem): driveshaft 2× at 2·3.55·11.99 = 85.1 Hz, engine 2× at 2·3.55·0.75·11.99 = 63.8 Hz.
    expect(sentence).toBe(
      'Cannot tell: nothing that this recording can show stands out, but driveshaft 2× and engine 2× turn too fast for ' +
        'a recording at 100 Hz.',
    );
    const expectedHz = Number(/^Driveshaft 2× is expected at ([\d.]+) Hz/u.exec(why)?.[1]);
    expect(Math.abs(expectedHz / 85.1 - 1)).toBeLessThan(0.005);
    // Two and a half times 85.1 Hz is 213 Hz, rounded up to fifties.
    expect(why).toContain('Record at 250 Hz or more.');
  });

  /**
   * The change of a whole shake that people just notice is a tenth (M. Morioka and M. J. Griffin, 2000): a tone of power
   * s² beside noise of power 1 makes √(1 + s²) of it. White noise of 0.02 m/s² over √Hz has 0.02·√8.5 in the octave about
   * 12 Hz, weighted alike; the weakest line seen there in 40 s is under 0.46 of that, though above 0.015 m/s² weighted.
   */
  it('clears what its road covers by the rule by which a line that is seen is judged, and says so', () => {
    const { verdict, sentence, why } = answerAt(400, 0.02);
    expect(verdict).toBe('nothing-felt');
    expect(sentence).toContain('No order here that a person would feel');
    expect(why).toMatch(
      /Tire 1×.* could be there up to felt level [12]\.\d.*only a smoother one would let it be felt\.$/u,
    );
    expect(why).not.toMatch(/\d s at the same steady speed/u);
  });

  it('nor what turns so near to half its rate that no line is looked for there', () => {
    // Half of 172 Hz is 86 Hz, of which driveshaft 2× at 85.1 Hz is 99 %: within 2 % lines are not looked for.
    const { verdict, sentence, orders } = answerAt(172, 0.002);
    expect(verdict).toBe('cannot-tell');
    expect(sentence).toContain('driveshaft 2× turns too fast for a recording at 172 Hz.');
    const order = orders.find(({ label }) => label === 'driveshaft 2×');
    expect(order).toMatchObject({ visibility: 'not-seen', amplitudeMps2: null, feltLevel: null });
  });

  it('names what hides in its noise, and what it is too slow for, each with its remedy', () => {
    const { verdict, sentence, why } = answerAt(100, 0.1, 6);
    expect(verdict).toBe('cannot-tell');
    expect(sentence).toMatch(
      /^Cannot tell: nothing stands out, but tire 1×.* could be felt and still hide in the noise of this road, and driveshaft 2× and engine 2× turn too fast for a recording at 100 Hz\.$/u,
    );
    expect(why).toMatch(
      /^At tire 1× the noise hides lines up to felt level \d.*smoother road.*Record at 250 Hz or more\.$/u,
    );
  });
});
