/** How fast each part really turned over the run, block by block. */
import type { Turning, TurningId } from './turning.ts';
import { turningHz } from './turning.ts';

export interface TurnRecord {
  /** One block: its start on the recording's clock, road speed, and each part's relative speed. */
  readonly note: (timeS: number, speedMps: number, relative: (part: Turning) => number) => void;
  /** Mean turning speed over the recording, 1/s. */
  readonly meanHz: (id: TurningId) => number;
  /** Engine speed at a time, 1/s; 0 where there is no engine. */
  readonly engineHzAt: (timeS: number) => number;
}

export const turnRecord = (parts: readonly Turning[], blockS: number, durationS: number): TurnRecord => {
  const sums = new Map<TurningId, number>(parts.map((p) => [p.id, 0]));
  const engineHz: number[] = [];
  const engine = parts.find((p) => p.id === 'engine');
  let blocks = 0;
  return {
    note: (timeS, speedMps, relative) => {
      if (timeS < 0 || timeS >= durationS) return;
      blocks++;
      for (const part of parts) sums.set(part.id, sums.get(part.id)! + turningHz(part, speedMps) * relative(part));
      if (engine !== undefined) engineHz.push(turningHz(engine, speedMps) * relative(engine));
    },
    meanHz: (id) => (sums.get(id) ?? 0) / Math.max(1, blocks),
    engineHzAt: (timeS) => engineHz[Math.max(0, Math.min(engineHz.length - 1, Math.floor(timeS / blockS)))] ?? 0,
  };
};
