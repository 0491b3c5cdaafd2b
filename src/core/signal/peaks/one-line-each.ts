/** One entry for each line, though several segment lengths show it and a wandering line falls to pieces at the finest. */
import type { Candidate, LevelView } from './candidates.ts';
import { traceOfProduct } from '../numeric/hermitian.ts';

/** Natural bins to each side that belong to a line: its Hann main lobe and a little. */
const LOBE_BINS = 2.5;
/** A finer level keeps a line if it holds this share of the power that a coarser one sees in the same place. */
const KEPT_POWER = 0.6;
/** Share of a line's power that a steady line's own Hann side lobes cannot exceed with this margin. */
const SIDE_LOBE_MARGIN = 4;

type Test = (candidate: Candidate, taken: Uint8Array) => Candidate | null;

/**
 * A line's power in units of the noise where `reference` stands: the noise is taken from one place for all levels, since
 * a fine level's own, from few averages, is off by a factor now and then.
 */
const powerOf = ({ view: { level }, bin }: Candidate, reference: Candidate): number => {
  const axes = Math.sqrt(level.matrix.length);
  const whitener = reference.view.whitened.whitenerAt(reference.bin);
  const density = Float64Array.from(level.matrix, (entries) => entries[bin]!);
  return Math.max(0, traceOfProduct(axes, whitener, density) / axes - 1) / level.lengthS;
};

/** Bound of a Hann window's side lobes in power at d natural bins: 1/(πd(d² − 1))². */
const sideLobe = (d: number): number => (d <= 2 ? 1 : 1 / (Math.PI * d * (d * d - 1)) ** 2);

const lobeHz = (view: LevelView): number => LOBE_BINS / view.level.lengthS;

/** Candidates of one level that pass, strongest first, each barring its own lobe and side lobes. */
const passing = (view: LevelView, candidates: readonly Candidate[], test: Test): Candidate[] => {
  const taken = new Uint8Array(view.level.bins);
  const kept: Candidate[] = [];
  const reach = Math.ceil(LOBE_BINS * view.level.pad);
  const ordered = candidates
    .filter((candidate) => candidate.view === view)
    .sort((a, b) => view.whitened.t[b.bin]! - view.whitened.t[a.bin]!);
  for (const candidate of ordered) {
    if (taken[candidate.bin]) continue;
    const own = view.whitened.t[candidate.bin]!;
    const leaks = kept.some(({ bin }) => {
      const d = Math.abs(candidate.bin - bin) / view.level.pad;
      return own < SIDE_LOBE_MARGIN * view.whitened.t[bin]! * sideLobe(d);
    });
    if (leaks) continue;
    const tried = test(candidate, taken);
    if (!tried) continue;
    kept.push(tried);
    taken.fill(1, Math.max(0, candidate.bin - reach), candidate.bin + reach + 1);
  }
  return kept;
};

/**
 * From the finest level to the coarsest: a coarser level's line replaces what the finer ones found inside its lobe
 * only where that falls short of its power, which is how a wandering line shows.
 * @param test gives the candidate with its probabilities, or null where noise may have done it
 */
export const keptAmongLevels = (
  views: readonly LevelView[],
  candidates: readonly Candidate[],
  test: Test,
): Candidate[] => {
  let lines: Candidate[] = [];
  for (const view of views) {
    for (const candidate of passing(view, candidates, test)) {
      const inside = lines.filter((line) => Math.abs(line.frequencyHz - candidate.frequencyHz) < lobeHz(view));
      const held = inside.reduce((sum, line) => sum + powerOf(line, candidate), 0);
      if (inside.length > 0 && held >= KEPT_POWER * powerOf(candidate, candidate)) continue;
      lines = [...lines.filter((line) => !inside.includes(line)), candidate];
    }
  }
  return lines;
};
