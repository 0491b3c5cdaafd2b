/**
 * A whole road test holds standstills and several speeds. Averaged over all of it a shake that is there at one speed is
 * lost, so a drive whose speed was logged is cut into its steady stretches, each judged as a run of its own.
 */
import type { Run } from '../../job/job.ts';
import { runName, type RecordedJob } from '../../job/recorded-job.ts';
import { failure, success, type Note, type Problem, type Result } from '../../note.ts';
import { cutRecording, type Span } from '../../reading/cut-recording.ts';
import type { Recording } from '../../reading/recording.ts';
import { speedLogOf } from '../../reading/speed-log.ts';
import { gearStretches } from './gear-stretches.ts';
import { whereLogged } from './partly-logged.ts';
import { driveOf, type Drive, type Hold } from './stretches.ts';
import { OTHER_SPEED, speedsApart } from '../speeds-apart.ts';

interface RecordedRun {
  readonly run: Run;
  readonly recording: Recording;
}

/** Shorter standstills are a slow corner, s. */
const STOOD_S = 3;
/** A drive whose speeds differ by less than this factor is followed as a whole. */
const SEVERAL_SPEEDS = 1.4;
/** Holds that make up less of the drive than this say too little of it. */
const HELD_SHARE = 0.3;
/** So many stretches are judged, each at a speed of its own. */
const MOST_STRETCHES = 4;
/** What was stated of a run holds for a stretch at a speed this near the stated one. */
const STATED_WITHIN = 0.1;

/** Times as they are given by hand: no more decimals than they have. */
const timeText = (s: number): string => String(Number(s.toFixed(1)));
const spanText = ({ fromS, toS }: Span): string => `${timeText(fromS)} to ${timeText(toS)} s`;

const note = (text: string): Note => ({ code: 'part-of-drive', severity: 'info', text });

/** The part of a recording that was asked for by hand. */
const asked = ({ run, recording }: RecordedRun): RecordedRun => {
  const { fromS = 0, toS = Infinity } = run;
  if (fromS === 0 && toS === Infinity) return { run, recording };
  const cut = cutRecording(recording, [{ fromS, toS }]);
  const text = `Only ${toS === Infinity ? `what follows ${timeText(fromS)} s` : spanText({ fromS, toS })} of it is used, as asked.`;
  return { run, recording: { ...cut, notes: [...recording.notes, note(text)] } };
};

/** Gear and engine speed as stated belong to the stretch that the stated speed is nearest to; without one, the fastest. */
const statedFor = ({ speedMps }: Run, holds: readonly Hold[]): Hold => {
  const fit = (hold: Hold): number => (speedMps === undefined ? hold.speedMps : -Math.abs(hold.speedMps - speedMps));
  return holds.reduce((a, b) => (fit(b) > fit(a) ? b : a));
};

const stretchRun = (run: Run, hold: Hold, own: boolean): Run => {
  const { speedMps, gearRatio, engineRpm, ...rest } = run;
  const near = speedMps !== undefined && Math.abs(hold.speedMps / speedMps - 1) < STATED_WITHIN;
  return {
    ...rest,
    name: `${runName(run)}, ${spanText(hold)}`,
    ...(near && { speedMps }),
    ...(own && gearRatio !== undefined && { gearRatio }),
    ...(own && engineRpm !== undefined && { engineRpm }),
  };
};

/** The longest stretch at each of the speeds that were held longest, in order of time. */
const chosenHolds = ({ holds }: Drive): readonly Hold[] => {
  const chosen: Hold[] = [];
  for (const hold of holds) {
    const isOther = chosen.every(({ speedMps }) => speedsApart(hold.speedMps, speedMps) > OTHER_SPEED);
    if (isOther && chosen.length < MOST_STRETCHES) chosen.push(hold);
  }
  return chosen.sort((a, b) => a.fromS - b.fromS);
};

const inHolds = ({ run, recording }: RecordedRun, drive: Drive): readonly RecordedRun[] => {
  const holds = chosenHolds(drive);
  const owner = statedFor(run, holds);
  const heldS = holds.reduce((sum, { fromS, toS }) => sum + toS - fromS, 0);
  const leftS = drive.movingS + drive.stoodS - heldS;
  const others = run.gearRatio === undefined && run.engineRpm === undefined;
  return holds.map((hold, i) => {
    const own = hold === owner;
    const gear =
      own || others || holds.length === 1 ? '' : ' Gear or engine speed as stated are taken for another stretch.';
    const text = `A steady stretch of the drive, ${spanText(hold)} by the logged speed.${gear}`;
    const left = `${leftS.toFixed(0)} s of standing, of changing speed and at speeds judged already are left out; for a complaint that shows only then, give that part alone.`;
    const notes = i === 0 ? [...recording.notes, note(`${text} ${left}`)] : [note(text)];
    return { run: stretchRun(run, hold, own), recording: { ...cutRecording(recording, [hold]), notes } };
  });
};

const whileMoving = ({ run, recording }: RecordedRun, drive: Drive): RecordedRun => {
  const text = `${drive.stoodS.toFixed(0)} s of standing are left out, by the logged speed.`;
  return { run, recording: { ...cutRecording(recording, drive.moving), notes: [...recording.notes, note(text)] } };
};

/** Driven with changing speed on purpose: what shakes in it is looked for in all of it. */
const isSweep = ({ load }: Run): boolean => load !== undefined && load !== 'cruise' && load !== 'standing';

const split = (one: RecordedRun): readonly RecordedRun[] => {
  const log = speedLogOf(one.recording);
  const drive = log ? driveOf(log) : null;
  if (!drive || drive.movingS === 0) return [one];
  const stood = drive.stoodS >= STOOD_S;
  if (!stood && drive.ratio < SEVERAL_SPEEDS) return [one];
  const heldS = drive.holds.reduce((sum, { fromS, toS }) => sum + toS - fromS, 0);
  if (heldS >= HELD_SHARE * drive.movingS && !isSweep(one.run)) return inHolds(one, drive);
  return stood ? [whileMoving(one, drive)] : [one];
};

/** Each gear by itself; which gear it was the engine's own speed tells. */
const inGears = (one: RecordedRun): readonly RecordedRun[] => {
  const stretches = gearStretches(one.recording);
  if (stretches.length === 0) return [one];
  const run: { -readonly [K in keyof Run]: Run[K] } = { ...one.run };
  delete run.gearRatio;
  delete run.engineRpm;
  return stretches.map((span, i) => {
    const text = `By its two logs a gear was shifted in this run: ${spanText(span)} is judged by itself.`;
    const notes = i === 0 ? [...one.recording.notes, note(text)] : [note(text)];
    const name = `${runName(one.run)}, ${spanText(span)}`;
    return { run: { ...run, name }, recording: { ...cutRecording(one.recording, [span]), notes } };
  });
};

/** Least length of a run, s: that of the shortest segments looked at. */
const SHORTEST_S = 4;

const tooShort = ({ run, recording }: RecordedRun): Problem => ({
  code: 'recording-too-short',
  file: recording.name,
  message:
    `holds ${recording.durationS.toFixed(1)} s that can be used; orders stand a fraction of a hertz apart, and ` +
    `${SHORTEST_S} s are the least that tells them apart.`,
  remedy:
    run.fromS === undefined && run.toS === undefined
      ? 'Record half a minute or more at a steady speed.'
      : 'Use a longer part of it, or all of it.',
});

/**
 * The runs as they are judged: the part that was asked for, and drives of several speeds in their steady stretches.
 * @returns the problem of the first that is too short to be judged
 */
export const splitDrives = ({ job, recordings }: RecordedJob): Result<RecordedJob> => {
  const all = recordings.flatMap((recording, i) => {
    const run = job.runs[i] ?? { file: recording.name };
    const part = asked({ run, recording });
    return split(whereLogged(part.run, part.recording)).flatMap(inGears);
  });
  const short = all.find(({ recording }) => recording.durationS < SHORTEST_S);
  if (short) return failure(tooShort(short));
  return success({
    job: { ...job, runs: all.map(({ run }) => run) },
    recordings: all.map(({ recording }) => recording),
  });
};
