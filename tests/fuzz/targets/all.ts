import type { Target } from '../target.ts';
import { analysis } from './analysis.ts';
import { damage } from './damage.ts';
import { job } from './job.ts';
import { quantities } from './quantity.ts';
import { large } from './large.ts';
import { reader } from './reader.ts';
import { tire } from './tire.ts';
import { truncation } from './truncation.ts';
import { wide } from './wide.ts';
import { words } from './words.ts';

export const targets: readonly Target[] = [
  reader,
  truncation,
  damage,
  job,
  tire,
  quantities,
  words,
  analysis,
  wide,
  large,
];
