/** Checks of tones that follow no turning part. */
import type { Check } from './check.ts';

export const fixedChecks: readonly Check[] = [
  {
    id: 'tap-test',
    title: 'Tap and listen for the tone',
    kind: 'measurement',
    how: [
      'Standing, everything off: record while tapping body, frame, seat rail and exhaust with a soft mallet.',
      'If a tap brings out the tone of the complaint, what you tapped swings at it.',
    ],
    limit: 'Within 5 % of the tone (common practice, no source)',
    fine: 'No tap brings out the tone.',
    wrong: 'A tap brings out the tone.',
    cautions: ['hot-parts'],
  },
  {
    id: 'panel-press',
    title: 'Press on panels and load',
    kind: 'run',
    how: [
      'While the tone is there, a second person, belted, presses on the trim and load in reach of the seat, one after another.',
      'Shields and what hangs below: standing, engine off and cold, push each by hand and look for rub marks.',
    ],
    limit: null,
    fine: 'Pressing on panels changes nothing.',
    wrong: 'Pressing on one place stops the tone.',
    cautions: ['road-test', 'hot-parts'],
  },
  {
    id: 'sensor-remount',
    title: 'Mount the sensor anew, in another place',
    kind: 'swap',
    how: [
      'Screw, clamp or tape the sensor hard to the seat rail or another stiff place, cable tied down.',
      'Record again. If the tone moves or goes, it was the sensor’s own.',
    ],
    limit: null,
    fine: 'The tone stays with the sensor mounted anew.',
    wrong: 'The tone moves or goes with the sensor mounted anew.',
    cautions: ['road-test'],
  },
  {
    id: 'fans-off',
    title: 'Fans, blower and pumps off',
    kind: 'run',
    how: [
      'Record at the same place and speed with blower and air conditioning off, and the cooling fan not running.',
      'If the tone goes, switch them on again one by one.',
    ],
    limit: null,
    fine: 'The tone stays with fans and pumps off.',
    wrong: 'The tone goes with fans or pumps off.',
    cautions: ['road-test', 'hot-parts'],
  },
  {
    id: 'pumps-off',
    title: 'Electric pumps on and off, one by one',
    kind: 'run',
    how: [
      'Standing, ignition on and engine off: record, and switch each pump on and off by scan tool where it can command it.',
      'Else listen at each pump with a probe, engine running, for the one that hums at the tone.',
      'If the tone comes and goes with a pump, it is that pump.',
    ],
    limit: null,
    fine: 'The tone goes with none of the electric pumps.',
    wrong: 'The tone comes and goes with one of the electric pumps.',
    cautions: ['standing-engine', 'turning-parts', 'fuel-system', 'hot-parts'],
  },
  {
    id: 'still-recording',
    title: 'Record with the vehicle standing and all off',
    kind: 'run',
    how: [
      'Record for a minute in the same place with engine and ignition off. If the tone is still there, it comes from outside the vehicle.',
    ],
    limit: null,
    fine: 'With all off the tone is gone.',
    wrong: 'With all off the tone is still there.',
    cautions: [],
  },
];
