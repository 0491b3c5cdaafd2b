/** What the cursor reads: the frequency, and how many turns of each part it is. */
import type { Line, Part } from '../../core/vehicle/line.ts';
import { rpmFromHz } from '../../core/units.ts';

export interface PartReadout {
  readonly part: Part;
  readonly name: string | undefined;
  /** Multiple of the part's turning speed at the cursor. */
  readonly order: number;
}

export interface Readout {
  readonly frequencyHz: number;
  readonly cyclesPerMinute: number;
  readonly parts: readonly PartReadout[];
}

/** @param lines Expected lines of the run; one of each part is enough to know its turning speed. */
export function readoutAt(frequencyHz: number, lines: readonly Line[]): Readout {
  const turning = new Map<string, { part: Part; name: string | undefined; hz: number }>();
  for (const line of lines) {
    const key = `${line.part} ${line.name ?? ''}`;
    if (line.order > 0 && line.part !== 'fixed' && line.role !== 'electric' && !turning.has(key)) {
      turning.set(key, { part: line.part, name: line.name, hz: line.frequencyHz / line.order });
    }
  }
  const parts = [...turning.values()].map(({ part, name, hz }) => ({ part, name, order: frequencyHz / hz }));
  return { frequencyHz, cyclesPerMinute: rpmFromHz(frequencyHz), parts };
}
