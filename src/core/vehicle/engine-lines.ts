/** Lines of the parts that turn with the engine: crankshaft orders, firing, accessories; or an electric motor's. */
import { firingOrder } from './firing.ts';
import { lineTemplate } from './line-template.ts';
import type { LineTemplate } from './line-template.ts';
import { counted, positive } from './ratios.ts';
import type { Vehicle } from './vehicle.ts';

/** Half orders above 3 are weak companions of the lower ones; they would only add chance coincidences. */
const LAST_HALF_ORDER = 3;

/** ½, 1, 1½ … 3, whole orders up to firing, firing itself and twice firing. */
const crankOrders = (firing: number | null): number[] => {
  const orders = new Set<number>();
  for (let order = 0.5; order <= LAST_HALF_ORDER; order += 0.5) orders.add(order);
  for (let order = LAST_HALF_ORDER + 1; order <= Math.max(4, firing ?? 0); order += 1) orders.add(order);
  if (firing !== null) orders.add(firing).add(2 * firing);
  return [...orders].sort((a, b) => a - b);
};

const crankTemplates = (vehicle: Vehicle): LineTemplate[] => {
  const firing = firingOrder(vehicle.cylinders);
  return crankOrders(firing).map((order) => {
    const isFiring = firing !== null && (order === firing || order === 2 * firing);
    return lineTemplate('engine', order, 'engine', 1, isFiring ? { role: 'firing' } : {});
  });
};

/** Electrical frequency is pole pairs × motor speed; three-phase torque ripple lies at 6 times that and its multiples. */
const ELECTRICAL_MULTIPLES = [1, 2, 6];

const motorTemplates = (vehicle: Vehicle): LineTemplate[] => {
  const name = 'motor';
  const mechanical = [1, 2];
  const pairs = counted(vehicle.polePairs);
  const electrical = pairs === null ? [] : ELECTRICAL_MULTIPLES.map((multiple) => multiple * pairs);
  return [
    ...mechanical.map((order) => lineTemplate('engine', order, 'engine', 1, { name })),
    ...electrical
      .filter((order) => !mechanical.includes(order))
      .map((order) => lineTemplate('engine', order, 'engine', 1, { name, role: 'electric' })),
  ];
};

const accessoryTemplates = (vehicle: Vehicle): LineTemplate[] =>
  (vehicle.accessories ?? []).flatMap(({ name, ratio }) => {
    const turns = positive(ratio);
    if (turns === null) return [];
    return [lineTemplate('accessory', 1, 'engine', turns, name.trim() === '' ? {} : { name: name.trim() })];
  });

export const engineTemplates = (vehicle: Vehicle): LineTemplate[] => [
  ...(vehicle.layout === 'electric' ? motorTemplates(vehicle) : crankTemplates(vehicle)),
  ...accessoryTemplates(vehicle),
];
