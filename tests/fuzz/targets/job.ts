/** Damaged job files: refused with a place and a remedy, or read so that writing and reading again changes nothing. */
import { readFileSync, readdirSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { readJob, writeJob } from '../../../src/core/job/job-file.ts';
import type { Dice } from '../dice.ts';
import { checkNumbers, checkProblem } from '../invariants.ts';
import { mutatedJson } from '../mutate-json.ts';
import { anyText, edited } from '../odd-text.ts';
import { must, target } from '../target.ts';

const folder = new URL('../../../recordings/', import.meta.url);
const example = {
  schemaVersion: 1,
  vehicle: { layout: 'rear-drive', tire: { kind: 'rolling-circumference', circumferenceM: 2.36 }, axleRatio: 3.73 },
  work: ['joint-replaced-rear'],
  runs: [{ file: 'a.csv', speed: '62 mph', engineRpm: 1850, load: 'pull' }],
  measurements: [
    { kind: 'end-play', joint: 'front', axisPlayMm: [0.05, 0.1] },
    { kind: 'runout', place: 'tube-front', tirMm: 0.4, readingsMm: [0, 0.1, 0.2, 0.1] },
    {
      kind: 'working-angles',
      shafts: [
        { part: 'transmission', slopeDeg: 4.1 },
        { part: 'shaft', slopeDeg: 6 },
      ],
    },
    { kind: 'observation', checkId: 'ride-height', outcome: 'fine', note: 'empty' },
  ],
  limits: { 'end-play': { value: 0.1, source: 'maker' } },
  notes: 'n',
};
export const jobSeeds: readonly unknown[] = [
  example,
  ...readdirSync(folder)
    .filter((name) => name.endsWith('.job.json'))
    .map((name): unknown => JSON.parse(readFileSync(new URL(name, folder), 'utf8'))),
];

function make(dice: Dice): string {
  if (dice.chance(0.03)) return anyText(dice, 200);
  let content = dice.pick(jobSeeds);
  for (let left = 1 + dice.below(3); left > 0; left--) content = mutatedJson(content, dice);
  const text = JSON.stringify(content, null, dice.pick([0, 2])) ?? '';
  return dice.chance(0.25) ? edited(text, dice) : text;
}

export const job = target<string>({
  name: 'job',
  cases: 1000,
  make,
  check: (text) => {
    const read = readJob(text, 'made.job.json');
    if (!read.ok) {
      checkProblem(read.problem, text);
      must(read.problem.file === 'made.job.json', `${read.problem.code} names no file`);
      must(
        read.problem.line !== undefined || read.problem.code === 'job-too-large',
        `${read.problem.code} names no line`,
      );
      return;
    }
    checkNumbers(read.value, 'job');
    const again = readJob(writeJob(read.value), 'made.job.json');
    must(again.ok, `what was read and written is refused: ${again.ok ? '' : again.problem.message}`);
    must(isDeepStrictEqual(again.value, read.value), 'written and read again it is another job');
  },
  show: (text) => text,
});
