/** What is said of a road that thumps evenly: it covers what a vehicle does there, and another road tells. */
import type { RunInference } from '../../diagnosis/matching/infer-run.ts';
import type { RoadJoints } from '../../diagnosis/observing/road-joints.ts';
import type { Note } from '../../note.ts';
import type { Answer } from '../answer.ts';

const FEET_PER_METER = 1 / 0.3048;

const spacingText = ({ spacingM }: RoadJoints): string =>
  `${spacingM.toFixed(1)} m (${(spacingM * FEET_PER_METER).toFixed(0)} ft)`;

const rowText = ({ baseHz, teeth }: RoadJoints): string =>
  `${teeth.size} tones stand at multiples of ${baseHz.toFixed(2)} Hz, as the joints of a road of slabs make them; no part turns at such a row of rates.`;

/** For the remarks on a run in which such a row was left out. */
export const jointsNote = (joints: RoadJoints): Note => ({
  code: 'road-joints',
  severity: 'warning',
  text: `The road thumped evenly, once every ${spacingText(joints)}: ${rowText(joints)} They are left out, and an order that fell on one of them with them.`,
});

/** Where nothing is found beside such a row; null where there is none. */
export const jointsAnswer = (inferences: readonly RunInference[]): Answer | null => {
  const joints = inferences.map(({ run }) => run.roadJoints).find((one) => one !== null);
  if (!joints) return null;
  return {
    verdict: 'cannot-tell',
    sentence: `Cannot tell: the road thumped evenly, once every ${spacingText(joints)}, and nothing stands out beside that.`,
    why: `${rowText(joints)} Record at the same speed on a road without joints: what is left there is the vehicle’s.`,
  };
};
