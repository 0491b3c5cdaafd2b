/** The tone of a run that is an order's. */
import type { RunInference } from './infer-run.ts';
import type { Match, OriginShare } from './match.ts';

/** A tone is an order's own from this probability on: likelier its than all else together. */
export const OWN_FROM = 0.5;

/** The strongest tone of which a share as wanted is the order's; null where there is none. */
export const toneOfOrder = (
  { matches }: RunInference,
  label: string,
  isWanted: (share: OriginShare, match: Match) => boolean,
): Match | null =>
  matches
    .filter((match) => match.lines.some((share) => share.origin.line.label === label && isWanted(share, match)))
    .reduce<Match | null>(
      (best, match) => (best && best.tone.peak.amplitudeMps2 >= match.tone.peak.amplitudeMps2 ? best : match),
      null,
    );

/** Its own tone, seen directly: not its image. */
export const ownToneOf = (inference: RunInference, label: string): Match | null =>
  toneOfOrder(inference, label, ({ image, probability }) => !image && probability >= OWN_FROM);
