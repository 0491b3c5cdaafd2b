/** Writes the golden files anew: `npm run golden`. Look at what has changed, and say why in the commit. */
import { writeFileSync } from 'node:fs';
import { smallCases } from '../accuracy/small-cases.ts';
import { benchFigures } from './bench-figures.ts';
import { leaves } from './leaves.ts';
import { rankingTable } from './ranking-table.ts';
import { comparisonFigures, figuresOf, PINNED, reportFigures } from './report-figures.ts';
import { vehicleFigures } from './vehicle-figures.ts';

const DIGITS = 9;
const rounded = (_key: string, value: unknown): unknown =>
  typeof value === 'number' ? Number(value.toPrecision(DIGITS)) : value;

const write = (name: string, content: unknown): void =>
  writeFileSync(new URL(`./${name}.json`, import.meta.url), `${JSON.stringify(content, rounded, 1)}\n`);

/** One line a case: lists of hundreds of numbers, which no one reads number by number. */
const writeLists = (name: string, kinds: Readonly<Record<string, readonly (readonly unknown[])[]>>): void => {
  const blocks = Object.entries(kinds).map(
    ([kind, cases]) => `"${kind}": [\n${cases.map((one) => JSON.stringify(one, rounded)).join(',\n')}\n]`,
  );
  writeFileSync(new URL(`./${name}.json`, import.meta.url), `{\n${blocks.join(',\n')}\n}\n`);
};

write('ranking', rankingTable());
writeLists('bench', benchFigures());
writeLists('vehicle', vehicleFigures());
writeLists('small-cases', { reports: (await smallCases()).map(({ report }) => leaves(report && figuresOf(report))) });
write('comparison', await comparisonFigures());
for (const name of PINNED) write(name, await reportFigures(name));
