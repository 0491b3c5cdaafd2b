import { describe, expect, it } from 'vitest';
import { csvCell, csvText } from '../../src/app/files/csv-out.ts';
import { safeFileName } from '../../src/app/files/download.ts';
import { splitSentence } from '../../src/app/sheet/split-sentence.ts';
import { distanceInSd, matchSentence } from '../../src/app/sheet/peak-words.ts';
import { speedSentence } from '../../src/app/sheet/run-words.ts';
import { withObservation, withoutObservation } from '../../src/app/sheet/observations.ts';
import { roughTime, secondsLeft } from '../../src/app/start/time-left.ts';
import { freeName, sortFiles } from '../../src/app/state/files.ts';
import { change, redo, startHistory, undo } from '../../src/app/state/history.ts';
import { peaks, report } from './fixture.ts';

describe('undo and redo', () => {
  it('take back and repeat whole changes', () => {
    const first = change(startHistory('a'), 'b', 'x', 0);
    const second = change(first, 'c', 'y', 10);
    expect(undo(second).present).toBe('b');
    expect(undo(undo(second)).present).toBe('a');
    expect(undo(undo(undo(second))).present).toBe('a');
    expect(redo(undo(second)).present).toBe('c');
    expect(redo(second)).toBe(second);
  });

  it('take quick changes to one thing as one step', () => {
    const typed = ['3', '3.', '3.7'].reduce(
      (history, text, at) => change(history, text, 'axle', at * 200),
      startHistory(''),
    );
    expect(undo(typed).present).toBe('');
    const paused = change(typed, '3.73', 'axle', 9000);
    expect(undo(paused).present).toBe('3.7');
  });

  it('forget what was undone once something else is changed', () => {
    const branched = change(undo(change(startHistory('a'), 'b', 'x', 0)), 'c', 'x', 5000);
    expect(redo(branched).present).toBe('c');
  });
});

describe('files', () => {
  it('are told apart by their ending', () => {
    const names = ['a.csv', 'b.job.json', 'c.perrev.zip', 'd.csv.gz', 'e.TXT'];
    const sorted = sortFiles(names.map((name) => new File([], name)));
    expect(sorted.recordings.map(({ name }) => name)).toEqual(['a.csv', 'd.csv.gz', 'e.TXT']);
    expect(sorted.jobs).toHaveLength(1);
    expect(sorted.archives).toHaveLength(1);
  });

  it('with a taken name get a number', () => {
    expect(freeName('a.csv', new Set())).toBe('a.csv');
    expect(freeName('a.csv.gz', new Set(['a.csv.gz', 'a (2).csv.gz']))).toBe('a (3).csv.gz');
    expect(freeName('run', new Set(['run']))).toBe('run (2)');
  });

  it('are saved under a name every system takes', () => {
    expect(safeFileName('Job 114: “hum” <a/b>\n.csv')).toBe('Job 114- “hum” -a-b-.csv');
  });
});

describe('tables as CSV', () => {
  it('make cells that begin like formulas harmless, and leave numbers alone', () => {
    expect(['=1+1', '+SUM(A1)', '-2.5', '@x', '\t=1', '-x'].map(csvCell)).toEqual([
      "'=1+1",
      "'+SUM(A1)",
      '-2.5',
      "'@x",
      "'\t=1",
      "'-x",
    ]);
  });

  it('quote as RFC 4180 says', () => {
    expect(csvText([['a,b', 'say "x"', null, 1.5]])).toBe('"a,b","say ""x""",,1.5\r\n');
  });
});

describe('time left', () => {
  it('is told once enough is done to know', () => {
    expect(secondsLeft(0.02, 5000)).toBeNull();
    expect(secondsLeft(0.25, 2000)).toBeCloseTo(6, 10);
    expect([0.4, 6.2, 33, 200].map(roughTime)).toEqual(['a second', '6 seconds', '35 seconds', '3 minutes']);
  });
});

describe('words of the answer', () => {
  it('mark the finding in the sentence', () => {
    expect(splitSentence(report.sentence, 'driveshaft 2×')).toEqual({
      before: '',
      marked: 'Driveshaft 2×',
      after: ' at 86.5 Hz, nine times what a person just feels. Most likely unequal working angles.',
    });
    expect(splitSentence('Nothing.', undefined).before).toBe('Nothing.');
  });

  it('tell the recording’s own speed beside the stated one, in the reader’s units', () => {
    const run = report.runs[0]!;
    expect(speedSentence(run, 'us').replaceAll('\u00a0', ' ')).toBe(
      'The recording itself says 61.3 ± 0.1 mph. The dial said 62 mph.',
    );
    expect(speedSentence(run, 'metric')).toContain('98.6 ± 0.2 km/h');
  });

  it('tell how far a line is from a peak in standard uncertainties of both', () => {
    const [peak] = peaks;
    const [match, unknown] = peak!.matches;
    // 0.1 Hz over √(0.2² + 0.01²)
    expect(distanceInSd(match!, peak!)).toBeCloseTo(0.4994, 4);
    expect(matchSentence(match!, peak!)).toContain('0.5 standard uncertainties away');
    expect(matchSentence(unknown!, peak!)).toBe('');
  });
});

describe('outcomes of checks', () => {
  it('are one for each check, the last counts', () => {
    const twice = withObservation(withObservation([], 'a', 'fine'), 'a', 'wrong');
    expect(twice).toEqual([{ kind: 'observation', checkId: 'a', outcome: 'wrong' }]);
    expect(withoutObservation(twice, 'a')).toEqual([]);
  });
});
