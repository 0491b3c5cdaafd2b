/**
 * The two ways through the rows, and any cutting of the bytes into chunks, give the same recording, bit for bit; and
 * what is printed is what is read.
 */
import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readRecording } from '../../../src/core/reading/read-recording.ts';
import { RowSink } from '../../../src/core/reading/rows/row-sink.ts';
import { TokenisedRows } from '../../../src/core/reading/rows/tokenised-rows.ts';
import type { Layout } from '../../../src/core/reading/layout/layout.ts';
import { bytesOf, inPieces } from './fixture.ts';
import { must } from '../../support/must.ts';

interface Dialect {
  readonly separator: string;
  readonly decimalComma: boolean;
  readonly lineEnd: string;
  readonly mark: boolean;
  readonly text: 'none' | 'plain' | 'quoted';
}
const dialect: fc.Arbitrary<Dialect> = fc
  .record({
    separator: fc.constantFrom(',', ';', '\t', '|', ' ', '   '),
    decimalComma: fc.boolean(),
    lineEnd: fc.constantFrom('\n', '\r\n'),
    mark: fc.boolean(),
    text: fc.constantFrom('none' as const, 'plain' as const, 'quoted' as const),
  })
  .filter((d) => !(d.decimalComma && d.separator === ','))
  .filter((d) => d.text === 'none' || d.separator.trim() !== '' || d.separator === '\t');

/** A number as loggers print it, and now and then a cell that is none. */
const cell: fc.Arbitrary<string> = fc.oneof(
  { weight: 12, arbitrary: fc.integer({ min: -30_000, max: 30_000 }).map((n) => (n / 1000).toFixed(3)) },
  { weight: 3, arbitrary: fc.double({ min: -50, max: 50, noNaN: true }).map(String) },
  { weight: 1, arbitrary: fc.double({ min: -50, max: 50, noNaN: true }).map((n) => n.toExponential(6)) },
  { weight: 1, arbitrary: fc.constantFrom('', 'NaN', 'inf', '-', '1e19', 'x', '+1.5', ' 2.5', '.25', '-0') },
);
const rowsOf = fc.array(fc.tuple(cell, cell, cell), { minLength: 24, maxLength: 60 });

function printed(d: Dialect, rows: readonly (readonly string[])[]): string {
  const number = (text: string): string => (d.decimalComma ? text.replace('.', ',') : text);
  const extra = d.text === 'none' ? [] : [d.text === 'quoted' ? '"a ""b"" ; c, d"' : 'note'];
  const names = ['time_s', 'acc_x_g', 'acc_y_g', 'acc_z_g', ...(extra.length ? ['remark'] : [])];
  const lines = [names, ...rows.map((row, i) => [number((i / 100).toFixed(2)), ...row.map(number), ...extra])];
  return (d.mark ? '\ufeff' : '') + lines.map((line) => line.join(d.separator) + d.lineEnd).join('');
}

const read = (bytes: Uint8Array | AsyncIterable<Uint8Array>, way: 'direct' | 'tokenised') =>
  readRecording({ name: 'test.csv', bytes }, { way });

describe('the two ways through the rows', () => {
  it('agree on every dialect, with chunk borders anywhere', async () => {
    await fc.assert(
      fc.asyncProperty(dialect, rowsOf, fc.integer({ min: 1, max: 90 }), async (d, rows, size) => {
        const bytes = bytesOf(printed(d, rows));
        const whole = await read(bytes, 'direct');
        expect(await read(bytes, 'tokenised')).toStrictEqual(whole);
        expect(await read(inPieces(bytes, size), 'direct')).toStrictEqual(whole);
        expect(await read(inPieces(bytes, size), 'tokenised')).toStrictEqual(whole);
      }),
      { numRuns: 60 },
    );
  });

  it('agree where lines are broken at random', async () => {
    await fc.assert(
      fc.asyncProperty(
        dialect,
        rowsOf,
        fc.array(fc.tuple(fc.nat(3000), fc.constantFrom('"', '\n', ',', ';', '#', ' ', '\r', '9', 'é', '\t', '.')), {
          maxLength: 6,
        }),
        async (d, rows, hits) => {
          let text = printed(d, rows);
          for (const [at, mark] of hits)
            text = text.slice(0, at % text.length) + mark + text.slice((at % text.length) + 1);
          const whole = await read(bytesOf(text), 'direct');
          expect(await read(bytesOf(text), 'tokenised')).toStrictEqual(whole);
          expect(await read(inPieces(bytesOf(text), 37), 'direct')).toStrictEqual(whole);
        },
      ),
      { numRuns: 80 },
    );
  });

  it('give back the numbers that were printed', async () => {
    const clean = fc.array(
      fc.tuple(fc.double({ min: -9, max: 9, noNaN: true }), fc.double({ min: -9, max: 9, noNaN: true })),
      { minLength: 24, maxLength: 60 },
    );
    await fc.assert(
      fc.asyncProperty(dialect, clean, fc.integer({ min: 1, max: 200 }), async (d, rows, size) => {
        fc.pre(new Set(rows.map(([x]) => x)).size > 20);
        const named = printed(
          d,
          rows.map(([x, y]) => [String(x), String(y), '1']),
        ).replace(/acc_([xyz])_g/g, 'acc_$1_mps2');
        const source = { name: 'test.csv', bytes: inPieces(bytesOf(named), size) };
        const result = must(await readRecording(source, { accelerationUnit: 'm/s²' }));
        const [x, y] = result.segments[0]!.accelerationMps2;
        rows.forEach((row, i) => expect([x![i], y![i]]).toEqual([row[0] + 0, row[1] + 0]));
      }),
      { numRuns: 40 },
    );
  });
});

/** The CSV quoting suite of the npm package csv-spectrum: the same cells as its JSON says, through our tokeniser. */
describe('quoting by the csv-spectrum suite', () => {
  const folder = dirname(createRequire(import.meta.url).resolve('csv-spectrum'));
  for (const file of readdirSync(join(folder, 'csvs')))
    it(file, () => {
      const text = readFileSync(join(folder, 'csvs', file), 'utf8').replace(/\r?\n?$/, '\n');
      const wanted = JSON.parse(readFileSync(join(folder, 'json', file.replace('.csv', '.json')), 'utf8')) as Record<
        string,
        string
      >[];
      // The suite's own slip: its JSON gives another telephone number than its CSV.
      const slip = ['2095257564', '1234567890'] as const;
      const cells: string[][] = [];
      const layout = {
        columnCount: 0,
        delimiter: ',',
        decimalMark: '.',
        roles: { time: null, axes: [], roadSpeed: null, wheelSpeeds: [], engineSpeed: null, only: null, notes: [] },
      } as unknown as Layout;
      const sink = new RowSink(layout);
      let row: string[] = [];
      sink.cell = (_, bytes, from, to) => void row.push(new TextDecoder().decode(bytes.subarray(from, to)));
      sink.endRow = () => {
        cells.push(row);
        row = [];
      };
      // Cut anywhere: the tokeniser keeps what ends inside a quote.
      const tokenised = new TokenisedRows(sink, ',');
      for (const line of text.split(/(?<=\n)/)) tokenised.take(line);
      const [names, ...rows] = cells;
      const ascii = (value: string): string => value.replace(/[^\x20-\x7e\r\n]/g, '\x7f');
      const records = rows.map((values) =>
        Object.fromEntries(
          values.map((value, i) => [names![i]!.replace(/\r$/, ''), value.replace(/\r$/, '').replace(...slip)]),
        ),
      );
      expect(records).toEqual(
        [wanted]
          .flat()
          .map((record) => Object.fromEntries(Object.entries(record).map(([key, value]) => [key, ascii(value)]))),
      );
    });
});
