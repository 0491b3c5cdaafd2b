/** What parts and joints of a driveline are called: by where they are, so that nobody has to count. */
import type { ShaftReading } from '../measurement.ts';

type Shafts = readonly ShaftReading[];

/** A front axle's driveshaft, whose pinion is its front end. */
export const isFrontShaft = (shafts: Shafts): boolean => shafts[0]?.part === 'pinion';

/** The end of a pinion that is called its nose: it points at the driveshaft. */
export const noseEnd = (shafts: Shafts): 'front' | 'rear' => (isFrontShaft(shafts) ? 'rear' : 'front');

/** 'transmission', 'shaft', 'shaft piece 2', 'pinion'. */
export const partName = (shafts: Shafts, index: number): string => {
  const part = shafts[index]?.part ?? 'shaft';
  const pieces = shafts.filter((shaft) => shaft.part === 'shaft').length;
  if (part !== 'shaft') return part.replace('-', ' ');
  return pieces === 1 ? 'shaft' : `shaft piece ${shafts.slice(0, index + 1).filter((one) => one.part === part).length}`;
};

/** 'joint at the transfer case', 'joint at the pinion', 'joint between shaft piece 1 and shaft piece 2'. */
export const jointName = (shafts: Shafts, index: number): string => {
  const ends = [index, index + 1].filter((end) => shafts[end] !== undefined && shafts[end].part !== 'shaft');
  return ends.length === 1
    ? `joint at the ${partName(shafts, ends[0]!)}`
    : `joint between ${partName(shafts, index)} and ${partName(shafts, index + 1)}`;
};

/** What carries the end that drives the shaft. */
export const mountName = (shafts: Shafts): 'transmission mount' | 'transfer case mount' =>
  shafts.some(({ part }) => part === 'transfer-case') ? 'transfer case mount' : 'transmission mount';

/** Parts of a driveline between two joints or more that were not read. */
export const partsNotRead = (shafts: Shafts): ('transmission' | 'shaft' | 'pinion')[] => {
  const has = (...parts: readonly ShaftReading['part'][]) => shafts.some(({ part }) => parts.includes(part));
  return [
    ...(has('transmission', 'transfer-case') ? [] : (['transmission'] as const)),
    ...(has('shaft') ? [] : (['shaft'] as const)),
    ...(has('pinion') ? [] : (['pinion'] as const)),
  ];
};
