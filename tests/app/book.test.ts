import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { packJob, unpackJob } from '../../src/app/book/archive.ts';
import {
  rowsOf,
  searchRows,
  subtitleOf,
  titleOf,
  unusableOf,
  vehiclesWithHistory,
} from '../../src/app/book/book-list.ts';
import { HISTORY_NAME, writeHistory } from '../../src/app/book/history-file.ts';
import { dateText } from '../../src/app/book/dates.ts';
import type { StoredJob } from '../../src/app/book/stored-job.ts';
import { checkStored, documentOf, RECORD_SCHEMA, storedOf } from '../../src/app/book/stored-job.ts';
import type { JobEvent } from '../../src/app/book/timeline.ts';
import { addEvents, eventOfAnswer, eventsOfChange } from '../../src/app/book/timeline.ts';
import { crc32 } from '../../src/app/files/crc32.ts';
import { packZip, unpackZip } from '../../src/app/files/zip.ts';
import { emptyDocument } from '../../src/app/form/document.ts';
import { writeJob } from '../../src/core/job/job-file.ts';
import { report } from './fixture.ts';
import { must } from '../support/must.ts';

const job = { ...emptyDocument().job, title: 'Job 114', complaint: 'hums', runs: [{ file: 'a.csv' }] };
const document = { ...emptyDocument(), job, recordings: { 'a.csv': 'id-a' } };

function makeStored(id: string, change: Partial<StoredJob> = {}, vehicle = 'work truck'): StoredJob {
  const named = { ...document, job: { ...job, vehicle: { ...job.vehicle, description: vehicle } } };
  return { ...storedOf({ id, revision: 1, createdMs: 1, updatedMs: 2, events: [] }, named), ...change };
}

describe('a job in the list', () => {
  const rowOf = (change: object) => {
    const named = { ...document, job: { ...job, ...change } };
    const stored = storedOf({ id: 'a', revision: 1, createdMs: 1, updatedMs: 2, events: [] }, named);
    return { row: rowsOf([{ kind: 'job', job: stored }])[0]!, title: titleOf(stored) };
  };
  const vehicle = { ...job.vehicle, description: 'work truck' };

  it('has its own name, with vehicle and complaint under it', () => {
    const { row, title } = rowOf({ vehicle });
    expect([row.title, title, subtitleOf(row)]).toEqual(['Job 114', 'Job 114', 'work truck · “hums”']);
  });

  it('is called by its vehicle and its beginning where nobody named it, which is then not said twice', () => {
    const { row, title } = rowOf({ title: '', vehicle });
    const name = `work truck, ${dateText(1)}`;
    expect([row.title, title, subtitleOf(row)]).toEqual([name, name, '“hums”']);
    expect(row.vehicle).toBe('work truck');
  });

  it('is called by its first recording where the vehicle has no name either', () => {
    const { row, title } = rowOf({ title: ' ' });
    const name = `a.csv, ${dateText(1)}`;
    expect([row.title, title, subtitleOf(row)]).toEqual([name, name, '“hums”']);
  });

  it('is a new job of its date where nothing is known', () => {
    expect(rowOf({ title: '', runs: [] }).title).toBe(`New job, ${dateText(1)}`);
  });
});

describe('zip', () => {
  it('has the check value of CRC-32: 123456789 gives cbf43926', () => {
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
  });

  it('gives back what was packed, whatever the bytes and names', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(
          fc.record({ name: fc.string({ minLength: 1, maxLength: 12 }), bytes: fc.uint8Array({ maxLength: 400 }) }),
          {
            maxLength: 4,
          },
        ),
        async (files) => {
          const named = files.map(({ name, bytes }, at) => ({
            name: `${at}${name}x`,
            blob: new Blob([new Uint8Array(bytes)]),
          }));
          const back = must(await unpackZip(await packZip(named)));
          expect(back.map(({ name }) => name)).toEqual(named.map(({ name }) => name));
          for (const [at, { blob }] of back.entries()) {
            expect(new Uint8Array(await blob.arrayBuffer())).toEqual(new Uint8Array(files[at]!.bytes));
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  it('is read by another program: Python’s zipfile, where there is one', async () => {
    const path = join(mkdtempSync(join(tmpdir(), 'perrev-zip-')), 'a.zip');
    const packed = await packZip([{ name: 'täst.csv', blob: new Blob(['t,x\n0,1\n']) }]);
    writeFileSync(path, Buffer.from(await packed.arrayBuffer()));
    // Node has no zip reader; its inflate and a reading of the header by the specification's offsets is the judge.
    const bytes = readFileSync(path);
    const nameLength = bytes.readUInt16LE(26);
    const packedSize = bytes.readUInt32LE(18);
    expect(bytes.subarray(30, 30 + nameLength).toString()).toBe('täst.csv');
    expect(inflateRawSync(bytes.subarray(30 + nameLength, 30 + nameLength + packedSize)).toString()).toBe('t,x\n0,1\n');
    expect(pythonZipTest(path)).toMatch(/ok|no python/u);
  });

  it('refuses a cut, flipped or foreign file without throwing', async () => {
    const packed = new Uint8Array(
      await (await packZip([{ name: 'a', blob: new Blob(['hello hello hello']) }])).arrayBuffer(),
    );
    for (let length = 0; length < packed.length; length += 3) {
      expect((await unpackZip(new Blob([packed.slice(0, length)]))).ok).toBe(false);
    }
    const flipped = packed.slice();
    flipped[33]! ^= 0xff;
    expect((await unpackZip(new Blob([flipped]))).ok).toBe(false);
    expect((await unpackZip(new Blob(['t,x,y,z\n0,0,0,1\n']))).ok).toBe(false);
  });
});

/** A second opinion on the archive: 'ok' from zipfile.testzip, or 'no python' where it is not installed. */
function pythonZipTest(path: string): string {
  try {
    const script = 'import sys,zipfile; print("ok" if zipfile.ZipFile(sys.argv[1]).testzip() is None else "bad")';
    return execFileSync('python3', ['-c', script, path], { encoding: 'utf8' }).trim();
  } catch (error) {
    return (error as { code?: string }).code === 'ENOENT' ? 'no python' : 'bad';
  }
}

describe('a job as one file', () => {
  const recordings = [
    { name: 'a.csv', blob: new Blob(['1']) },
    { name: 'other.csv', blob: new Blob(['2']) },
  ];
  const events: JobEvent[] = [
    { kind: 'begun', atMs: 1 },
    { kind: 'recorded', atMs: 2, file: 'a.csv', stage: 'complaint' },
    { kind: 'answered', atMs: 3, sentence: 'Tire 1×.' },
    { kind: 'measured', atMs: 4, what: 'runout' },
    { kind: 'compared', atMs: 4, sentence: 'Tire 1× is gone.' },
    { kind: 'noted', atMs: 5, text: '<b>wheels</b> balanced' },
  ];

  it('holds the job file and its recordings, and no others', async () => {
    const archive = await packJob(job, recordings, []);
    expect(archive.name).toBe('Job 114.perrev.zip');
    const inside = await unpackJob(archive.blob);
    expect(inside.ok && inside.value.files.map(({ name }) => name)).toEqual(['Job 114.job.json', 'a.csv']);
  });

  it('brings its history along', async () => {
    const inside = await unpackJob((await packJob(job, recordings, events)).blob);
    expect(inside.ok && inside.value).toMatchObject({ events, remark: null });
  });

  it('opens without a history where it is of before there was one', async () => {
    const old = await packZip([{ name: 'Job 114.job.json', blob: new Blob([writeJob(job)]) }]);
    const inside = await unpackJob(old);
    expect(inside.ok && inside.value).toMatchObject({ events: [], remark: null });
  });

  it.each([
    ['torn', '{"format": "perrev-history", "version": 1, "events": [{"kind": "noted"'],
    ['of a newer version', JSON.stringify({ format: 'perrev-history', version: 2, events: [] })],
    ['with something that is no event', JSON.stringify({ format: 'perrev-history', version: 1, events: [7] })],
    ['with a date that is none', writeHistory([{ kind: 'noted', atMs: 9e15, text: 'x' }])],
    ['with a text that is none', writeHistory([{ kind: 'noted', atMs: 1, text: 3 as unknown as string }])],
    ['with a kind it inherits', writeHistory([{ kind: 'toString', atMs: 1 } as unknown as JobEvent])],
  ])('opens with a remark where its history is %s', async (_, history) => {
    const damaged = await packZip([
      { name: 'Job 114.job.json', blob: new Blob([writeJob(job)]) },
      { name: HISTORY_NAME, blob: new Blob([history]) },
    ]);
    const inside = await unpackJob(damaged);
    expect(inside.ok && inside.value.files).toHaveLength(1);
    expect(inside.ok && inside.value).toMatchObject({ events: [], remark: { code: 'history-damaged' } });
  });
});

describe('records of the job book', () => {
  it('give the document back', () => {
    const stored = makeStored('1');
    expect(checkStored(stored)).toEqual({ ok: true, value: stored });
    expect(documentOf(stored)).toMatchObject({
      ok: true,
      value: { job: { title: 'Job 114' }, recordings: { 'a.csv': 'id-a' } },
    });
  });

  it('of a newer program are told from damaged ones', () => {
    const code = (value: unknown): string | null => {
      const checked = checkStored(value);
      return checked.ok ? null : checked.problem.code;
    };
    expect(code({ ...makeStored('1'), schema: RECORD_SCHEMA + 1 })).toBe('record-newer');
    expect(code({ ...makeStored('1'), jobText: 7 })).toBe('record-damaged');
    expect(code({ ...makeStored('1'), typed: { a: 1 } })).toBe('record-damaged');
    expect(code(null)).toBe('record-damaged');
    expect(code('x')).toBe('record-damaged');
  });

  it('whose job cannot be read are listed as unusable, with the reason', () => {
    const bad = { kind: 'job' as const, job: makeStored('1', { jobText: '{"vehicle":' }) };
    expect(rowsOf([bad])).toEqual([]);
    expect(unusableOf([bad])[0]?.problem.message).toBeTruthy();
  });

  it('are searched by words in any order, and grouped by vehicle', () => {
    const entries = [makeStored('1'), makeStored('2'), makeStored('3', {}, 'van'), makeStored('4', { deletedMs: 9 })];
    const rows = rowsOf(entries.map((stored) => ({ kind: 'job' as const, job: stored })));
    expect(rows).toHaveLength(3);
    expect(searchRows(rows, 'TRUCK 114', null).map(({ id }) => id)).toEqual(['1', '2']);
    expect(searchRows(rows, '', 'van').map(({ id }) => id)).toEqual(['3']);
    expect(vehiclesWithHistory(rows)).toEqual(['work truck']);
  });
});

describe('the timeline', () => {
  it('tells new runs and measurements, and a run that became the proof', () => {
    const before = job;
    const after = {
      ...job,
      runs: [{ file: 'a.csv' }, { file: 'b.csv', stage: 'proof' as const }],
      measurements: [{ kind: 'observation' as const, checkId: 'slip-yoke-play', outcome: 'wrong' as const }],
    };
    expect(eventsOfChange(before, after, 5)).toEqual([
      { kind: 'recorded', atMs: 5, file: 'b.csv', stage: 'proof' },
      { kind: 'measured', atMs: 5, what: 'slip-yoke-play' },
    ]);
    expect(eventsOfChange(after, after, 6)).toEqual([]);
  });

  it('keeps one entry for each subject, the latest, in order of time', () => {
    const first = addEvents([{ kind: 'begun', atMs: 1 }], [{ kind: 'measured', atMs: 2, what: 'rings' }]);
    const second = addEvents(first, [{ kind: 'measured', atMs: 3, what: 'rings' }]);
    expect(second).toEqual([
      { kind: 'begun', atMs: 1 },
      { kind: 'measured', atMs: 3, what: 'rings' },
    ]);
  });

  it('does not tell the same answer twice', () => {
    const event = eventOfAnswer([], report, 1);
    expect(event).toMatchObject({ kind: 'answered', sentence: report.sentence });
    expect(eventOfAnswer([event!], report, 2)).toBeNull();
  });

  it('does not take what was compared for what was diagnosed', () => {
    const answered = eventOfAnswer([], report, 1);
    const compared = eventOfAnswer([answered!], report, 2, 'compared');
    expect(compared).toMatchObject({ kind: 'compared', sentence: report.sentence });
    expect(eventOfAnswer([answered!, compared!], report, 3, 'compared')).toBeNull();
  });
});
