import { describe, expect, it } from 'vitest';
import { customerAnswer } from '../../src/app/print/customer-words.ts';
import { meaningOf, turnsText } from '../../src/app/print/order-meaning.ts';
import type { Comparison, ComparedLevel } from '../../src/core/diagnosis/compare/comparison.ts';
import { finding, report } from './fixture.ts';

const level = (feltLevel: number, seen = true): ComparedLevel => ({
  frequencyHz: 86.5,
  amplitudeMps2: feltLevel / 9,
  feltLevel,
  seen,
});

const comparison = (verdict: Comparison['verdict'], after: ComparedLevel): Comparison => ({
  schemaVersion: 1,
  verdict,
  sentence: 'Driveshaft 2× is gone.',
  why: 'Felt level 9.4 before, under 0.1 now.',
  notes: [],
  pairs: [
    {
      before: { name: 'Cruise', speedMps: 27, durationS: 60 },
      after: { name: 'Proof', speedMps: 27, durationS: 60 },
      unlikeSdDb: 1,
      differences: [],
      orders: [
        {
          part: 'driveshaft',
          order: 2,
          label: 'driveshaft 2×',
          before: level(9.4),
          after,
          changeDb: -40,
          lowDb: null,
          highDb: -39,
          real: true,
          verdict: 'gone',
        },
      ],
    },
  ],
});

describe('the page for the customer', () => {
  it('leads with what was proved, as multiples of what a person just feels, and leaves nothing to do', () => {
    const answer = customerAnswer(report, comparison('gone', level(0.05, false)));
    expect(answer.headline).toBe('The shake is gone. It went from 9.4 to under 0.05 times what a person just feels.');
    expect(answer.explained).toEqual(['It came twice in each turn of the driveshaft.']);
    expect(answer.isProved).toBe(true);
    expect(answer.bars.map(({ felt }) => felt)).toEqual([9.4, 0.05]);
  });

  it('has something left to do where the repair is not proved', () => {
    expect(customerAnswer(report, null).isProved).toBe(false);
    expect(customerAnswer(report, comparison('better', level(2))).isProved).toBe(false);
  });

  it('tells without a proof how strong it is and what it is, in no unit a customer does not know', () => {
    const { headline, explained } = customerAnswer(report, null);
    expect(headline).toBe('A shake was measured that is nine times what a person just feels.');
    expect(explained).toEqual(['It comes twice in each turn of the driveshaft.']);
  });

  it('says what it means that nothing is felt', () => {
    const sound = { ...report, verdict: 'nothing-felt' as const, findings: [] };
    const { headline, explained, bars } = customerAnswer(sound, null);
    expect(headline).toBe('Nothing was measured that a person would feel.');
    expect(explained.join(' ')).toContain('as small as in every sound vehicle');
    // The fixture's seen orders have a felt level of 0.4.
    expect(bars.map(({ felt }) => felt)).toEqual([0.4]);
  });
});

describe('an order explained', () => {
  it('counts turns of the part, half orders over two', () => {
    const engine = { part: 'engine', label: '' } as const;
    expect(turnsText({ ...engine, order: 0.5 })).toBe('once in two turns of the engine');
    expect(turnsText({ ...engine, order: 1.5 })).toBe('three times in two turns of the engine');
    expect(turnsText({ part: 'tire', label: '', order: 1 })).toBe('once in each turn of a wheel');
    expect(turnsText({ part: 'driveshaft', name: 'front driveshaft', label: '', order: 2 })).toBe(
      'twice in each turn of the front driveshaft',
    );
  });

  it('names the other part where the two cannot be told apart', () => {
    const shared = {
      ...finding,
      probability: 0.7,
      sharesFrequencyWith: [
        { part: 'engine', order: 2, label: 'engine 2×', probability: 0.3, separatedBy: 'Another gear.' } as const,
      ],
    };
    expect(meaningOf(shared)).toBe(
      'It comes twice in each turn of the driveshaft or twice in each turn of the engine. ' +
        'This recording alone cannot tell which: the driveshaft 70 in 100 and the engine 30 in 100.',
    );
  });

  it('counts two orders of one part as that part', () => {
    const engine = { part: 'engine', label: '', separatedBy: '' } as const;
    const shared = {
      ...finding,
      probability: 0.55,
      sharesFrequencyWith: [
        { ...engine, order: 2, probability: 0.24 },
        { ...engine, order: 4, probability: 0.2 },
      ],
    };
    expect(meaningOf(shared)).toContain('cannot tell which: the driveshaft 55 in 100 and the engine 44 in 100.');
    expect(meaningOf({ ...shared, ...engine, order: 1 })).not.toContain('cannot tell');
  });
});
