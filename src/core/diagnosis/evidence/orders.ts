/** Signs in the recording itself: direction, companions, growth with speed, beats, heard or felt, place of a fixed tone. */
import { normalTail } from '../../signal/numeric/distributions.ts';
import type { Companion, FindingBasis } from './case.ts';
import { both, burnsFuel, isHalfOrder } from './where.ts';
import type { Sign } from '../signs.ts';
import type { Clue, SignSeen } from './clue.ts';

/** Shares of the finding's level: a companion from the one on stands beside it, below the other it is as good as absent. */
interface Shares {
  readonly present: number;
  readonly absent: number;
}
const COMPANION_SHARES: Shares = { present: 0.3, absent: 0.15 };
/** Firing stands in every engine's spectrum: only as strong as the finding is it out of the ordinary. */
const FIRING_SHARES: Shares = { present: 1, absent: 0.3 };
/** Shares of the power along gravity beyond which the shake counts as one-directional. */
const VERTICAL_SHARE = 0.65;
const SIDEWAYS_SHARE = 0.35;
/** Edges between kinds of growth, as the power of speed the level follows. */
const GROWTH: readonly { sign: Sign; from: number; to: number; words: string }[] = [
  { sign: 'falls-with-speed', from: -Infinity, to: -0.5, words: 'falls as speed rises' },
  { sign: 'flat-with-speed', from: -0.5, to: 1.2, words: 'hardly changes with speed' },
  { sign: 'square-with-speed', from: 1.2, to: 3.2, words: 'grows about with the square of speed' },
  { sign: 'steep-with-speed', from: 3.2, to: Infinity, words: 'grows far faster than the square of speed' },
];

/** Said of a run that swept through speeds and yet does not tell. */
const GROWTH_HIDDEN: Readonly<Record<NonNullable<FindingBasis['growthHiddenBy']>, string>> = {
  resonance:
    'Within the run the level follows no one power of the speed: it went through a resonance, or the load changed, which hides how the cause itself grows with speed.',
  noise:
    'The run swept through speeds, but the noise hides the shake at some of them: how it grows with speed is not told.',
  'short-run': 'The run swept through speeds too briefly to tell how the shake grows: sweep more slowly.',
};

/** No fit of a few levels knows its power better than this. */
const LEAST_EXPONENT_SD = 0.02;

const always = (): boolean => true;
const on =
  (part: FindingBasis['part'], ...orders: number[]) =>
  (basis: FindingBasis): boolean =>
    basis.part === part && (orders.length === 0 || orders.includes(basis.order ?? 0));

/** A clue that compares the finding's level with those of other orders of its part. */
function companionClue(
  asks: Clue['asks'],
  wanted: (companion: Companion, own: number) => boolean,
  present: Sign,
  absent: Sign | null,
  name: string,
  shares = COMPANION_SHARES,
): Clue {
  const read = (basis: FindingBasis): SignSeen | 'neither' | null => {
    const others = basis.companions.filter((other) => other.part === basis.part && wanted(other, basis.order ?? 0));
    const greatest = others.reduce<Companion | null>((a, b) => (a && a.amplitudeMps2 >= b.amplitudeMps2 ? a : b), null);
    if (!greatest) return null;
    const share = greatest.amplitudeMps2 / basis.amplitudeMps2;
    if (greatest.seen && share >= shares.present) {
      return {
        sign: present,
        text: `${greatest.label} stands beside it at ${shareText(share)} of its level`,
        strength: 1,
      };
    }
    if (share > shares.absent || absent === null) return 'neither';
    return {
      sign: absent,
      text: `Of ${name} there is little or nothing (at most ${shareText(share)} of this level)`,
      strength: 1,
    };
  };
  const signs = absent === null ? [present] : [present, absent];
  return { signs, missing: `The level of ${name} is not known from this recording.`, asks, read };
}

const shareText = (share: number): string =>
  share >= 10 ? `${Math.round(share)} times` : share.toFixed(share < 1 ? 2 : 1);

export const orderClues: readonly Clue[] = [
  companionClue(on('driveshaft', 1), ({ order }) => order === 2, 'twice-too', 'once-alone', 'driveshaft 2×'),
  companionClue(on('driveshaft', 2), ({ order }) => order === 1, 'once-too', 'twice-alone', 'driveshaft 1×'),
  companionClue(on('driveshaft', 2), ({ order }) => order === 4, 'four-times-too', null, 'driveshaft 4×'),
  companionClue(
    on('tire', 1),
    ({ order }) => order === 2 || order === 3,
    'tire-higher-too',
    'tire-once-alone',
    'tire 2× and 3×',
  ),
  companionClue(on('tire', 2, 3, 4), ({ order }) => order === 1, 'tire-once-too', 'tire-higher-alone', 'tire 1×'),
  companionClue(
    both(on('engine'), burnsFuel),
    ({ order }, own) => order !== own && isHalfOrder(order),
    'half-orders-too',
    'half-orders-absent',
    'the engine’s half orders',
  ),
  companionClue(
    both(on('engine', 1), burnsFuel),
    ({ role }) => role === 'firing',
    'firing-too',
    'firing-low',
    'firing',
    FIRING_SHARES,
  ),
  {
    signs: ['mostly-vertical', 'mostly-sideways'],
    missing: 'The direction of the shake is not known, since the recording does not show which way is up.',
    asks: always,
    read: ({ verticalShare }) => {
      if (verticalShare === null) return null;
      const percent = `${Math.round(100 * verticalShare)} % of its power is vertical`;
      if (verticalShare >= VERTICAL_SHARE)
        return { sign: 'mostly-vertical', text: `The shake is mostly up and down: ${percent}`, strength: 1 };
      if (verticalShare > SIDEWAYS_SHARE) return 'neither';
      return { sign: 'mostly-sideways', text: `The shake is mostly level: only ${percent}`, strength: 1 };
    },
  },
  {
    signs: GROWTH.map(({ sign }) => sign),
    missing: ({ growthHiddenBy }) =>
      growthHiddenBy === undefined
        ? 'How the level changes with speed is not known: record at a second speed.'
        : GROWTH_HIDDEN[growthHiddenBy],
    asks: always,
    read: ({ speedExponent }) => {
      if (!speedExponent) return null;
      const { value } = speedExponent;
      const sd = Math.max(speedExponent.sd, LEAST_EXPONENT_SD);
      const above = (edge: number): number =>
        Number.isFinite(edge) ? normalTail((edge - value) / sd) : edge < 0 ? 1 : 0;
      const chance = (from: number, to: number): number => above(from) - above(to);
      const best = GROWTH.map((kind) => ({ ...kind, p: chance(kind.from, kind.to) })).reduce((a, b) =>
        b.p > a.p ? b : a,
      );
      // A kind no likelier than all the others together says nothing.
      const strength = Math.max(0, 2 * best.p - 1);
      if (strength === 0) return 'neither';
      return {
        sign: best.sign,
        text: `The level ${best.words} (power ${value.toFixed(1)} ± ${sd.toFixed(1)})`,
        strength,
      };
    },
  },
  {
    signs: ['beats'],
    missing: '',
    asks: always,
    read: ({ beats }) => (beats ? { sign: 'beats', text: 'The level pulsates slowly', strength: 1 } : 'neither'),
  },
  {
    signs: ['heard'],
    missing: '',
    asks: always,
    read: ({ perceived }) =>
      perceived === 'heard' ? { sign: 'heard', text: 'The tone is heard rather than felt', strength: 1 } : 'neither',
  },
  {
    signs: ['narrow-line'],
    missing: 'Whether the tone is a sharp line or a broad hump is not known.',
    asks: on('fixed'),
    read: ({ heldWithin }) => {
      if (heldWithin === undefined) return null;
      if (!isNarrow(heldWithin)) return 'neither';
      const within = `${(100 * heldWithin).toFixed(heldWithin < 1e-4 ? 3 : 2)} %`;
      return { sign: 'narrow-line', text: `It held its frequency within ${within}`, strength: 1 };
    },
  },
  {
    signs: ['low-tone', 'middle-tone', 'high-tone', 'mains-tone'],
    missing: '',
    asks: on('fixed'),
    read: ({ frequencyHz, heldWithin }) => fixedTone(frequencyHz, isNarrow(heldWithin)),
  },
];

/** Held no less closely than this a tone is a line, which something drives: a lightly damped resonance is a percent wide. Judgment. */
const NARROW = 1e-3;
const isNarrow = (heldWithin: number | null | undefined): heldWithin is number =>
  typeof heldWithin === 'number' && heldWithin <= NARROW;

/** Bands as judged by the bands of vehicle resonances: body bending below 35 Hz, exhaust and panels up to 120 Hz. */
function fixedTone(frequencyHz: number, isDriven: boolean): SignSeen | 'neither' {
  const text = `The tone stays at ${frequencyHz.toFixed(1)} Hz`;
  const mains = [50, 60, 100, 120].some((mainsHz) => Math.abs(frequencyHz - mainsHz) < 0.004 * mainsHz);
  // The bands are those of resonances: they say nothing of what is driven.
  if (isDriven && !mains) return 'neither';
  const sign = mains ? 'mains-tone' : frequencyHz < 35 ? 'low-tone' : frequencyHz <= 120 ? 'middle-tone' : 'high-tone';
  return { sign, text, strength: 1 };
}
