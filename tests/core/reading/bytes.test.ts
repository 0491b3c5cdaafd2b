import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { readRecording } from '../../../src/core/reading/read-recording.ts';
import {
  bytesOf,
  codesOf,
  expectShake,
  inPieces,
  PLAIN,
  readText,
  recordingOf,
  sampleG,
  seconds,
  table,
} from './fixture.ts';

const LONG_ROWS = 40_000;
const LONG = bytesOf(
  `time (s),acc x (g),acc y (g),acc z (g)\n${table((i) => [seconds(i), ...sampleG(i)], ',', LONG_ROWS)}`,
);

describe('compressed files', () => {
  it('are known by their first bytes, whatever their name', async () => {
    const packed = new Uint8Array(gzipSync(PLAIN));
    expectShake(await recordingOf(packed, {}, 'test.csv.gz'));
    expectShake(await recordingOf(packed, {}, 'test.txt'));
    const read = await readRecording({ name: 'a.gz', bytes: inPieces(packed, 3) });
    expect(read.ok).toBe(true);
  });

  it('in several members, as some loggers append them, are read through', async () => {
    const lines = PLAIN.split(/(?<=\n)/);
    const packed = Buffer.concat([gzipSync(lines.slice(0, 30).join('')), gzipSync(lines.slice(30).join(''))]);
    expectShake(await recordingOf(new Uint8Array(packed)));
  });

  it('in UTF-16 inside are read too', async () => {
    expectShake(await recordingOf(new Uint8Array(gzipSync(Buffer.from(`\ufeff${PLAIN}`, 'utf16le')))));
  });

  it('that break off give what could be unpacked, and say so', async () => {
    const packed = new Uint8Array(gzipSync(LONG));
    const recording = await recordingOf(packed.slice(0, packed.length >> 1));
    expect(recording.segments[0]!.accelerationMps2[0]!.length).toBeGreaterThan(1000);
    expect(codesOf(recording)).toContain('gzip-cut-short');
    recording.segments[0]!.accelerationMps2[0]!.forEach((value, i) => {
      if (Math.abs(value - sampleG(i)[0] * 9.80665) > 1e-9) throw new Error(`row ${i} is wrong`);
    });
  });

  it('with damage inside never end in a crash', async () => {
    const packed = new Uint8Array(gzipSync(PLAIN));
    for (let at = 0; at < packed.length; at += 7) {
      const hurt = packed.slice();
      hurt[at] = hurt[at]! ^ 0x55;
      const read = await readText(hurt);
      if (!read.ok) expect(read.problem.message).not.toBe('');
    }
  });
});

describe('a file in chunks', () => {
  it('reads as one in a piece, and tells how far it is', async () => {
    const told: number[] = [];
    const read = await readRecording(
      { name: 'long.csv', bytes: inPieces(LONG, 10_000), sizeBytes: LONG.length },
      {},
      (fraction) => told.push(fraction),
    );
    expect(read.ok && read.value.segments[0]!.accelerationMps2[0]!.length).toBe(LONG_ROWS);
    expect(told.length).toBeGreaterThan(50);
    expect(told.at(-1)).toBe(1);
    for (let i = 1; i < told.length; i++) expect(told[i]).toBeGreaterThanOrEqual(told[i - 1]!);
  });

  it('tells its progress by compressed bytes', async () => {
    const packed = new Uint8Array(gzipSync(LONG));
    const told: number[] = [];
    await readRecording(
      { name: 'long.csv.gz', bytes: inPieces(packed, 5000), sizeBytes: packed.length },
      {},
      (fraction) => told.push(fraction),
    );
    expect(told.at(-1)).toBe(1);
  });

  it('stops when it is told to, and lets the source go', async () => {
    const stop = new AbortController();
    let given = 0;
    let closed = false;
    async function* endless(): AsyncGenerator<Uint8Array> {
      try {
        for (;;) {
          if (++given === 20) stop.abort();
          yield given === 1 ? LONG.slice(0, 1000) : bytesOf('9.99,0.1,0.2,1.0\n'.repeat(50));
        }
      } finally {
        closed = true;
      }
    }
    const read = await readRecording({ name: 'endless.csv', bytes: endless() }, { signal: stop.signal });
    expect(!read.ok && read.problem.code).toBe('cancelled');
    expect(given).toBeLessThan(30);
    expect(closed).toBe(true);
  });

  it('with a line that never ends is given up after a few megabytes, not held', async () => {
    let given = 0;
    async function* oneLine(): AsyncGenerator<Uint8Array> {
      yield LONG.slice(0, LONG.lastIndexOf(10) + 1);
      const chunk = new Uint8Array(1 << 16).fill(49);
      for (; given < 16_384; given++) yield chunk;
    }
    const read = await readRecording({ name: 'line.csv', bytes: oneLine() });
    expect(given).toBeLessThan(100);
    expect(read.ok && codesOf(read.value)).toContain('line-too-long');
    async function* onlyLine(): AsyncGenerator<Uint8Array> {
      for (given = 0; given < 16_384; given++) yield new Uint8Array(1 << 16).fill(49);
    }
    const refused = await readRecording({ name: 'line.csv', bytes: onlyLine() });
    expect(!refused.ok && refused.problem.code).toBe('line-too-long');
    expect(given).toBeLessThan(100);
  });
});
