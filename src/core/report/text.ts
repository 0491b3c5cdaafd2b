/** The Report as plain text, made to be read aloud: the answer first, then why, then what to do. */
import type { FindingReport, Report } from './report.ts';
import { checkHeading } from './check-heading.ts';
import type { UnitSystem } from './format.ts';
import { accelerationText, feltText, frequencyWithSdText } from './format.ts';
import { duringText, likeliestText, perceivedText, sureText } from './order-words.ts';
import { causesText, checkText, proofText, repairText } from './text-causes.ts';
import { ordersText, runsText } from './text-tables.ts';
import { wrap } from './wrap.ts';
import { capitalized, chanceText } from '../words.ts';

export interface TextOptions {
  readonly units: UnitSystem;
  /** Columns of the terminal; default 96. */
  readonly width?: number;
  /** Mark headings with terminal emphasis. Off for files and pipes. */
  readonly emphasis?: boolean;
}

/** The whole report as text, with a newline at its end. */
export function reportText(report: Report, options: TextOptions): string {
  const width = options.width ?? 96;
  const heading = (text: string): string => (options.emphasis ? `\u001b[1m${text}\u001b[0m` : text);
  const parts: string[] = [
    heading(wrap(report.sentence, width)) + (report.why === '' ? '' : `\n${wrap(report.why, width)}`),
    `${heading('What was recorded')}\n${runsText(report, options.units, width)}`,
  ];
  report.findings.forEach((finding, index) => {
    parts.push(`${heading(`${index + 1}. ${findingTitle(finding)}`)}\n${findingText(finding, width)}`);
  });
  const { repairs = [], proof } = report;
  if (proof) {
    parts.push(
      `${heading('The proof')}\n${wrap(`${proof.sentence} ${proof.why}`.trim(), width, '  ')}`,
      `${heading('Do this next')}\n${proofText(proof, width)}`,
    );
  }
  if (repairs.length > 0) {
    const told = repairs.map((repair) => repairText(repair, width));
    parts.push(`${heading(proof ? 'Then' : 'Do this next')}\n${told.join('\n')}`);
  }
  const [next, ...later] = report.checks;
  if (next) parts.push(`${heading(checkHeading(report))}\n${checkText(next, report.findings, width)}`);
  if (later.length > 0) {
    const rows = later
      .slice(0, 4)
      .map((check) => wrap(`${check.title} (about ${check.minutes} minutes)`, width, '  - '));
    parts.push(`${heading('After that')}\n${rows.join('\n')}`);
  }
  parts.push(`${heading('Orders')}\n${ordersText(report)}`);
  if (report.cautions.length > 0) {
    parts.push(`${heading('Cautions')}\n${report.cautions.map((caution) => wrap(caution, width, '  ! ')).join('\n')}`);
  }
  return `${parts.join('\n\n')}\n`;
}

/** 'Driveshaft 2× at 84.14 ± 0.01 Hz': what a finding is called in a heading. */
export function findingTitle(finding: FindingReport): string {
  const name = capitalized(finding.label);
  return `${name} at ${frequencyWithSdText(finding.frequencyHz, finding.frequencySdHz)}`.replaceAll('\u00a0', ' ');
}

function findingText(finding: FindingReport, width: number): string {
  const lines = [
    wrap(
      `Felt level ${feltText(finding.feltLevel)} (1 is just felt)${perceivedText(finding)}${duringText(finding)}; ${accelerationText(finding.amplitudeMps2)}. ` +
        sureText(finding),
      width,
      '  ',
    ),
  ];
  for (const [word, sentences] of [
    ['For', finding.for],
    ['Against', finding.against],
    ['Missing', finding.missing],
  ] as const) {
    sentences.forEach((sentence) => lines.push(wrap(sentence, width, `  ${`${word}:`.padEnd(9)}`)));
  }
  for (const other of finding.sharesFrequencyWith) {
    const text = `Shares its frequency with ${other.label} (${chanceText(other.probability)}). ${other.separatedBy} ${likeliestText(other)}`;
    lines.push(wrap(text, width, '  '));
  }
  // 'Something else' alone says nothing.
  if (finding.causes.length > 1) lines.push('', causesText(finding, width));
  return lines.join('\n');
}
