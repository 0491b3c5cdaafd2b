/** What the other runs of a job say of a finding: that it moved with the speed, or that it stayed. */
import type { Finding } from './finding.ts';
import type { RunInference } from '../matching/infer-run.ts';
import { expectedPlace } from '../matching/place.ts';
import { torqueReason } from '../matching/torque-twins.ts';
import { hzText } from './words.ts';

/** Turning speeds that differ by less, in ln, tell nothing of what follows them. */
const OTHER_SPEED = 0.03;
/** A tone within this share of the frequency is the same. */
const SAME_PLACE = 0.01;
/** The other run's tone is the same origin's from this probability on. */
const LIKELY = 0.5;

const apart = (a: number, b: number): number => Math.abs(Math.log(a / b));

/** An order found again at the place that the other run's speed gives it. */
const movedTo = (finding: Finding, other: RunInference): number | null => {
  const origin = other.origins.find(({ line }) => line.label === finding.label);
  if (!origin || apart(expectedPlace(other, origin).hz, finding.trueHz) < OTHER_SPEED) return null;
  const match = other.matches.find(({ lines }) =>
    lines.some((share) => share.origin.line.label === finding.label && !share.image && share.probability >= LIKELY),
  );
  return match ? match.tone.peak.frequencyHz : null;
};

/** Whether wheels or engine turned clearly faster or slower in the other run. */
const isOtherSpeed = ({ run: { expected: a } }: RunInference, { run: { expected: b } }: RunInference): boolean =>
  a !== null &&
  b !== null &&
  [[a.wheelHz, b.wheelHz] as const, [a.engineHz, b.engineHz] as const].some(
    ([one, two]) => one !== null && two !== null && apart(one, two) > OTHER_SPEED,
  );

const stayedAt = (finding: Finding, other: RunInference): number | null => {
  if (!isOtherSpeed(finding.inference, other)) return null;
  const match = other.matches.find(
    ({ tone, others }) => others.fixed >= LIKELY && apart(tone.peak.frequencyHz, finding.trueHz) < SAME_PLACE,
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
