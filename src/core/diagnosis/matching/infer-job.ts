/**
 * All runs of a job as one body of evidence. The runs share the vehicle: its true rolling circumference, which order is
 * at fault, and tones that stay at their frequency whatever is driven. What each run says of these is passed to the
 * others as a likelihood (belief propagation on a star; with two to six runs a few rounds settle it).
 */
import { rollingCircumference } from '../../vehicle/rolling.ts';
import type { Vehicle } from '../../vehicle/vehicle.ts';
import { circumferenceMessage, withCircumference, type CircumferenceMessage } from './circumference.ts';
import { faultMessages, withFaults, type FaultMessages } from './fault-messages.ts';
import { inferRun, type RunInference } from './infer-run.ts';
import { linesOrNone, type RunEvidence } from '../observing/run-evidence.ts';
import { originsOf, type Origin } from '../origins/origin.ts';
import { runPrior } from './run-prior.ts';
import { byTorque } from './torque-twins.ts';
import { steadyTones } from './find-steady-tones.ts';
import type { SteadyTone } from './steady-tones.ts';

/** Rounds of exchange; each later one changes little. */
const ROUNDS = 2;

interface Messages {
  readonly circumference: CircumferenceMessage | null;
  readonly faults: FaultMessages;
}

const messagesOf = (inference: RunInference, circumferenceSd: number): Messages => ({
  circumference: circumferenceMessage(inference, circumferenceSd),
  faults: faultMessages(inference),
});

export const inferJob = (
  vehicle: Vehicle,
  runs: readonly RunEvidence[],
  onRun: (index: number) => void = () => undefined,
): readonly RunInference[] => {
  const tire = vehicle.tire ? rollingCircumference(vehicle.tire) : null;
  const circumferenceSd = tire?.ok ? tire.value.relativeSd : 0;
  const priors = runs.map((run) =>
    runPrior(vehicle, run.condition, linesOrNone(run.expected), run.histories.wander[0] ?? 0),
  );
  const origins = runs.map((run): readonly Origin[] =>
    originsOf(linesOrNone(run.expected), run.speedVaried === 'ramp'),
  );
  let inferences = runs.map((run, i) => {
    onRun(i);
    return inferRun(run, origins[i]!, priors[i]!, []);
  });
  // Taken from what each run says by itself, or two runs would talk each other into it.
  const steady = inferences.map((inference): readonly SteadyTone[] => steadyTones(inference));
  for (let round = 0; round < ROUNDS && runs.length > 1; round++) {
    const messages = inferences.map((inference) => messagesOf(inference, circumferenceSd));
    inferences = runs.map((run, i) => {
      const others = messages.filter((_, j) => j !== i);
      const prior = withCircumference(
        priors[i]!,
        others.map((m) => m.circumference),
        circumferenceSd,
      );
      const believed = withFaults(
        origins[i]!,
        others.map((m) => m.faults),
      );
      return inferRun(
        run,
        believed,
        prior,
        steady.flatMap((tones, j) => (j === i ? [] : tones)),
      );
    });
  }
  return byTorque(inferences);
};
