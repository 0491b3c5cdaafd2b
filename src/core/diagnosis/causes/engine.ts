/** Engine orders: a weak cylinder at half orders, rotating parts at 1×, firing that reaches the body. */
import type { CaseContext, FindingBasis } from '../evidence/case.ts';
import type { Cause } from './cause.ts';
import { both, burnsFuel, isHalfOrder } from '../evidence/where.ts';

const engine: Cause['applies'] = (basis) =>
  basis.part === 'engine' && basis.role !== 'mesh' && basis.role !== 'electric';
const firing: Cause['applies'] = (basis, context) =>
  both(engine, burnsFuel)(basis, context) && isFiring(basis, context);
const halfOrder: Cause['applies'] = (basis, context) =>
  both(engine, burnsFuel)(basis, context) && isHalfOrder(basis.order) && !isFiring(basis, context);
const once: Cause['applies'] = (basis, context) => both(engine, burnsFuel)(basis, context) && basis.order === 1;

function isFiring({ role, order }: FindingBasis, { vehicle }: CaseContext): boolean {
  return role === 'firing' || (vehicle.cylinders !== undefined && order === vehicle.cylinders / 2);
}

/** Engines whose second-order (fours) or first-order (threes) shake a balance shaft cancels. */
const balanceShaftOrder: Cause['applies'] = (basis, context) =>
  both(engine, burnsFuel)(basis, context) &&
  ((context.vehicle.cylinders === 4 && basis.order === 2) || (context.vehicle.cylinders === 3 && basis.order === 1));

export const engineCauses: readonly Cause[] = [
  {
    id: 'misfire-ignition',
    title: 'Misfire: ignition of one cylinder',
    why: 'A cylinder fires once in two turns; when it does not, the engine stumbles at half its turning speed.',
    repair: 'Replace the plug, coil or lead that the fault follows, and look for oil or water in the plug well.',
    applies: halfOrder,
    reasons: {
      'found-pulling': 'ignition fails first under load',
      'half-orders-too': 'one missed pulse makes all half orders',
    },
  },
  {
    id: 'misfire-fuel',
    title: 'Misfire: fuel of one cylinder',
    why: 'An injector that gives too little or too much makes one cylinder weaker than its neighbors, once in two turns.',
    repair: 'Test the injector and its wiring, clean or replace it, and check fuel pressure.',
    applies: halfOrder,
    reasons: { 'half-orders-too': 'one weak pulse makes all half orders' },
  },
  {
    id: 'misfire-compression',
    title: 'Misfire: low compression or a valve fault',
    why: 'A cylinder that does not seal pushes less, once in two turns; so does one valve that does not open fully.',
    repair: 'Find the leak (valve, ring or gasket) by leak-down test and repair the engine.',
    applies: halfOrder,
    reasons: { 'half-orders-too': 'one weak pulse makes all half orders' },
  },
  {
    id: 'flexplate-or-converter',
    title: 'Flexplate, converter or clutch off center or out of balance',
    why: 'The parts bolted to the crankshaft turn with it and pull once a turn, in gear or standing.',
    repair:
      'Check for cracks and a lost weight, re-index or replace the converter or clutch cover, and seat the pilot.',
    applies: once,
    reasons: {
      'firing-low': 'a heavy spot shakes at 1× alone',
      'square-with-speed': 'a heavy spot pulls with the square of speed',
      'transmission-removed': 'converter and flexplate were parted and joined again',
      'run-standing': 'it turns with the engine, whether the vehicle moves or not',
    },
  },
  {
    id: 'crank-damper',
    title: 'Crankshaft damper or pulley slipped or out of balance',
    why: 'When the rubber of the damper lets go its ring moves off center and pulls once a turn.',
    repair: 'Replace the damper.',
    applies: once,
    reasons: {
      'firing-low': 'a heavy spot shakes at 1× alone',
      'square-with-speed': 'a heavy spot pulls with the square of speed',
      'run-standing': 'it turns with the engine, whether the vehicle moves or not',
    },
  },
  {
    id: 'engine-mount',
    title: 'Collapsed or wrongly set engine or motor mount',
    why: 'A mount that has gone hard, collapsed or been tightened in a twist, or an active mount that has failed, passes the power unit’s normal shake to the body.',
    repair: 'Replace the mount, loosen all mounts, let the power unit settle, and tighten them to the maker’s torque.',
    applies: (basis, context) => basis.part === 'engine' && !halfOrder(basis, context),
    reasons: {
      'firing-too': 'what reaches the body past a mount is the firing first of all',
      'firing-low': 'a mount that passes 1× would pass the firing too',
    },
  },
  {
    id: 'exhaust-grounded',
    title: 'Exhaust touches the body or is mounted in strain',
    why: 'An exhaust pipe that touches, or hangers pulled tight, carry the firing pulses past the mounts into the body.',
    repair: 'Find the shiny spot, free the exhaust, and let it hang without strain, warm and cold.',
    applies: (basis, context) => both(engine, burnsFuel)(basis, context) && !halfOrder(basis, context),
    reasons: {
      heard: 'a grounded exhaust drones',
      'firing-low': 'an exhaust that touches carries the firing first of all',
      'exhaust-changed': 'new parts hang differently',
    },
  },
  {
    id: 'lugging',
    title: 'Engine lugging: too high a gear for the load',
    why: 'At low engine speed and high load each firing stroke is a heavy push that the driveline passes on.',
    repair:
      'Show the driver a lower gear; where gear or axle ratio or tire size was changed, correct the shift or lock-up speed.',
    applies: firing,
    reasons: {
      'low-engine-speed': 'lugging comes at low engine speed under load',
      'engine-speed-not-low': 'at this engine speed the engine does not lug',
      'found-pulling': 'lugging needs load',
    },
  },
  {
    id: 'converter-shudder',
    title: 'Lock-up clutch of the converter shudders',
    why: 'A lock-up clutch that grips and slips passes the firing pulses on in bursts.',
    repair: 'Check fluid and its condition, change it by the maker’s procedure, then test or replace the converter.',
    applies: (basis, context) => firing(basis, context) && context.vehicle.converter !== false,
    reasons: {
      'found-pulling': 'shudder comes under light pull with lock-up closed',
      'lockup-off': 'with lock-up open its clutch cannot shudder',
    },
  },
  {
    id: 'dual-mass-flywheel',
    title: 'Dual-mass flywheel or clutch damper worn',
    why: 'Springs between engine and gearbox take up the firing pulses; worn or broken, they pass them on, most of all when pulling from low speed.',
    repair:
      'Measure free play and rock of the flywheel against the maker’s figures, and replace flywheel and clutch disc together.',
    applies: (basis, context) => firing(basis, context) && context.vehicle.converter !== true,
    reasons: {
      'low-engine-speed': 'the springs have most to do at low engine speed',
      'found-pulling': 'the springs work under load',
      'transmission-removed': 'flywheel or disc may have been changed then',
    },
  },
  {
    id: 'balance-shaft',
    title: 'Balance shaft out of time',
    why: 'A balance shaft cancels the engine’s own shake; a tooth off, it adds to it.',
    repair: 'Set the balance shaft’s timing marks by the maker’s procedure.',
    applies: balanceShaftOrder,
    reasons: {
      'engine-repaired': 'belt or chain work can leave the shaft a tooth off',
      'square-with-speed': 'inertia grows with the square of engine speed',
    },
  },
];
