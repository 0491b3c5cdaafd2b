/** Whose a tone is, and which tone of a run is an order's. */
import type { RunInference } from './infer-run.ts';
import type { Match, OriginShare } from './match.ts';
import { turnAlike } from './twins.ts';

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

/** Probability of a line and of those that turn in one ratio with it: against what is no line they stand together. */
export const withTwins = (share: OriginShare, { lines }: Match): number =>
  lines
    .filter((other) => other.image === share.image && turnAlike(share.origin, other.origin))
    .reduce((sum, { probability }) => sum + probability, 0);

/**
 * The line that a tone is taken for, itself or as an image: the likeliest, where all lines together are likelier than not.
 * (Of three that share a frequency none may be likelier than the rest; it is theirs all the same.)
 * @returns null for a tone that is rather no part's
 */
export const ownerOf = (match: Match): OriginShare | null => {
  const { lines, others } = match;
  const [likeliest] = lines;
  const together = lines.reduce((sum, { probability }) => sum + probability, 0);
  if (!likeliest || together < OWN_FROM) return null;
  return withTwins(likeliest, match) >= Math.max(others.fixed, others.unlisted) ? likeliest : null;
};

/** Its own tone, seen directly: not its image. */
export const ownToneOf = (inference: RunInference, label: string): Match | null =>
  toneOfOrder(inference, label, (share, match) => !share.image && ownerOf(match) === share);
