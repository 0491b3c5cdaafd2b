/**
 * Property tests draw the same cases in every run, so that a change of the code alone makes a verdict change.
 * `PROPERTY_SEED=7 npm run test:unit` draws others.
 */
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env.PROPERTY_SEED ?? 1) });
