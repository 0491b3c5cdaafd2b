/** Options of `npm run accuracy`. */
import { parseArgs } from 'node:util';
import type { Family } from './case.ts';
import { FAMILIES } from './case.ts';

export interface Options {
  readonly families: readonly Family[];
  readonly cases: number;
  readonly seed: number;
  readonly jobs: number;
  readonly lean: boolean;
  /** List the cases that went wrong. */
  readonly misses: boolean;
  /** Only this case of each family, by number. */
  readonly only: number | null;
  /** Only write the cases out, for the comparison in Python. */
  readonly write: string | null;
  readonly json: boolean;
  readonly help: boolean;
  /** Share of a process: its number and how many there are. */
  readonly part: readonly [number, number];
  readonly normalLevel: number;
  readonly otherRamps: boolean;
}

export const USAGE = `npm run accuracy -- [options]
  --family NAME     one family (may be repeated); all: ${FAMILIES.join(', ')}
  --cases N         cases per family (50)
  --seed S          other cases (1)
  --jobs N          processes (1)
  --misses          list the cases that went wrong
  --only I          only case number I of each family
  --lean            once more with halved and doubled normal orders and other ramps
  --write DIR       only write the cases out (CSV and JSON), for baseline.py`;

export const readOptions = (args: readonly string[]): Options => {
  const { values } = parseArgs({
    args: [...args],
    options: {
      family: { type: 'string', multiple: true },
      cases: { type: 'string', default: '50' },
      seed: { type: 'string', default: '1' },
      jobs: { type: 'string', default: '1' },
      misses: { type: 'boolean', default: false },
      only: { type: 'string' },
      lean: { type: 'boolean', default: false },
      write: { type: 'string' },
      json: { type: 'boolean', default: false },
      part: { type: 'string', default: '0/1' },
      'normal-level': { type: 'string', default: '1' },
      'other-ramps': { type: 'boolean', default: false },
      help: { type: 'boolean', default: false },
    },
  });
  const known = (name: string): Family => {
    const found = FAMILIES.find((f) => f === name);
    if (found === undefined) throw new Error(`no family ${name}\n${USAGE}`);
    return found;
  };
  const [part, of] = values.part.split('/').map(Number);
  return {
    families: values.family?.map(known) ?? FAMILIES,
    cases: Number(values.cases),
    seed: Number(values.seed),
    jobs: Number(values.jobs),
    lean: values.lean,
    misses: values.misses,
    only: values.only === undefined ? null : Number(values.only),
    write: values.write ?? null,
    json: values.json,
    help: values.help,
    part: [part ?? 0, of ?? 1],
    normalLevel: Number(values['normal-level']),
    otherRamps: values['other-ramps'],
  };
};
