/** The tones of a run that may be heard in the others again. */
import type { RunInference } from './infer-run.ts';
import type { SteadyTone } from './steady-tones.ts';

/** Less likely than this to be fixed, a tone is not passed on. */
const LEAST = 0.02;

export const steadyTones = ({ matches }: RunInference): readonly SteadyTone[] =>
  matches
    .filter(({ others }) => others.fixed > LEAST)
    .map(({ tone, others }) => ({
      frequencyHz: tone.peak.frequencyHz,
      amplitudeMps2: tone.peak.amplitudeMps2,
      probability: others.fixed,
    }));
