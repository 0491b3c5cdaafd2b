/** What uneven sampling instants say of each tone that may be the image of an expected line. */
import type { Recording } from '../../reading/recording.ts';
import { foldsBy, instantsOf, type Fold } from '../../signal/peaks/folds.ts';
import { targetsOf } from '../origins/origin.ts';

/** An expected line may stand this far (ln) from where its stated speed puts it. */
const REACH = 0.05;

export type FoldsOfTone = (shownHzAt: (atS: number) => number, frequencyHz: number) => readonly Fold[];

/** @param linesHz true frequencies of expected lines */
export const toneFoldsOf = (recording: Recording, linesHz: readonly number[]): FoldsOfTone => {
  const { samplingRateHz } = recording;
  const instants = instantsOf(recording);
  if (!instants || !linesHz.some((hz) => hz * (1 + REACH) > samplingRateHz / 2)) return () => [];
  const folds = foldsBy(instants);
  return (shownHzAt, frequencyHz) => {
    const all = targetsOf(frequencyHz, samplingRateHz);
    const mayBe = all.some(
      ({ image, trueHz }) => image && linesHz.some((hz) => Math.abs(Math.log(hz / trueHz)) < REACH),
    );
    return mayBe
      ? folds(
          shownHzAt,
          all.map(({ fold }) => fold),
        )
      : [];
  };
};
