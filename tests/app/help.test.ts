import { describe, expect, it } from 'vitest';
import { BENCH_FORMS } from '../../src/app/bench/all-forms.ts';
import { fillForm } from '../../src/app/bench/entry.ts';
import type { MeasureForm } from '../../src/app/bench/measure-form.ts';
import { titleTerms } from '../../src/app/bench/title-terms.ts';
import { mainFields, moreFields } from '../../src/app/form/vehicle-fields.ts';
import { firstTerms, termOfLabel } from '../../src/app/help/label-terms.ts';
import { termsIn } from '../../src/app/help/terms-in.ts';
import { glossary } from '../../src/app/texts/glossary.ts';

describe('words of the trade in a text', () => {
  it('are found in the order of the glossary, each once', () => {
    const text = 'Runout of the companion flange. Put the dial on the Companion Flange, then on the slip yoke.';
    expect(termsIn(text)).toEqual(['companion-flange', 'slip-yoke', 'runout']);
  });

  it('are whole words', () => {
    expect(termsIn('Cross the road with a cupboard across.')).toEqual(['cross']);
    expect(termsIn('Across the cupboard.')).toEqual([]);
  });

  it('are none in a text that everybody understands', () => {
    expect(termsIn('Look under the vehicle.')).toEqual([]);
  });
});

/** Fields and choices of a form as it stands before anything is typed. */
const labelled = (form: MeasureForm) => {
  const { rows, extras } = fillForm(form, {}, 'metric');
  return [...form.choices, ...[...rows, ...extras].flatMap((row) => [...row.fields, ...(row.choices ?? [])])];
};

describe('words of the trade among the labels of the forms', () => {
  it('are told at the vehicle’s ratios, tires and teeth, whatever its layout', () => {
    const labels = [...mainFields('four-wheel-drive'), ...moreFields('four-wheel-drive')].map(({ label }) => label);
    expect(Object.fromEntries(labels.map((label) => [label, termOfLabel(label)]))).toEqual({
      Tires: 'rolling-circumference',
      'Axle ratio': 'axle-ratio',
      Cylinders: 'firing-order',
      'Front axle ratio': 'axle-ratio',
      'Transfer case': 'transfer-case',
      'Gear ratios': 'gear-ratio',
      Accessories: undefined,
      'Pinion teeth': 'gear-mesh',
      'Ring gear teeth': undefined,
    });
    expect(mainFields('electric').map(({ label }) => termOfLabel(label))).toContain('final-drive');
    expect(moreFields('electric').map(({ label }) => termOfLabel(label))).toContain('pole-pairs');
  });

  it('are told once in a form, where they come first, and not again where the title tells them', () => {
    const rows = [
      { id: 'one', label: 'Sideways' },
      { id: 'two', label: 'Sideways' },
      { id: 'three', label: 'Phase' },
    ];
    expect([...firstTerms(rows)]).toEqual([
      ['one', 'sideways'],
      ['three', 'phase'],
    ]);
    expect([...firstTerms(rows, ['phase'])]).toEqual([['one', 'sideways']]);
  });

  it('leave no title and no label of the bench that uses such a word without help', () => {
    for (const form of BENCH_FORMS) {
      const told = titleTerms(form.id);
      const terms = [...told, ...firstTerms(labelled(form), told).values()];
      const untold = [form.title, ...labelled(form).map(({ label }) => label)].filter((label) => {
        const sought = termsIn(label);
        return sought.length > 0 && !sought.some((id) => terms.includes(id));
      });
      expect([form.id, untold]).toEqual([form.id, []]);
    }
  });

  it('are named and explained in whole sentences', () => {
    for (const { term, text } of Object.values(glossary)) {
      expect(term).toMatch(/^\p{Lu}/u);
      expect(text).toMatch(/^\p{Lu}.*\.$/u);
    }
  });
});
