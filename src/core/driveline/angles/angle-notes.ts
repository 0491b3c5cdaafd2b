/** What to say of working angles beside the numbers: ride height, joint planes, forks, joints of other kinds. */
import type { Note } from '../../note.ts';
import type { JudgedNumber } from '../limits/limit.ts';
import type { ShaftReading } from '../measurement.ts';
import type { AngleChain } from './angle-chain.ts';
import { isFrontShaft, noseEnd, partsNotRead } from './driveline-names.ts';
import { isTwisted, outOfLineDeg } from './forks.ts';

const note = (code: string, severity: Note['severity'], text: string): Note => ({ code, severity, text });

export const angleNotes = (
  chain: AngleChain,
  shafts: readonly ShaftReading[],
  judged: readonly JudgedNumber[],
  noSpeed: boolean,
): Note[] => {
  const notes = [
    note(
      'ride-height',
      'info',
      'Angles count only with the vehicle at ride height, its weight on the wheels or the axle supported there.',
    ),
  ];
  if (noSpeed && judged.length > 0) {
    notes.push(
      note(
        'no-speed',
        'warning',
        'Without the driveshaft speed only forks and the difference of the two angles can be judged, not the acceleration.',
      ),
    );
  }
  const [missing] = partsNotRead(shafts);
  if (chain.joints.length === 1 && missing !== undefined) {
    notes.push(
      note(
        'one-joint',
        'warning',
        `The ${missing} was not read, so this is one joint with nothing to cancel it. That is right only for a driveline with one joint, such as a torque tube.`,
      ),
    );
  }
  if (chain.joints.some((joint) => Math.abs(outOfLineDeg(joint.planeTurnDeg)) > 1 && joint.angleDeg > 0.5)) {
    notes.push(
      note(
        'joint-planes-differ',
        'info',
        'The joints do not work in one plane, so equal angles alone do not cancel; the residual takes this in.',
      ),
    );
  }
  return [...notes, ...kindNotes(chain, judged), ...layoutNotes(chain, shafts)];
};

/** Discs and constant-velocity joints: what is not judged of them, and what a disc flexed too far does. */
const kindNotes = ({ joints }: AngleChain, judged: readonly JudgedNumber[]): Note[] => [
  ...(judged.some(({ limit, inside }) => limit.id === 'flexible-disc-angle' && !inside)
    ? [
        note(
          'disc-flexed',
          'warning',
          'A flexible disc flexed this far tears and can let the shaft go, and no longer turns evenly. Look at it for cracks and loose sleeves, and bring its angle down before the vehicle is driven.',
        ),
      ]
    : []),
  ...(joints.some(({ kind }) => kind === 'constant-velocity')
    ? [
        note(
          'constant-velocity-not-judged',
          'info',
          'The angle of a constant-velocity joint is not judged: what it may run at differs by joint. Hold it to the maker’s figure.',
        ),
      ]
    : []),
];

/** An angle at the pinion that is more than a shim's worth, deg. */
const FAR_OFF_DEG = 2;

/** ' Here it stands 17.0° off: turn its nose up.' */
const offTheShaft = (angleDeg: number, shafts: readonly ShaftReading[]): string => {
  if (angleDeg < FAR_OFF_DEG) return '';
  const pinion = shafts.find(({ part }) => part === 'pinion');
  const pieces = shafts.filter(({ part }) => part === 'shaft');
  const piece = isFrontShaft(shafts) ? pieces[0] : pieces.at(-1);
  if (!pinion || !piece) return '';
  const frontEndUp = piece.slopeDeg > pinion.slopeDeg;
  const nose = frontEndUp === (noseEnd(shafts) === 'front') ? 'up' : 'down';
  return ` Here it stands ${angleDeg.toFixed(1)}° off the shaft: turn its nose ${nose}.`;
};

/** How shafts of more than two plain joints are usually set; common practice, no source. */
const layoutNotes = ({ joints }: AngleChain, shafts: readonly ShaftReading[]): Note[] => {
  const notes: Note[] = [];
  const atPinion = isFrontShaft(shafts) ? joints[0] : joints.at(-1);
  if (joints.some(({ kind }) => kind === 'double-cardan') && atPinion?.kind === 'cross') {
    const low = isFrontShaft(shafts) ? '' : ', its nose about 1° low at rest as drive torque lifts it';
    notes.push(
      note(
        'pinion-along-shaft',
        'info',
        `With a double-Cardan joint at the other end the pinion should point along the shaft${low} [common practice, no source].${offTheShaft(atPinion.angleDeg, shafts)}`,
      ),
    );
  }
  if (isFrontShaft(shafts)) {
    notes.push(
      note(
        'caster-turns-along',
        'warning',
        'Turning a front axle turns its steering axis along: each degree of pinion nose up takes a degree of caster. Hold caster to the maker’s figure, or the steering wanders [common practice, no source].',
      ),
    );
  }
  if (shafts.filter(({ part }) => part === 'shaft').length > 1) {
    notes.push(
      note(
        'front-piece-angle',
        'info',
        'The front joint of a shaft in pieces usually runs at 0.5° to 1.5°, set by shims at the center bearing [common practice, no source]. Some makers set the pieces 90° to each other: look for marks before turning one.',
      ),
    );
  }
  return notes;
};

export const forkNotes = (phasingDeg: readonly number[], twistHarms: boolean): Note[] =>
  phasingDeg.flatMap((twistDeg, index): Note[] => {
    if (!isTwisted(twistDeg)) return [];
    const head = `The forks of shaft piece ${index + 1} stand ${Math.abs(outOfLineDeg(twistDeg)).toFixed(1)}° out of line`;
    return [
      twistHarms
        ? note('forks-twisted', 'warning', `${head}. Unless the maker set them so, they belong in line.`)
        : note(
            'forks-set-so',
            'info',
            `${head}, but in line they would leave no less: the maker may have set them so. Compare before turning them.`,
          ),
    ];
  });
