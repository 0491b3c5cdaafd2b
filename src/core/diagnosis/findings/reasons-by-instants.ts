/** What uneven sampling instants say of a tone that may be an image, in a sentence. */
import type { Fold } from '../../signal/peaks/folds.ts';
import type { Finding } from './finding.ts';
import { hzText } from '../../words.ts';

/** ln of evidence from which the instants are worth a sentence. */
const CLEARLY = 3;

/** How far the likeliest place stands above the shown one, ln; negative where the shown one is the likeliest. */
const overShown = (folds: readonly Fold[]): number => {
  const shown = folds.find(({ fold }) => fold === 0);
  if (!shown) return 0;
  if (shown.logLikelihood < 0) return -shown.logLikelihood;
  return Math.max(...folds.filter(({ fold }) => fold !== 0).map(({ logLikelihood }) => logLikelihood));
};

export const instantsSentence = ({
  chosen,
  match: { tone },
  trueHz,
}: Finding): { text: string; speaksFor: boolean } | null => {
  const over = overShown(tone.folds);
  if (Math.abs(over) < CLEARLY) return null;
  const isImage = over > 0;
  const speaksFor = (chosen?.image ?? false) === isImage;
  const [shown, above] = [hzText(tone.peak.frequencyHz), 'a frequency above half the rate'];
  const [better, worse] = isImage ? [speaksFor ? hzText(trueHz) : above, shown] : [shown, above];
  return { text: `Taken at uneven instants, the samples fit ${better} better than ${worse}.`, speaksFor };
};
