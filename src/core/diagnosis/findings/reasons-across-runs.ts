/** What the other runs of a job say of a finding: that it moved with the speed, or that it stayed. */
import type { Finding } from './finding.ts';
import type { RunInference } from '../matching/infer-run.ts';
import { expectedPlace } from '../matching/place.ts';
import { OWN_FROM, ownToneOf } from '../matching/tone-of-order.ts';
import { torqueReason } from '../matching/torque-twins.ts';
import { speedsApart } from '../speeds-apart.ts';
import { hzText } from '../../words.ts';

/** A line that moves by less than this (ln) cannot be told to follow the speed: three times what one that stays may be off. */
const MOVED = 0.03;
/** A tone within this share of the frequency is the same. */
const SAME_PLACE = 0.01;

/** An order found again at the place that the other run's speed gives it. */
const movedTo = (finding: Finding, other: RunInference): number | null => {
  const origin = other.origins.find(({ line }) => line.label === finding.label);
  if (!origin || speedsApart(expectedPlace(other, origin).hz, finding.trueHz) < MOVED) return null;
  return ownToneOf(other, finding.label)?.tone.peak.frequencyHz ?? null;
};

/** Whether wheels or engine turned clearly faster or slower in the other run. */
const isOtherSpeed = ({ run: { expected: a } }: RunInference, { run: { expected: b } }: RunInference): boolean =>
  a !== null &&
  b !== null &&
  [[a.wheelHz, b.wheelHz] as const, [a.engineHz, b.engineHz] as const].some(
    ([one, two]) => one !== null && two !== null && speedsApart(one, two) > MOVED,
  );

const stayedAt = (finding: Finding, other: RunInference): number | null => {
  if (!isOtherSpeed(finding.inference, other)) return null;
  const match = other.matches.find(
    ({ tone, others }) => others.fixed >= OWN_FROM && speedsApart(tone.peak.frequencyHz, finding.trueHz) < SAME_PLACE,
  );
  return match ? match.tone.peak.frequencyHz : null;
};

/** Sentences that speak for the finding; none where the job has one run, or runs of one speed. */
export const reasonsAcrossRuns = (finding: Finding, inferences: readonly RunInference[]): readonly string[] =>
  inferences.flatMap((other) => {
    if (other === finding.inference) return [];
    const { name } = other.run;
    if (finding.part === 'fixed') {
      const hz = stayedAt(finding, other);
      return hz === null ? [] : [`It stands at ${hzText(hz)} in ${name} too, though the speed was another.`];
    }
    if (!finding.chosen) return [];
    const hz = movedTo(finding, other);
    const moved = hz === null ? null : `In ${name} it is at ${hzText(hz)}, where ${finding.label} turns at that speed.`;
    return [moved, torqueReason(finding.chosen, finding.inference, other)].filter((text) => text !== null);
  });
