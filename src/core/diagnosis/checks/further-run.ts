/** Further runs: the same vehicle in another condition tells apart what follows road, engine, torque or nothing. */
import type { Check } from './check.ts';
import { burnsFuel, drivesFront } from './on-vehicle.ts';

export const runChecks: readonly Check[] = [
  {
    id: 'run-other-gear',
    title: 'Same road speed in another gear',
    kind: 'run',
    applies: burnsFuel,
    how: [
      'Hold the road speed of the complaint in the next gear up or down and record for a minute.',
      'Enter the gear or engine speed with the run. If the shake follows the engine, look at the engine; if it stays, at shaft and wheels.',
    ],
    limit: null,
    fine: 'In another gear the frequency stayed where it was: it follows the road.',
    wrong: 'In another gear the frequency moved: it follows the engine.',
    cautions: ['road-test'],
  },
  {
    id: 'run-other-speed',
    title: 'Another road speed in the same gear',
    kind: 'run',
    how: [
      'Record for a minute at a steady speed a fifth lower or higher, for instance 50 mph beside 62 mph.',
      'If the frequency stays where it was, nothing that turns with the wheels makes it.',
    ],
    limit: null,
    fine: 'At another speed the frequency moved along.',
    wrong: 'At another speed the frequency stayed where it was.',
    cautions: ['road-test'],
  },
  {
    id: 'run-neutral',
    title: 'Same road speed, coasting in neutral',
    kind: 'run',
    applies: burnsFuel,
    how: [
      'Drive a little faster than the speed of the complaint, shift to neutral, and record while coasting through it.',
      'If the shake goes, or falls to two thirds or less, it needs the engine or its torque.',
    ],
    limit: null,
    fine: 'The shake stays when coasting in neutral.',
    wrong: 'The shake goes or drops when coasting in neutral.',
    cautions: ['road-test', 'neutral-coast'],
  },
  {
    id: 'run-pull-coast',
    title: 'Pull, then coast, through the same speed',
    kind: 'run',
    how: [
      'Record pulling firmly through the speed of the complaint, then coasting through it in gear.',
      'If it is at least half as strong again on pull, it needs torque.',
    ],
    limit: null,
    fine: 'The level is about the same on pull and on coast.',
    wrong: 'The level is clearly higher on pull than on coast.',
    cautions: ['road-test'],
  },
  {
    id: 'run-standing',
    title: 'Standing, engine held at the same speed',
    kind: 'run',
    applies: burnsFuel,
    how: [
      'Standing in neutral or park, hold the engine speed of the complaint for half a minute and record.',
      'If the shake is there, look at the engine and what turns with it.',
    ],
    limit: null,
    fine: 'Standing with the engine at the same speed the shake is absent.',
    wrong: 'Standing with the engine at the same speed the shake is there.',
    cautions: ['standing-engine', 'turning-parts'],
  },
  {
    id: 'run-front-shaft-rests',
    title: 'Same speed with the front driveshaft at rest',
    kind: 'run',
    applies: drivesFront,
    how: [
      'Where the vehicle has it: two-wheel drive, front hubs or axle released, and record at the speed of the complaint.',
      'Else, only where the maker allows the vehicle to be driven so: mark and take out the front driveshaft, and record.',
      'If the shake goes, or falls to half or less, it is the front driveshaft’s, or the two axles were wound up against each other.',
    ],
    limit: 'Level fallen to half or less (common practice, no source)',
    fine: 'The shake stays with the front driveshaft at rest.',
    wrong: 'The shake goes with the front driveshaft at rest.',
    cautions: ['road-test', 'hoist', 'shaft-out'],
  },
  {
    id: 'run-braking',
    title: 'Light braking through the same speed',
    kind: 'run',
    how: [
      'From above the speed of the complaint brake lightly and evenly through it, and record.',
      'If it is at least half as strong again under braking, look at the brakes.',
    ],
    limit: null,
    fine: 'Braking does not raise the level.',
    wrong: 'Braking raises the level clearly.',
    cautions: ['road-test', 'brake-test'],
  },
];
