/** One expected order in words, cell by cell; text and page put them into their tables. */
import { partsText } from '../diagnosis/observing/closer-look.ts';
import { chanceText, timesText, uncapitalized } from '../words.ts';
import type { FindingReport, OrderReport, Report, SharedOrigin } from './report.ts';
import { feltText, frequencyText, frequencyWithSdText, percentText, significant } from './format.ts';

/** What drives the wheels. */
export const driverWord = ({ vehicle }: Report): 'engine' | 'motor' =>
  vehicle.layout === 'electric' ? 'motor' : 'engine';

export interface OrderWords {
  readonly label: string;
  readonly expected: string;
  /** 'under 0.004' where the order is not seen: the most that could hide there. */
  readonly level: string;
  readonly felt: string;
  readonly state: string;
}

export function orderWords(order: OrderReport): OrderWords {
  const below = order.visibility === 'not-seen' ? 'under ' : '';
  return {
    label: order.label,
    expected: frequencyWithSdText(order.frequencyHz, order.frequencySdHz),
    level: order.amplitudeMps2 === null ? '' : below + significant(order.amplitudeMps2, 2),
    felt: order.feltLevel === null ? '' : below + feltText(order.feltLevel),
    state: visibilityText(order),
  };
}

function visibilityText(order: OrderReport): string {
  switch (order.visibility) {
    case 'seen':
      return 'seen';
    case 'not-seen':
      if (order.sharesLineOf !== undefined) return `shares the line of ${order.sharesLineOf}`;
      return order.amplitudeMps2 === null ? 'not looked for, so fast' : 'not seen';
    case 'above-nyquist':
      return `above half the rate${imageText(order)}`;
  }
}

const imageText = ({ aliasHz, amplitudeMps2 }: OrderReport): string => {
  if (aliasHz === undefined) return '';
  return amplitudeMps2 === null
    ? `, image at ${frequencyText(aliasHz)}`
    : `, seen by its image at ${frequencyText(aliasHz)}`;
};

/** How a person notices the finding, to follow its felt level; nothing to add where it is plainly felt. */
export const perceivedText = ({ perceived, overRoad }: Pick<FindingReport, 'perceived' | 'overRoad'>): string => {
  if (perceived === 'heard') return ', heard rather than felt';
  return perceived === 'buried' && overRoad !== null ? `, but ${roadText(overRoad)}` : '';
};

/** ', in 70 to 80 s only'; nothing for what shook throughout. */
export const duringText = ({ during }: Pick<FindingReport, 'during'>): string =>
  during ? `, ${partsText(during)}` : '';

/** 'buried in the road’s own shake, which is six times as strong': of a tone that a smooth road would let a person feel. */
export const roadText = (overRoad: number): string =>
  `buried in the road’s own shake, which is ${timesText(1 / overRoad)} as strong`;

/** How sure the finding is, in words; a tone of no known part is sure of nothing. */
export const sureText = ({ part, probability }: Pick<FindingReport, 'part' | 'probability'>): string => {
  if (part === 'unknown') return 'No listed part is known to turn at that rate.';
  const of = part === 'fixed' ? 'that it belongs to nothing that turns with the speed' : 'of the part and order';
  return `Sure ${of}: ${chanceText(probability)}.`;
};

/** 'If it is engine 1×: flexplate … (34 %); crankshaft damper … (22 %).' Empty where that is not known. */
export const likeliestText = ({ label, likeliest = [] }: SharedOrigin): string =>
  likeliest.length === 0
    ? ''
    : `If it is ${label}: ${likeliest.map(({ title, probability }) => `${uncapitalized(title)} (${percentText(probability)})`).join('; ')}.`;
