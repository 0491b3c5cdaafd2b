/** From the posterior to matches: each tone with the probabilities of all its origins. */
import { totalBackground, type Background, type Support } from './intensity.ts';
import type { Origin } from '../origins/origin.ts';
import type { ScalePosterior, ToneDensities } from './scale-posterior.ts';
import type { Tone } from '../origins/tone.ts';
import { amongTwins } from './twins.ts';

export interface OriginShare {
  readonly origin: Origin;
  readonly image: boolean;
  readonly probability: number;
}

/** A tone with the probabilities of its origins; all of them together add up to 1. */
export interface Match {
  readonly tone: Tone;
  /** Lines that it may be, most likely first. */
  readonly lines: readonly OriginShare[];
  /** Probabilities of what is no expected line. */
  readonly others: Background;
}

/** Origins below this are left to 'unlisted', so that lists stay short. */
const NOT_WORTH_NAMING = 5e-4;

const keyOf = ({ origin, image }: OriginShare): string => `${origin.line.label}${image ? ' image' : ''}`;

/** One origin may reach a tone as itself and as several images; those of a kind are added up. */
const gather = (supports: readonly Support[], probabilities: readonly number[]): OriginShare[] => {
  const shares = new Map<string, OriginShare>();
  supports.forEach((support, i) => {
    const share = { origin: support.origin, image: support.image, probability: probabilities[i]! };
    const before = shares.get(keyOf(share))?.probability ?? 0;
    shares.set(keyOf(share), { ...share, probability: before + share.probability });
  });
  return [...shares.values()];
};

export const matchesOf = (
  tones: readonly Tone[],
  densities: readonly ToneDensities[],
  posterior: ScalePosterior,
): readonly Match[] =>
  tones.map((tone, t) => {
    const { background, road, engine } = densities[t]!;
    const { road: roadShares, engine: engineShares } = posterior.origins[t]!;
    const lines = [...gather(road, roadShares), ...gather(engine, engineShares)]
      .filter((share) => share.probability > NOT_WORTH_NAMING)
      .sort((a, b) => b.probability - a.probability);
    const left = Math.max(0, 1 - lines.reduce((sum, share) => sum + share.probability, 0));
    const total = totalBackground(background);
    const part = (density: number): number => (left * density) / total;
    const others = {
      fixed: part(background.fixed),
      unlisted: part(background.unlisted),
      resonance: part(background.resonance),
      noise: part(background.noise),
    };
    return { tone, lines, others };
  });

const mixed = (values: readonly number[], shares: readonly number[]): number =>
  values.reduce((sum, value, i) => sum + value * shares[i]!, 0);

/** Matches under several models of the same tones, weighted. */
export const mixedMatches = (models: readonly (readonly Match[])[], shares: readonly number[]): readonly Match[] =>
  models[0]!.map(({ tone }, t) => {
    const lines = new Map<string, OriginShare>();
    models.forEach((matches, m) => {
      for (const share of matches[t]!.lines) {
        const before = lines.get(keyOf(share))?.probability ?? 0;
        lines.set(keyOf(share), { ...share, probability: before + shares[m]! * share.probability });
      }
    });
    const other = (kind: keyof Background): number =>
      mixed(
        models.map((matches) => matches[t]!.others[kind]),
        shares,
      );
    return {
      tone,
      lines: [...lines.values()].sort((a, b) => b.probability - a.probability),
      others: {
        fixed: other('fixed'),
        unlisted: other('unlisted'),
        resonance: other('resonance'),
        noise: other('noise'),
      },
    };
  });

/**
 * Matches in which none of two that turn in one ratio is surer than judgment may make it. Where the engine's speed is
 * computed through the gear, a slip that would part them is itself told by nothing but the tones it explains.
 */
export const heldToTwins = (
  matches: readonly Match[],
  twins: ReadonlyMap<Origin, readonly Origin[]>,
): readonly Match[] =>
  matches.map((match) => {
    const shareOf = (origin: Origin, image: boolean): number =>
      match.lines.find((share) => share.origin === origin && share.image === image)?.probability ?? 0;
    const lines = match.lines.map((share) => {
      const others = (twins.get(share.origin) ?? []).map((twin) => shareOf(twin, share.image));
      return { ...share, probability: amongTwins(share.probability, others) };
    });
    return { ...match, lines: lines.sort((a, b) => b.probability - a.probability) };
  });
