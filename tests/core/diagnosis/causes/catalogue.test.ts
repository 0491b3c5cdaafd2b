import { expect, test } from 'vitest';
import { CAUTIONS, cautionTexts } from '../../../../src/core/cautions.ts';
import { cautionsFor } from '../../../../src/core/diagnosis/checks/report-cautions.ts';
import { ALL_CHECKS, checkOf } from '../../../../src/core/diagnosis/checks/all-checks.ts';
import { CLUES } from '../../../../src/core/diagnosis/evidence/read-signs.ts';
import type { CauseWeights, CheckWeights } from '../../../../src/core/diagnosis/weights.ts';
import { CAUSE_WEIGHTS, CHECK_WEIGHTS } from '../../../../src/core/diagnosis/weights.ts';
import { everyCause } from './case-fixtures.ts';

const causeRows = Object.entries(CAUSE_WEIGHTS) as [string, CauseWeights][];
const checkRows = Object.entries(CHECK_WEIGHTS) as [string, CheckWeights][];

test('Every row of the table of causes has one cause, and every cause has a row', () => {
  expect(everyCause.map(({ id }) => id).sort()).toEqual(causeRows.map(([id]) => id).sort());
  expect(new Set(everyCause.map(({ title }) => title)).size).toBe(everyCause.length);
});

test('Every row of the table of checks has one check, and every check has a row', () => {
  expect(ALL_CHECKS.map(({ id }) => id).sort()).toEqual(checkRows.map(([id]) => id).sort());
});

test('Weights are usable numbers: ratios above 0, probabilities strictly between 0 and 1', () => {
  for (const [, { prior, withoutWork = 1, signs = {}, work = {} }] of causeRows) {
    for (const value of [prior, withoutWork, ...Object.values(signs), ...Object.values(work)])
      expect(value).toBeGreaterThan(0);
  }
  for (const [, { minutes, rest, parts = {}, wrong }] of checkRows) {
    expect(minutes).toBeGreaterThan(0);
    for (const value of [rest, ...Object.values(parts), ...Object.values(wrong)]) {
      expect(value).toBeGreaterThan(0);
      expect(value).toBeLessThan(1);
    }
  }
});

test('Every sign a clue can answer with moves some cause, and every sign in the table can be read', () => {
  const readable = new Set(CLUES.flatMap(({ signs }) => signs));
  const used = new Set(causeRows.flatMap(([, { signs = {} }]) => Object.keys(signs)));
  expect([...used].filter((sign) => !readable.has(sign as never))).toEqual([]);
  expect([...readable].filter((sign) => !used.has(sign))).toEqual([]);
});

test('A reason is given only for evidence that weighs on its cause', () => {
  for (const { id, reasons = {} } of everyCause) {
    const { signs = {}, work = {} }: CauseWeights = CAUSE_WEIGHTS[id];
    const speaking = new Set([...Object.keys(signs), ...Object.keys(work), ...checkRows.map(([check]) => check)]);
    expect(
      Object.keys(reasons).filter((key) => !speaking.has(key)),
      id,
    ).toEqual([]);
  }
});

test('Causes tell why they shake and what puts them right', () => {
  for (const { why, repair, title } of everyCause) {
    expect(why.length).toBeGreaterThan(40);
    expect(repair.length).toBeGreaterThan(5);
    expect(`${why} ${repair}`).toMatch(/\.$/);
    expect(title).not.toMatch(/\.$/);
  }
});

test('A limit that is trade practice is marked as having no source', () => {
  for (const { id, limit } of ALL_CHECKS) {
    if (limit !== null && /\d/.test(limit)) expect(limit, id).toMatch(/no source|ISO \d+|maker/i);
  }
});

test('Checks that can hurt someone carry the caution beside them', () => {
  const cautionsOf = (id: string) => checkOf(id)!.cautions;
  expect(cautionsOf('clamp-trial')).toEqual(expect.arrayContaining(['trial-weight', 'hoist', 'turning-parts']));
  expect(cautionsOf('working-angles')).toContain('ride-height');
  expect(cautionsOf('reindex-shaft')).toContain('shaft-out');
  expect(cautionsOf('wheels-swapped')).toContain('wheel-off');
  expect(cautionsOf('ignition-swap')).toContain('ignition-voltage');
  for (const check of ALL_CHECKS) {
    const takesARide = check.kind === 'run' && !['run-standing', 'still-recording', 'pumps-off'].includes(check.id);
    if (takesARide) expect(check.cautions, check.id).toContain('road-test');
    if (/by hand through|turn the (wheel|pinion)|hoist/.test(check.how.join(' '))) {
      expect(check.cautions.length, check.id).toBeGreaterThan(0);
    }
  }
});

test('The cautions of a report defer to law, maker and licence, and say when to stop', () => {
  const cautions = cautionsFor([{ cautions: cautionTexts(['hoist', 'hoist']) }]);
  expect(cautions[0]).toMatch(/Local codes, the maker’s procedure and licensed practice/);
  expect(cautions).toContain(CAUTIONS['stop-at-once']);
  expect(cautions.filter((text) => text === CAUTIONS.hoist)).toHaveLength(1);
});
