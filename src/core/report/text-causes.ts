/** Causes and checks as plain text. */
import type { CauseReport, CheckReport, FindingReport, ProofReport, RepairReport } from './report.ts';
import { effortText } from './effort-text.ts';
import { commonEvidence } from './common-evidence.ts';
import { tellsApartText } from './tells-apart.ts';
import { percentText } from './format.ts';
import { wrap } from './wrap.ts';

const INDENT = ' '.repeat(10);
/** Causes less likely than this are counted, not listed. */
const LEAST_LISTED = 0.02;
/** So many causes are told with their evidence; more would bury the answer. The page and JSON tell all. */
const TOLD_IN_FULL = 3;

/** The causes of a finding, most likely first. */
export function causesText(finding: FindingReport, width: number): string {
  const listed = finding.causes.filter((cause) => cause.probability >= LEAST_LISTED);
  const rest = finding.causes.length - listed.length;
  const { common, causes } = commonEvidence(listed.slice(0, TOLD_IN_FULL));
  const lines = [
    `  Causes of ${finding.label}`,
    ...evidenceLines(common, width, ' (most of them)'),
    ...causes.map((cause) => causeText(cause, width, true)),
    ...listed.slice(TOLD_IN_FULL).map((cause) => causeText(cause, width, false)),
  ];
  if (rest > 0) lines.push(`${INDENT}and ${rest} more, each under 2 in 100`);
  return lines.join('\n');
}

function causeText(cause: CauseReport, width: number, inFull: boolean): string {
  const before =
    cause.probabilityBefore === undefined ? '' : ` (before measuring ${percentText(cause.probabilityBefore)})`;
  const title = wrap(`${cause.title}${before}`, width, `  ${percentText(cause.probability).padStart(6)}  `);
  if (!inFull) return title;
  const lines = [title, ...evidenceLines(cause, width)];
  if (cause.repair !== '') lines.push(wrap(`Repair: ${cause.repair}`, width, INDENT));
  return lines.join('\n');
}

/** What speaks for, against, and what is missing, a paragraph each. */
const evidenceLines = (of: Pick<CauseReport, 'for' | 'against' | 'missing'>, width: number, whose = ''): string[] =>
  (
    [
      ['For', of.for],
      ['Against', of.against],
      ['Missing', of.missing],
    ] as const
  )
    .filter(([, sentences]) => sentences.length > 0)
    .map(([word, sentences]) => wrap(`${word}${whose}: ${sentences.join(' ')}`, width, INDENT));

/** One check with its steps, limit and cautions. */
export function checkText(check: CheckReport, findings: readonly FindingReport[], width: number): string {
  const lines = [wrap(`${check.title} (${effortText(check)})`, width, '  ')];
  const apart = tellsApartText(check, findings);
  if (apart !== '') lines.push(wrap(`Tells apart: ${apart}.`, width, '      '));
  check.how.forEach((step, index) => lines.push(wrap(step, width, `  ${String(index + 1).padStart(2)}. `)));
  if (check.limit !== null) lines.push(wrap(`Limit: ${check.limit}`, width, '      '));
  check.cautions.forEach((caution) => lines.push(wrap(caution, width, '   ! ')));
  return lines.join('\n');
}

/** A fault that a measurement has found: what was read, how it is put right, how that is proved. */
export const repairText = ({ title, found, repair, prove, cautions }: RepairReport, width: number): string =>
  stepsText(title, [...found, repair, prove], cautions, width);

/** What follows from the proof of a repair. */
export const proofText = ({ title, steps, cautions }: ProofReport, width: number): string =>
  stepsText(title, steps, cautions, width);

const stepsText = (title: string, steps: readonly string[], cautions: readonly string[], width: number): string =>
  [
    wrap(title, width, '  '),
    ...steps.map((step, index) => wrap(step, width, `  ${String(index + 1).padStart(2)}. `)),
    ...cautions.map((caution) => wrap(caution, width, '   ! ')),
  ].join('\n');
