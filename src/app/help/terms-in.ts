/** Which words of the trade a text uses. */
import { glossary } from '../texts/glossary.ts';
import type { TermId } from '../texts/glossary.ts';

/** Words for which a text of a check may need help; those everybody knows are left out. */
const SOUGHT = {
  'companion-flange': /companion flange/iu,
  'slip-yoke': /slip yoke/iu,
  'working-angle': /working angle|joint angle/iu,
  phasing: /phasing|\bforks?\b/iu,
  runout: /runout/iu,
  'end-play': /end play/iu,
  rings: /retaining ring/iu,
  cross: /\b(?:cross|trunnion)/iu,
  cup: /\bcups?\b/iu,
  'ride-height': /ride height/iu,
  'critical-speed': /critical speed/iu,
  'trial-weight': /trial (?:weight|clamp)/iu,
  unbalance: /unbalance/iu,
  ear: /\b(?:yoke )?ears?\b/iu,
  'center-bearing': /center bearing/iu,
  'double-cardan': /double[- ]cardan/iu,
} as const satisfies Partial<Record<TermId, RegExp>>;

/** Terms of the glossary that stand in a text, in the order of the glossary. */
export function termsIn(text: string): TermId[] {
  const sought: Partial<Record<TermId, RegExp>> = SOUGHT;
  return (Object.keys(glossary) as TermId[]).filter((id) => sought[id]?.test(text) === true);
}
