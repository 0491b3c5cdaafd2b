import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'svelte/compiler';
import { describe, expect, it } from 'vitest';

const APP = new URL('../../src/app/', import.meta.url).pathname;
const COMPONENTS = readdirSync(APP, { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.svelte'));

/** Attributes whose value is read by people. */
const READ = new Set([
  'alt',
  'aria-label',
  'aria-description',
  'aria-roledescription',
  'label',
  'placeholder',
  'title',
]);
/** Two letters in a row: signs, units of one letter and digits need no translation. */
const WORD = /\p{L}{2}/u;

interface Node {
  readonly type: string;
  readonly name?: string;
  readonly data?: string;
  readonly value?: unknown;
  readonly expression?: unknown;
}

/** What an expression in the markup may come to show: literals that are its own value, not those it is computed from. */
function literalsOf(expression: unknown): unknown[] {
  const node = expression as Record<string, unknown>;
  switch (node['type']) {
    case 'Literal':
      return [node['value']];
    case 'TemplateLiteral':
      return (node['quasis'] as { value: { cooked: string } }[]).map(({ value }) => value.cooked);
    case 'ConditionalExpression':
      return [node['consequent'], node['alternate']].flatMap(literalsOf);
    case 'LogicalExpression':
    case 'BinaryExpression':
      return [node['left'], node['right']].flatMap(literalsOf);
    default:
      return [];
  }
}

/** Words that stand in a component's markup itself. */
function wordsIn(source: string): string[] {
  const words: string[] = [];
  const keep = (text: unknown): void => {
    if (typeof text === 'string' && WORD.test(text)) words.push(text.trim());
  };
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(walk);
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
    const node = value as Node;
    if (node.type === 'StyleDirective') return;
    if (node.type === 'Text') return keep(node.data);
    if (node.type === 'ExpressionTag') return literalsOf(node.expression).forEach(keep);
    if (node.type === 'Attribute') {
      if (READ.has(node.name ?? '')) walk(node.value);
      return;
    }
    Object.values(node).forEach(walk);
  };
  walk(parse(source, { modern: true }).fragment);
  return words;
}

describe('every word shown stands in src/app/texts', () => {
  it.each(COMPONENTS)('%s has none of its own', (path) => {
    expect(wordsIn(readFileSync(join(APP, path), 'utf8'))).toEqual([]);
  });

  it.each([
    ['<p>Hello {name}</p>', ['Hello']],
    ['{#if a}<b aria-label="Over there">×</b>{/if}', ['Over there']],
    ['<i class="over">{open ? `${n} are open` : "none"}</i>', ['are open', 'none']],
    ['<i title={a ?? "Not told"}>{kind === "over" ? 1 : 2}</i>', ['Not told']],
  ])('would be noticed in %s', (markup, words) => expect(wordsIn(markup)).toEqual(words));
});
