/** What uneven sampling instants say of each tone that may be the image of an expected line. */
import type { Recording } from '../../reading/recording.ts';
import { foldsBy } from '../../signal/peaks/folds.ts';
import { instantsOf } from '../../signal/peaks/instants.ts';
import { levelLeftBy } from '../../signal/peaks/level-left.ts';
import { targetsOf, type Target } from '../origins/origin.ts';
import type { ToneFold } from '../origins/tone.ts';

/** An expected line may stand this far (ln) from where its stated speed puts it. */
const REACH = 0.05;
/** ln of the likelihood below which what an image has left of its line is not asked for. */
const HOPELESS = -20;

export type FoldsOfTone = (shownHzAt: (atS: number) => number, frequencyHz: number) => readonly ToneFold[];

/** @param linesHz true frequencies of expected lines */
export const toneFoldsOf = (recording: Recording, linesHz: readonly number[]): FoldsOfTone => {
  const { samplingRateHz } = recording;
  const instants = instantsOf(recording);
  if (!instants || !linesHz.some((hz) => hz * (1 + REACH) > samplingRateHz / 2)) return () => [];
  const foldsOf = foldsBy(instants);
  const leftOf = levelLeftBy(instants);
  const expected = ({ image, trueHz }: Target): boolean =>
    image && linesHz.some((hz) => Math.abs(Math.log(hz / trueHz)) < REACH);
  return (shownHzAt, frequencyHz) => {
    const targets = targetsOf(frequencyHz, samplingRateHz);
    if (!targets.some(expected)) return [];
    const folds = foldsOf(
      shownHzAt,
      targets.map(({ fold }) => fold),
    );
    return folds.map(({ fold, logLikelihood }, k) => ({
      fold,
      logLikelihood,
      kept: logLikelihood > HOPELESS && expected(targets[k]!) ? leftOf(frequencyHz, fold) : 1,
    }));
  };
};
