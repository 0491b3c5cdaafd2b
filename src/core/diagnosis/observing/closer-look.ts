/** Where a run changed speed and shook in one part only, all of it shows nothing: a closer look at that part. */
import type { Note } from '../../note.ts';
import { cutRecording, type Span } from '../../reading/cut-recording.ts';
import { loudStretch } from '../../signal/spectra/loud-stretch.ts';
import type { RunCondition, Vehicle } from '../../vehicle/vehicle.ts';
import { observeRun } from './observe-run.ts';
import type { RunEvidence } from './run-evidence.ts';

/** Logged values this long before and after a part are used: its speed is drawn through them, and they may be late, s. */
const LOG_AROUND_S = 2;

const note = ({ fromS, toS }: Span): Note => ({
  code: 'part-of-drive',
  severity: 'info',
  text:
    `Only ${fromS.toFixed(1)} to ${toS.toFixed(1)} s, where it shook most, is judged: the speed changed fast, and over ` +
    'all of the run nothing stands out that could be felt.',
});

/** Where a run whose speed changed fast shook far more than elsewhere; null where none did, or no log tells the speed. */
export const loudPart = ({ changedFast, prepared }: RunEvidence): Span | null =>
  changedFast ? loudStretch(prepared) : null;

/**
 * The runs again, each cut to the part in which it shook.
 * @param stated stated[i] belongs to runs[i]
 * @returns null where there is none to be cut
 */
export const closerLook = (
  vehicle: Vehicle,
  runs: readonly RunEvidence[],
  stated: readonly RunCondition[],
): readonly RunEvidence[] | null => {
  const parts = runs.map(loudPart);
  if (parts.every((part) => part === null)) return null;
  return runs.map((run, i) => {
    const part = parts[i];
    if (!part) return run;
    const cut = cutRecording(run.recording, [part], LOG_AROUND_S);
    const notes = [...run.recording.notes, note(part)];
    return observeRun(vehicle, stated[i] ?? {}, { ...cut, notes }, run.name);
  });
};
