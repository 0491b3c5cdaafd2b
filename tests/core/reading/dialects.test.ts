import { describe, expect, it } from 'vitest';
import { bytesOf, codesOf, expectShake, PLAIN, readText, recordingOf, sampleG, seconds, table } from './fixture.ts';

const comma = (value: string | number): string => String(value).replace('.', ',');
const rowOf = (i: number): (string | number)[] => [seconds(i), ...sampleG(i)];
const HEADER = ['time (s)', 'acc x (g)', 'acc y (g)', 'acc z (g)'];

describe('the way a file writes a table', () => {
  it('reads comma, semicolon, tab and bar as separator', async () => {
    for (const separator of [',', ';', '\t', '|'])
      expectShake(await recordingOf(`${HEADER.join(separator)}\n${table(rowOf, separator)}`));
  });

  it('reads a decimal comma with every separator that leaves it clear', async () => {
    for (const separator of [';', '\t', '|'])
      expectShake(await recordingOf(`${HEADER.join(separator)}\n${table((i) => rowOf(i).map(comma), separator)}`));
  });

  it('reads a decimal comma between commas where the numbers stand in quotes', async () => {
    expectShake(await recordingOf(`${HEADER.join(',')}\n${table((i) => rowOf(i).map((cell) => `"${comma(cell)}"`))}`));
  });

  it('reads columns lined up with blanks, with point and comma', async () => {
    const padded = (i: number): string[] => rowOf(i).map((cell) => String(cell).padStart(10));
    expectShake(await recordingOf(`  time_s   ax_g    ay_g   az_g\n${table(padded, ' ')}`));
    expectShake(await recordingOf(`  time_s   ax_g    ay_g   az_g\n${table((i) => padded(i).map(comma), ' ')}`));
  });

  it('keeps names of two words whole where blanks separate the numbers', async () => {
    expectShake(await recordingOf(`time (s)  acc_x (g)  acc_y (g)  acc_z (g)\n${table(rowOf, '  ')}`));
  });

  it('reads quoted cells and quoted names', async () => {
    expectShake(
      await recordingOf(
        `${HEADER.map((name) => `"${name}"`).join(',')}\n${table((i) => rowOf(i).map((cell) => `"${cell}"`))}`,
      ),
    );
  });

  it('reads a quoted name with a line end in it', async () => {
    expectShake(await recordingOf(`"time\n(s)","acc x\n(g)","acc y\n(g)","acc z\n(g)"\n${table(rowOf)}`));
  });

  it('reads blanks after the separator', async () => {
    expectShake(await recordingOf(`${HEADER.join(', ')}\n${table(rowOf, ', ')}`));
  });

  it('reads carriage returns, with and without a line feed', async () => {
    expectShake(await recordingOf(PLAIN.replaceAll('\n', '\r\n')));
    expectShake(await recordingOf(PLAIN.replaceAll('\n', '\r')));
  });

  it('reads a byte order mark', async () => {
    expectShake(await recordingOf(`\ufeff${PLAIN}`));
  });

  it('reads UTF-16 in both byte orders, with and without a mark', async () => {
    for (const mark of ['\ufeff', '']) {
      const little = new Uint8Array(new Uint16Array([...`${mark}${PLAIN}`].map((c) => c.charCodeAt(0))).buffer);
      expectShake(await recordingOf(little));
      const big = little.slice();
      for (let i = 0; i < big.length; i += 2) [big[i], big[i + 1]] = [big[i + 1]!, big[i]!];
      expectShake(await recordingOf(big));
    }
  });

  it('reads the one-byte code of old spreadsheets', async () => {
    const text = `Zeit (s);Beschl x (m/s²);Beschl y (m/s²);Beschl z (m/s²)\n${table((i) => [seconds(i), ...sampleG(i).map((v) => (v * 9.80665).toFixed(7))], ';')}`;
    const recording = await recordingOf(Uint8Array.from(text, (c) => c.charCodeAt(0)));
    expect(recording.channels[0]!.columnName).toBe('Beschl x (m/s²)');
    expect(recording.channels[0]!.unit).toBe('m/s²');
  });

  it('skips remarks and free text above the table', async () => {
    const preamble = '# logged on the bench\nDevice: box 3, serial 17\nNote; with, all | marks\n\nRate,100\n';
    expectShake(await recordingOf(`${preamble}${PLAIN}`));
  });

  it('reads a header that begins with a remark sign', async () => {
    for (const sign of ['#', '# ', '% ', '// ']) expectShake(await recordingOf(`# made by a test\n${sign}${PLAIN}`));
  });

  it('skips remarks between the rows', async () => {
    const lines = PLAIN.split('\n');
    lines.splice(20, 0, '# a button was pressed');
    expectShake(await recordingOf(lines.join('\n')));
  });

  it('obeys a first line that declares the separator', async () => {
    expectShake(await recordingOf(`sep=;\n${HEADER.join(';')}\n${table(rowOf, ';')}`));
    expectShake(
      await recordingOf(`"sep=;"\r\n${HEADER.join(';')}\r\n${table((i) => rowOf(i).map(comma), ';', 64, '\r\n')}`),
    );
  });

  it('reads a row of units under the names', async () => {
    expectShake(await recordingOf(`time;acc x;acc y;acc z\ns;g;g;g\n${table(rowOf, ';')}`));
    expectShake(await recordingOf(`time;acc x;acc y;acc z\n[s];[g];[g];[g]\n${table(rowOf, ';')}`));
  });

  it('keeps the names where the first rows hold words for no value', async () => {
    const rows = table(rowOf);
    for (const first of ['-0.02,NaN,NaN,NaN\n-0.01,NaN,NaN,NaN\n', 'NaN,NaN,NaN,NaN\n', 'null,null,null,null\n']) {
      const recording = await recordingOf(`${HEADER.join(',')}\n${first}${rows}`);
      expect(recording.channels.map(({ columnName }) => columnName)).toEqual(HEADER.slice(1));
      expect(recording.channels.map(({ unit }) => unit)).toEqual(['g', 'g', 'g']);
    }
  });

  it('reads a table without a header', async () => {
    const recording = await recordingOf(table(rowOf));
    expectShake(recording);
    expect(recording.channels.map((c) => c.columnName)).toEqual(['column 2', 'column 3', 'column 4']);
    expect(codesOf(recording)).toContain('acceleration-columns-assumed');
  });

  it('reads rows that end with a separator', async () => {
    expectShake(await recordingOf(`${HEADER.join(',')}\n${table((i) => [...rowOf(i), ''])}`));
    expectShake(await recordingOf(`${HEADER.join(',')},\n${table((i) => [...rowOf(i), ''])}`));
    expectShake(await recordingOf(`${HEADER.join(',')},\n${table(rowOf)}`));
  });

  it('reads a first column of row names that has no name itself', async () => {
    expectShake(
      await recordingOf(
        `"time (s)" "acc x (g)" "acc y (g)" "acc z (g)"\n${table((i) => [`"${i + 1}"`, ...rowOf(i)], ' ')}`,
      ),
    );
    expectShake(await recordingOf(`,${HEADER.join(',')}\n${table((i) => [i, ...rowOf(i)])}`));
  });

  it('takes "9,81" line by line as one column with a decimal comma', async () => {
    const recording = await recordingOf(
      table((i) => [comma((9.81 + 0.3 * Math.sin(i)).toFixed(2))], ';'),
      { samplingRateHz: 100 },
    );
    expect(recording.channels).toHaveLength(1);
    expect(recording.segments[0]!.accelerationMps2[0]![0]).toBe(9.81);
  });

  it('reads grouped thousands where the grouping is strict', async () => {
    const grouped = (i: number): string =>
      i < 100 ? `"${i * 10}.0"` : `"1,${String(i * 10 - 1000).padStart(3, '0')}.0"`;
    const recording = await recordingOf(
      `time (ms),acc x (g),acc y (g),acc z (g)\n${table((i) => [grouped(i), ...sampleG(i)], ',', 150)}`,
    );
    expectShake(recording, 150);
  });

  it('leaves out a last line without a line end, and says so', async () => {
    const cut = PLAIN.slice(0, -3);
    const recording = await recordingOf(cut);
    expectShake(recording, 63);
    expect(codesOf(recording)).toContain('last-line-unfinished');
  });

  it('keeps such a line where a further cell proves its numbers whole', async () => {
    const text = `time (s),acc x (g),acc y (g),acc z (g),remark\n${table((i) => [...rowOf(i), 'ok'])}`;
    expectShake(await recordingOf(text.slice(0, -2)));
  });

  it('never lets a cut anywhere in a small file change a number without leaving it out', async () => {
    const bytes = bytesOf(PLAIN);
    for (let length = 0; length < bytes.length; length += length < bytes.length - 100 ? 13 : 1) {
      const read = await readText(bytes.slice(0, length));
      if (!read.ok) continue;
      read.value.segments[0]!.accelerationMps2.forEach((axis, k) =>
        axis.forEach((value, i) => {
          if (Math.abs(value - sampleG(i)[k]! * 9.80665) > 1e-9) throw new Error(`cut at ${length} changed row ${i}`);
        }),
      );
    }
  });
});
