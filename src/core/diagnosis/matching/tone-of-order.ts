/** Whose a tone is, and which tone of a run is an order's. */
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

/**
 * The line that a tone is taken for, itself or as an image: the likeliest, where all lines together are likelier than not.
 * (Of three that share a frequency none may be likelier than the rest; it is theirs all the same.)
 * @returns null for a tone that is rather no part's
 */
export const ownerOf = ({ lines, others: { fixed, unlisted } }: Match): OriginShare | null => {
  const [likeliest] = lines;
  const together = lines.reduce((sum, { probability }) => sum + probability, 0);
  return likeliest && together >= OWN_FROM && likeliest.probability >= Math.max(fixed, unlisted) ? likeliest : null;
};

/** Its own tone, seen directly: not its image. */
export const ownToneOf = (inference: RunInference, label: string): Match | null =>
  toneOfOrder(inference, label, (share, match) => !share.image && ownerOf(match) === share);
