/** What is being looked at: run, finding, peak, cursor and the stretch of frequency. Shared by all pictures. */
import type { Analysis, RunPicture } from '../../core/report/analysis.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import type { FindingReport, PeakReport } from '../../core/report/report.ts';
import type { Domain } from '../charts/viewport.ts';
import { pan, reveal, zoomAt } from '../charts/viewport.ts';
import type { LevelChoice, LevelKind } from '../charts/level.ts';
import { levelKindOf } from '../charts/level.ts';
import { findingOf } from '../charts/finding-peak.ts';
import { matchedMarks } from '../charts/matched.ts';
import { homeDomain, wholeDomain } from '../charts/whole-domain.ts';
import type { Session } from './session.svelte.ts';

export class View {
  readonly #session: Session;
  readonly #reader: { readonly units: UnitSystem };
  #run = $state.raw<string | null>(null);
  #finding = $state.raw(0);
  #zoomed = $state.raw<Domain | null>(null);
  cursorHz = $state.raw<number | null>(null);
  /** Frequency of the peak that is questioned. */
  peakHz = $state.raw<number | null>(null);
  levelChoice = $state.raw<LevelChoice>('felt');
  /** The spectrum on equal angle, with the changes of speed taken out, where there is one. */
  byAngle = $state(true);

  /** @param reader Whose units the levels are shown in. */
  constructor(session: Session, reader: { readonly units: UnitSystem }) {
    this.#session = session;
    this.#reader = reader;
  }

  readonly levelKind = $derived.by((): LevelKind => levelKindOf(this.levelChoice, this.#reader.units));
  readonly analysis = $derived.by((): Analysis | null => this.#session.analysis);
  readonly finding = $derived.by((): FindingReport | null => {
    const findings = this.analysis?.report.findings ?? [];
    return findings[this.#finding] ?? findings[0] ?? null;
  });
  readonly runName = $derived.by((): string | null => {
    const runs = this.analysis?.report.runs ?? [];
    const wanted = this.#run ?? this.finding?.run;
    return (runs.find((run) => run.name === wanted) ?? runs[0])?.name ?? null;
  });
  readonly picture = $derived.by((): RunPicture | null => {
    const pictures = this.analysis?.pictures ?? [];
    return pictures.find((picture) => picture.run === this.runName) ?? pictures[0] ?? null;
  });
  readonly peaks = $derived.by((): readonly PeakReport[] =>
    (this.analysis?.report.peaks ?? [])
      .filter((peak) => peak.run === this.runName)
      .toSorted((a, b) => a.frequencyHz - b.frequencyHz),
  );
  readonly whole = $derived.by((): Domain => (this.picture ? wholeDomain(this.picture) : [0, 100]));
  /** Where the picture starts: the stretch in which parts turn. */
  readonly home = $derived.by((): Domain => (this.picture ? homeDomain(this.picture, this.peaks) : [0, 100]));
  readonly shown = $derived.by((): Domain => this.#zoomed ?? this.home);
  readonly isZoomed = $derived(this.#zoomed !== null);
  /** What a key or button zooms about: the cursor, else the questioned peak, else the middle. */
  readonly zoomHz = $derived.by((): number => {
    const [from, to] = this.shown;
    const place = this.cursorHz ?? this.peak?.frequencyHz;
    return place !== undefined && place >= from && place <= to ? place : (from + to) / 2;
  });
  readonly peak: PeakReport | null = $derived.by(
    (): PeakReport | null => this.peaks.find((peak) => peak.frequencyHz === this.peakHz) ?? this.#peakOfFinding(),
  );

  /** The finding the questioned peak is, or is the image of. */
  readonly findingOfPeak = $derived.by((): FindingReport | null =>
    this.peak && this.picture
      ? findingOf(this.peak, this.analysis?.report.findings ?? [], this.picture.samplingRateHz)
      : null,
  );
  /** Labels of the lines drawn as the origin of some peak. */
  readonly matched = $derived.by((): ReadonlySet<string> =>
    matchedMarks(this.peaks, this.analysis?.report.findings ?? [], this.picture?.samplingRateHz ?? Infinity),
  );

  /** Questioned where no other peak was chosen. */
  #peakOfFinding(): PeakReport | null {
    const { finding, picture } = this;
    if (!finding || !picture) return null;
    return this.peaks.find((peak) => findingOf(peak, [finding], picture.samplingRateHz)) ?? null;
  }

  /** Back to the beginning, for a new answer. */
  reset(): void {
    this.#run = null;
    this.#finding = 0;
    this.#zoomed = null;
    this.cursorHz = null;
    this.peakHz = null;
  }

  showRun(name: string): void {
    this.#run = name;
    this.#zoomed = null;
    this.peakHz = null;
  }

  showFinding(index: number): void {
    this.#finding = index;
    this.#run = null;
    this.peakHz = null;
  }

  zoom(placeHz: number, factor: number): void {
    this.#zoomed = zoomAt(this.shown, this.whole, placeHz, factor);
  }

  zoomTo(fromHz: number, toHz: number): void {
    const [low, high] = this.whole;
    const [from, to] = [Math.max(low, fromHz), Math.min(high, toHz)];
    if (to - from > (high - low) / 2000) this.#zoomed = [from, to];
  }

  /** Questions the peak nearest to a place, or none where none is within reach. */
  pickPeak(hz: number, reachHz: number): void {
    const [nearest] = this.peaks.toSorted((a, b) => Math.abs(a.frequencyHz - hz) - Math.abs(b.frequencyHz - hz));
    const isNear = nearest !== undefined && Math.abs(nearest.frequencyHz - hz) <= reachHz;
    this.peakHz = isNear ? nearest.frequencyHz : null;
  }

  pan(distanceHz: number): void {
    this.#zoomed = pan(this.shown, this.whole, distanceHz);
  }

  showAll(): void {
    this.#zoomed = null;
  }

  /** Moves the cursor by hand of the keyboard, and the picture with it. */
  moveCursor(hz: number): void {
    const [low, high] = this.whole;
    this.cursorHz = Math.min(high, Math.max(low, hz));
    const shown = reveal(this.shown, this.whole, this.cursorHz);
    if (shown !== this.shown) this.#zoomed = shown;
  }

  /** The next peak above the cursor, or the one before. */
  stepPeak(direction: 1 | -1): void {
    const from = this.cursorHz ?? this.shown[0];
    const beyond = this.peaks.filter((peak) => (peak.frequencyHz - from) * direction > 1e-6);
    const next = direction > 0 ? beyond[0] : beyond.at(-1);
    if (!next) return;
    this.moveCursor(next.frequencyHz);
    this.peakHz = next.frequencyHz;
  }
}
