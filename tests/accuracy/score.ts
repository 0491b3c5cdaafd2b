/** Is the answer right, and were its probabilities honest? */
import type { FindingReport, Report } from '../../src/core/report/report.ts';
import type { TrueOrder } from '../../src/core/simulate/truth.ts';
import type { AccuracyCase, TrueFault, TrueLine } from './case.ts';
import { UNSEEN_BELOW, SEEN_FROM } from './detectability.ts';
import { nameLike, sameLine } from './true-fault.ts';

export interface Score {
  readonly right: boolean;
  /** What was answered and what was true, for the list of misses. */
  readonly answered: string;
  readonly truth: string;
  /** Stated probability and outcome of every finding, first one first. */
  readonly stated: readonly { readonly p: number; readonly hit: boolean }[];
  /** Frequency of the first finding where it is a hit: relative error, and error over its stated uncertainty. */
  readonly frequency: { readonly relative: number; readonly overSd: number } | null;
  readonly falseFindings: number;
  readonly seen: boolean;
}

type Named = { readonly part: string; readonly order: number | null; readonly name?: string };

const inLines = (lines: readonly TrueLine[], named: Named): boolean => lines.some((line) => sameLine(line, named));

const isTurning = (finding: FindingReport): boolean => finding.part !== 'fixed' && finding.part !== 'unknown';

/** A finding is a hit where it names an order the fault really makes; a tone of its own is 'fixed' or 'unknown'. */
const hits = (fault: TrueFault, finding: FindingReport): boolean =>
  fault.kind === 'resonance' || fault.kind === 'fixed-tone' ? !isTurning(finding) : inLines(fault.lines, finding);

/** The named order, or one of those said to share its frequency where no analysis could part them. */
const names = (fault: TrueFault, finding: FindingReport, sharesCount: boolean): boolean => {
  if (inLines(fault.named, finding)) return true;
  const excused = sharesCount || inLines(fault.coinciding, finding);
  return excused && finding.sharesFrequencyWith.some((shared) => inLines(fault.named, shared));
};

/** Stated probability: that of its order; for a tone of its own, of 'fixed' and 'unknown' together. */
const statedOf = (report: Report, finding: FindingReport): number => {
  if (isTurning(finding)) return finding.probability;
  const near = report.peaks
    .filter(
      (p) => p.run === finding.run && Math.abs(p.frequencyHz - finding.frequencyHz) < 0.02 * finding.frequencyHz + 0.05,
    )
    .sort((a, b) => Math.abs(a.frequencyHz - finding.frequencyHz) - Math.abs(b.frequencyHz - finding.frequencyHz))[0];
  if (near === undefined) return finding.probability;
  const apart = near.matches.filter((m) => m.part === 'fixed' || m.part === 'unknown');
  return apart.reduce((sum, m) => sum + m.probability, 0);
};

const isRight = (one: AccuracyCase, report: Report): boolean => {
  const { findings } = report;
  const first = findings[0];
  const cannotTell = report.verdict === 'cannot-tell';
  const [fault] = one.faults;
  switch (one.rule) {
    case 'none':
      return findings.length === 0;
    case 'not-turning':
      return first === undefined || !isTurning(first);
    case 'first':
    case 'shared': {
      const named = first !== undefined && names(fault!, first, one.rule === 'shared');
      return named || (cannotTell && fault!.detectability < SEEN_FROM);
    }
    case 'both': {
      const left = [...one.faults];
      for (const finding of findings) {
        const at = left.findIndex((f) => names(f, finding, false));
        if (at >= 0) left.splice(at, 1);
        else if (!one.faults.some((f) => hits(f, finding))) break;
        if (left.length === 0) return true;
      }
      return cannotTell && left.every((f) => f.detectability < SEEN_FROM);
    }
    case 'together': {
      if (first === undefined) return cannotTell && fault!.detectability < SEEN_FROM;
      const all: readonly Named[] = [first, ...first.sharesFrequencyWith];
      const twin = all.some((n) => inLines(fault!.coinciding, n));
      const both = all.some((n) => inLines(fault!.named, n)) && twin;
      return both && Math.max(first.probability, ...first.sharesFrequencyWith.map((s) => s.probability)) <= 0.8;
    }
  }
};

const lineText = (line: TrueLine): string =>
  `${line.name ?? line.part} ${line.order}× ${line.hz.toFixed(2)} Hz ${line.levelMps2.toFixed(3)} felt ${line.felt.toFixed(1)}`;

/**
 * @param orders What really turned in the first run; its mean frequencies judge the finding's.
 */
export const scoreCase = (one: AccuracyCase, report: Report, orders: readonly TrueOrder[]): Score => {
  const { findings } = report;
  const stated = findings.map((f) => ({ p: statedOf(report, f), hit: one.faults.some((fault) => hits(fault, f)) }));
  const first = findings[0];
  const trueHz = first && orders.find((o) => o.origin === 'fault' && sameLine(nameLike(o), first))?.meanHz;
  const steady = one.runs[0]!.scenario.drive.speed.kind === 'steady';
  const error = trueHz !== undefined && first && steady && first.run === 'Run 1' ? first.frequencyHz - trueHz : null;
  return {
    right: isRight(one, report),
    answered:
      `${report.verdict}: ` +
      (findings
        .slice(0, 3)
        .map((f) => {
          const shares = f.sharesFrequencyWith.map((s) => `${s.label} ${s.probability.toFixed(2)}`).join(', ');
          return `${f.label} ${f.probability.toFixed(2)} ${f.frequencyHz.toFixed(2)} Hz ${f.amplitudeMps2.toFixed(3)} felt ${f.feltLevel.toFixed(1)}${shares ? ` [${shares}]` : ''}`;
        })
        .join('; ') || 'no finding'),
    truth:
      one.faults
        .map((f) => `${f.kind} d ${f.detectability.toFixed(0)} (${f.named.slice(0, 3).map(lineText).join(' + ')})`)
        .join(' & ') || 'sound',
    stated,
    frequency:
      error === null ? null : { relative: error / trueHz!, overSd: error / Math.max(first!.frequencySdHz, 1e-9) },
    falseFindings: stated.filter((s) => !s.hit).length,
    seen: one.faults.every((f) => f.detectability >= UNSEEN_BELOW),
  };
};
