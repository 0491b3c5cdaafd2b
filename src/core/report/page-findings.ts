/** Findings, causes and the next check on the page. */
import type { CauseReport, FindingReport, RepairReport, Report } from './report.ts';
import { capitalized, chanceText } from '../words.ts';
import { checkHeading } from './check-heading.ts';
import { effortText } from './effort-text.ts';
import { accelerationText, feltText, percentText } from './format.ts';
import type { Markup } from './html.ts';
import { html } from './html.ts';
import { duringText, likeliestText, perceivedText, sureText } from './order-words.ts';
import { commonEvidence } from './common-evidence.ts';
import { tellsApartText } from './tells-apart.ts';
import { findingTitle } from './text.ts';

/** So many causes are told with their evidence; the others by name, or the page would bury the answer. */
const TOLD_IN_FULL = 5;

/** A finding with what speaks for and against it, and its causes. */
export function findingMarkup(finding: FindingReport): Markup {
  // 'Something else' alone says nothing.
  const told = finding.causes.length > 1 ? finding.causes : [];
  const { common, causes } = commonEvidence(told.slice(0, TOLD_IN_FULL));
  return html`<section>
    <h2>${findingTitle(finding)}</h2>
    <p>
      Felt level ${feltText(finding.feltLevel)}${perceivedText(finding)}${duringText(finding)};
      ${accelerationText(finding.amplitudeMps2)}. ${sureText(finding)}
    </p>
    ${evidence(finding)}
    ${finding.sharesFrequencyWith.map((other) => html`<p>Shares its frequency with <b>${other.label}</b> (${chanceText(other.probability)}). ${other.separatedBy} ${likeliestText(other)}</p>`)}
    ${causes.length > 0 ? html`<h3>Causes of ${finding.label}</h3>` : null} ${evidence(common, ' (most of them)')} ${causes.map((cause) => causeMarkup(cause))} ${lesserCauses(told.slice(TOLD_IN_FULL))}
  </section>`;
}

function lesserCauses(causes: readonly CauseReport[]): Markup | null {
  if (causes.length === 0) return null;
  const names = causes.map(({ title, probability }) => `${title} (${percentText(probability)})`).join('; ');
  return html`<p class="cause soft">Less likely: ${names}.</p>`;
}

function causeMarkup(cause: CauseReport): Markup {
  const before =
    cause.probabilityBefore === undefined
      ? null
      : html` <span class="soft">(before measuring ${percentText(cause.probabilityBefore)})</span>`;
  return html`<div class="cause">
    <div class="row"><span>${cause.title}</span><span>${percentText(cause.probability)}${before}</span></div>
    ${evidence(cause)}${cause.repair === '' ? null : html`<p>Repair: ${cause.repair}</p>`}
  </div>`;
}

function evidence(
  of: {
    readonly for: readonly string[];
    readonly against: readonly string[];
    readonly missing: readonly string[];
  },
  whose = '',
): Markup {
  const line = (word: string, sentences: readonly string[]): Markup | null =>
    sentences.length === 0 ? null : html`<p class="soft">${word}${whose}: ${sentences.join(' ')}</p>`;
  return html`${line('For', of.for)}${line('Against', of.against)}${line('Missing', of.missing)}`;
}

/** What a measurement has found, to be put right and proved first. */
export function repairsMarkup({ repairs = [] }: Report): Markup | null {
  return repairs.length === 0 ? null : html`${repairs.map(repairMarkup)}`;
}

const repairMarkup = ({ title, found, repair, prove, cautions }: RepairReport): Markup =>
  stepsMarkup(title, null, [...found, repair, prove], cautions);

/** What the runs after the repair showed, and what follows. */
export const proofMarkup = ({ proof }: Report): Markup | null =>
  proof ? stepsMarkup(proof.title, `${proof.sentence} ${proof.why}`, proof.steps, proof.cautions) : null;

function stepsMarkup(
  title: string,
  because: string | null,
  steps: readonly string[],
  cautions: readonly string[],
): Markup {
  return html`<section class="next">
    <h2>${title}</h2>
    ${because === null ? null : html`<p>${because}</p>`}
    <ol>
      ${steps.map((step) => html`<li>${step}</li>`)}
    </ol>
    ${cautions.map((caution) => html`<p class="caution">${caution}</p>`)}
  </section>`;
}

/** The first check with its steps, limit and cautions; the later ones by title. */
export function nextCheckMarkup(report: Report): Markup | null {
  const [next, ...later] = report.checks;
  if (!next) return null;
  const apart = tellsApartText(next, report.findings);
  return html`<section class="next">
    <h2>${checkHeading(report)}: ${next.title}</h2>
    <p>${capitalized(effortText(next))}.${apart === '' ? '' : ` Tells apart: ${apart}.`}</p>
    <ol>
      ${next.how.map((step) => html`<li>${step}</li>`)}
    </ol>
    ${next.limit === null ? null : html`<p>Limit: ${next.limit}</p>`}
    ${next.cautions.map((caution) => html`<p class="caution">${caution}</p>`)}
    ${
      later.length === 0
        ? null
        : html`<p class="soft">
            After that:
            ${later
              .slice(0, 4)
              .map(({ title }) => title)
              .join('; ')}.
          </p>`
    }
  </section>`;
}
