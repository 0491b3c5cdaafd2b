/** Words of the lessons. Loaded with them, not with the first screen. */
import { lessonControls } from './lesson-controls.ts';

const lessons = {
  'how-an-order-is-born': {
    title: 'How an order is born',
    short: 'Turn a shaft with a heavy spot, and watch turn, sine and line become one thing.',
    about: [
      'A heavy spot pulls the shaft its own way, and the direction turns with it. Seen from one side only, up and down, the pull is a sine: one wave a turn. That is order 1×.',
      'A joint at an angle pushes twice in each turn, so its sine has two waves: order 2×. The spectrum sorts the mixed motion back into these sines.',
      'Change the speed and every line moves in Hz. Divide by the turning speed and the order stays where it was. That is why orders, not frequencies, name the part.',
    ],
    tryThis: ['Take the heavy spot away: only 2× stays.', 'Double the speed: the heavy spot pulls four times as hard.'],
    sources: [
      'Force of an unbalance, U·Ω²: from the definition of unbalance, ISO 21940-2:2017 (from memory).',
      'Spectrum: P. D. Welch, IEEE Trans. AU-15, 1967, 70–73, with the Hann window of F. J. Harris, Proc. IEEE 66(1), 1978.',
    ],
  },
  'lines-that-move': {
    title: 'Lines that move',
    short: 'Speed, gear, axle ratio and tire: which lines follow which.',
    about: [
      'Road speed and tire decide how fast the wheels turn. The axle ratio takes that to the driveshaft, the gear takes the driveshaft to the engine. So each control moves some lines and leaves others alone.',
      'Keep the lines where they stand as faint marks, then move one control at a time. What moved tells which part hangs on it.',
    ],
    tryThis: [
      'Change the gear: only the engine moves.',
      'Set the axle ratio to 3.00: driveshaft 1× stands on tire 3×, and no recording at a steady speed can part them.',
    ],
    sources: [
      'Turning speeds from the ratios: arithmetic.',
      'Rolling circumference from the tire size: sizes as in the tire standards, rolling shares as common practice.',
      'Parting two lines takes four bins of a Hann spectrum: F. J. Harris, Proc. IEEE 66(1), 1978.',
    ],
  },
  'one-joint-and-two': {
    title: 'One joint and two',
    short: 'Angles and phasing: where the twice-a-turn ripple comes from, and how a second joint takes it away.',
    about: [
      'A cross joint at an angle does not pass speed on evenly. While the driving shaft turns steadily, the driven one runs ahead and falls behind twice in each turn.',
      'A second joint can undo this: the same angle, and its forks in line with those of the first. The middle shaft still runs unevenly, the last one does not.',
      'Turn the forks against each other, or make the angles differ, and what is left over shakes at driveshaft 2×.',
    ],
    tryThis: [
      'Equal angles with the forks a quarter turn out: the two ripples add.',
      'Two joints at 3° and 4° leave as much as one joint at about 2.6°, not 1°.',
    ],
    sources: [
      'H. C. Seherr-Thoss, F. Schmelz, E. Aucktor, Universal Joints and Driveshafts, Springer 2006 (from memory).',
      'What a chain of joints leaves over, exact form: derived; check: the same chain stepped joint by joint.',
    ],
  },
  'two-near-lines': {
    title: 'Two near lines',
    short: 'What window and record length do to two lines that stand close together.',
    about: [
      'A recording of T seconds cannot tell frequencies apart that differ by much less than 1/T. The window widens each line further, and in return holds down the skirts that would bury a weak neighbor.',
      'So there is no best window: narrow with high skirts, or wide with low ones. A longer steady run helps every one of them.',
    ],
    tryThis: [
      'Two equal lines 0.4 Hz apart: lengthen the run until they part.',
      'Make the second line 50 dB weaker: without a window it drowns, with a low-skirted window it shows.',
    ],
    sources: [
      'F. J. Harris, Proc. IEEE 66(1), 1978, 51–83.',
      'G. Heinzel, A. Rüdiger, R. Schilling, Spectrum and spectral density estimation by the DFT, Max Planck Institute for Gravitational Physics, 2002.',
      'The 3 dB dip asked for between two lines: common practice, no source.',
    ],
  },
  'sampled-too-slowly': {
    title: 'Sampled too slowly',
    short: 'A fast line that shows up as a slow one that is not there.',
    about: [
      'A recorder looks only so many times a second. A sine faster than half that rate leaves the same dots as a slower one, and nothing in the dots can tell which of the two it was.',
      'The false line is called an alias. It folds at half the sampling rate, back and forth. Only a filter before the sampling keeps it out; many phones have none.',
    ],
    tryThis: [
      'Start below half the rate and raise the frequency: past the fold the shown line runs backward.',
      'Change the sampling rate: a true line stays, an alias jumps.',
    ],
    sources: ['Image frequency |f − fs·round(f/fs)|: derived; check: the dots of both sines agree.'],
  },
  'weights-as-vectors': {
    title: 'Weights as vectors',
    short: 'An unbalance, a clamp, and what is left; then four runs and their circles.',
    about: [
      'An unbalance has a size and a direction, and a clamp has both too. Together they make what an arrow of one laid on the tip of the other makes. Perfect balance is when the arrows close.',
      'A technician sees only how much it shakes, not where. Four runs are enough: as found, then with one weight at three places. Around each place a circle is drawn with the level read there as its radius. Where the three meet, the weight belongs.',
    ],
    tryThis: [
      'Move the clamp until nothing is left, then compare with what the circles say.',
      'Add reading error: the circles no longer meet in one point.',
    ],
    sources: [
      'ISO 21940-11:2016 for the grades of balance.',
      'Circles: I. J. Somervaille, Engineering (London), 1954 (from memory). With phase: T. P. Goodman, ASME J. Eng. Ind. 86, 1964 (from memory).',
      'Rejecting runs whose consistency is outside 0.8 to 1.2: common practice, no source.',
    ],
  },
  'build-a-fault': {
    title: 'Build a fault',
    short: 'A faulty vehicle for the class: hand out its recording, keep the answer sealed.',
    about: [
      'Choose a vehicle and a fault, or let chance choose so that you do not know either. The recording has the road, the normal small orders and the sensor in it, as a real one has.',
      'Hand out the recording and the job file. The answer goes into a file of its own, locked with a word you choose, to be opened when the class has made up its mind.',
    ],
    tryThis: [],
    sources: [
      'Road: ISO 8608:2016. Body and suspension, faults and sensor: the same simulation the program is tested with.',
    ],
  },
} as const;

export const lessonTexts = {
  title: 'Lessons',
  lead: 'Seven small experiments for a class. Every picture is worked out just as a recording is judged.',
  all: 'All lessons',
  previous: 'Previous',
  next: 'Next',
  about: 'What it is about',
  between: 'From lesson to lesson',
  tryThis: 'Try this',
  sources: 'Sources',
  figures: 'What the numbers say',
  numbers: 'Numbers behind this picture',
  controls: 'Controls',
  lessons,
  units: { mph: 'mph', kmh: 'km/h', rpm: 'rpm' },
  turn: {
    angle: 'Shaft angle',
    step: 'Turn 15°',
    back: 'Back 15°',
    run: 'Let it turn',
    stop: 'Stop',
  },
  ...lessonControls,
} as const;
