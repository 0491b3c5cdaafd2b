/** Writes the golden files anew: `npm run golden`. Look at what has changed, and say why in the commit. */
import { writeFileSync } from 'node:fs';
import { rankingTable } from './ranking-table.ts';
import { comparisonFigures, PINNED, reportFigures } from './report-figures.ts';

const DIGITS = 9;
const rounded = (_key: string, value: unknown): unknown =>
  typeof value === 'number' ? Number(value.toPrecision(DIGITS)) : value;

const write = (name: string, content: unknown): void =>
  writeFileSync(new URL(`./${name}.json`, import.meta.url), `${JSON.stringify(content, rounded, 1)}\n`);

write('ranking', rankingTable());
write('comparison', await comparisonFigures());
for (const name of PINNED) write(name, await reportFigures(name));
