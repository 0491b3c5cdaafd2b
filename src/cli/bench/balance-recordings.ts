/** Trial runs given as recordings: the amplitude of the part's 1× in each, with its uncertainty. */
import type { AmplitudeBalanceInput } from '../../core/driveline/balance/amplitude-trials.ts';
import type { Run } from '../../core/job/job.ts';
import type { Note, Result } from '../../core/note.ts';
import { success } from '../../core/note.ts';
import { axisText } from '../../core/trials/trial-axis.ts';
import { trialLevels } from '../../core/trials/trial-levels.ts';
import type { Io } from '../io.ts';
import { loadRecordings } from '../load.ts';
import type { Bench } from './bench-options.ts';

interface RecordedPosition {
  readonly angleDeg: number;
  readonly shown: string;
}

/**
 * Read the recordings and take the amplitudes out of them.
 * @param label order to balance: 'driveshaft 1×' or 'tire 1×'
 */
export async function recordedInput(
  io: Io,
  { job, condition }: Bench,
  files: { readonly found: string; readonly trialWeight: number; readonly positions: readonly RecordedPosition[] },
  label: string,
): Promise<Result<{ readonly input: AmplitudeBalanceInput; readonly notes: readonly Note[] }>> {
  const named = [files.found, ...files.positions.map(({ shown }) => shown)];
  // The condition of the complaint holds for every trial run: they are to be made alike.
  const runs = named.map((file): Run => ({ ...condition, file, name: file }));
  const trialJob = { ...job, runs };
  const recordings = await loadRecordings(io, trialJob);
  if (!recordings.ok) return recordings;
  const levels = trialLevels({ job: trialJob, recordings: recordings.value }, label);
  if (!levels.ok) return levels;
  const readings = levels.value.levels.map(({ amplitudeMps2, amplitudeSdMps2 }) => ({
    amplitude: amplitudeMps2,
    amplitudeSd: amplitudeSdMps2,
  }));
  const [baseline = { amplitude: 0 }, ...shown] = readings;
  const positions = files.positions.map(({ angleDeg }, index) => ({ angleDeg, ...(shown[index] ?? { amplitude: 0 }) }));
  const read: Note = {
    code: 'amplitudes-read',
    severity: 'info',
    text: `Amplitudes of ${label} ${axisText(levels.value.axis)}, in m/s²: ${readings.map(({ amplitude, amplitudeSd }) => `${amplitude.toFixed(4)} ± ${amplitudeSd.toFixed(4)}`).join(', ')}.`,
  };
  return success({
    input: { baseline, trialWeight: files.trialWeight, positions },
    notes: [read, ...levels.value.notes],
  });
}
