/** The map as a small table: the level of each matched order in some slices of time. */
import type { RunPicture } from '../../core/report/analysis.ts';
import { aliasOfHz } from '../../core/vehicle/alias.ts';
import { relativeAt } from './tracks.ts';

export interface LevelTable {
  readonly labels: readonly string[];
  readonly rows: readonly {
    readonly fromS: number;
    readonly toS: number;
    readonly amplitudesMps2: readonly number[];
  }[];
}

const SLICES = 6;
/** Bins to each side of the order that still belong to it. */
const REACH = 2;

/** Root mean square over each slice of the greatest amplitude within reach of the order, or of its image. */
export function levelsOverTime(picture: RunPicture, matched: ReadonlySet<string>): LevelTable {
  const { timeFrequency: map, histories, samplingRateHz } = picture;
  const lines = picture.lines.filter(({ label }) => matched.has(label));
  const times = map.timeS.length;
  const slices = Math.min(SLICES, times);
  const rows = Array.from({ length: slices }, (_, slice) => {
    const from = Math.floor((slice * times) / slices);
    const to = Math.floor(((slice + 1) * times) / slices);
    const amplitudesMps2 = lines.map((line) => {
      let power = 0;
      for (let at = from; at < to; at++) {
        const trueHz = line.frequencyHz * relativeAt(histories[line.group], map.timeS[at] ?? 0);
        const hz = aliasOfHz(trueHz, samplingRateHz);
        power += greatestNear(picture, at, hz / map.stepHz) ** 2;
      }
      return Math.sqrt(power / (to - from));
    });
    return { fromS: map.timeS[from] ?? 0, toS: map.timeS[to - 1] ?? 0, amplitudesMps2 };
  });
  return { labels: lines.map((line) => line.label), rows };
}

function greatestNear({ timeFrequency: map }: RunPicture, time: number, bin: number): number {
  const middle = Math.round(bin);
  let greatest = 0;
  for (let at = Math.max(0, middle - REACH); at <= Math.min(map.bins - 1, middle + REACH); at++) {
    greatest = Math.max(greatest, map.amplitudeMps2[time * map.bins + at] ?? 0);
  }
  return greatest;
}
