import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { durationText } from '../../../src/calendar/index.js';
import { ruleSketch, sketchWindow, type Results } from '../../../src/engine/index.js';
import type { PlanDocument, RuleSet } from '../../../src/model/index.js';
import type { Desk } from '../desk-parts.js';
import type { DeskStrings } from '../strings.js';
import { changing } from '../../shared/changing.js';
import { ruleName } from '../../shared/said.js';

/** Length of the closure that the pictures of rule sets are drawn in, in minutes; its start is of no matter. */
const CLOSURE = 480;
const START = Date.UTC(2027, 1, 3, 22);

/** Whether a plan has nothing to plan with yet. */
export const isBlank = ({ plan }: Results): boolean =>
  plan.windows.length === 0 && plan.activities.length === 0;

/** What is shown of a plan with nothing in it: three ways to begin, and rules to start from. */
export function beginView(desk: Desk, document: PlanDocument): TemplateResult {
  const { words } = desk;
  return html`<div class="fill pad begin">
    <h2>${words.beginTitle}</h2>
    <p>${words.beginTold}</p>
    <div class="doors">
      <button type="button" class="door strong" @click=${() => desk.show('files')}>
        <strong>${words.ownFiles}</strong> ${words.ownFilesTold}
      </button>
      ${
        desk.openSample
          ? html`<button type="button" class="door" @click=${() => void desk.openSample?.()}>
              <strong>${words.sample}</strong> ${words.sampleTold}
            </button>`
          : nothing
      }
      <button
        type="button"
        class="door"
        @click=${() => {
          desk.workTable = 'windows';
          desk.show('work');
        }}
      >
        <strong>${words.emptyTables}</strong> ${words.emptyTablesTold}
      </button>
    </div>
    ${desk.ruleSets.length === 0 ? nothing : ruleCards(desk, document)}
  </div>`;
}

function ruleCards(desk: Desk, document: PlanDocument): TemplateResult {
  return changing(
    desk.sharing.reads,
    rulesToBegin(desk.ruleSets, document.rules, desk.words, (rules) =>
      desk.change(
        { part: ['rules'], from: document.rules, value: rules },
        desk.words.rulesTaken(rules.name),
      ),
    ),
  );
}

/** Sets of rules to begin with, each drawn with what it deducts. */
export function rulesToBegin(
  sets: readonly RuleSet[],
  now: RuleSet,
  words: DeskStrings,
  choose: (rules: RuleSet) => void,
): TemplateResult {
  return html`<h2>${words.deducted}</h2>
    <p>
      ${now.name === 'none' ? words.nothingDeducted : words.deductsBy(now.name)} ${words.beginWith}
    </p>
    <ul class="cards">
      ${sets.map((rules) => ruleCard(rules, now, words, choose))}
    </ul>`;
}

const barOf = (kind: string, from: number, minutes: number): SVGTemplateResult =>
  svg`<rect class="bar ${kind}" x=${from} y="1" width=${minutes} height="22"></rect>`;

function ruleCard(
  rules: RuleSet,
  now: RuleSet,
  words: DeskStrings,
  choose: (rules: RuleSet) => void,
): TemplateResult {
  const { ledger } = ruleSketch(rules, sketchWindow(START, CLOSURE, 'UTC'), {
    isolated: true,
    loud: false,
  });
  const chosen = now.name === rules.name;
  return html`<li>
    <h3>${rules.name}</h3>
    <p>
      ${words.becomes(durationText(CLOSURE))}
      <strong>${durationText(ledger.usableMinutes)}</strong> ${words.usable}
    </p>
    <svg viewBox="0 0 480 24" preserveAspectRatio="none" aria-hidden="true">
      ${ledger.rows.map((row) => barOf(row.kind, (row.start - START) / 60_000, row.minutes))}
    </svg>
    <p class="quiet">
      ${ledger.rows
        .filter((row) => row.kind !== 'usable' && row.minutes > 0)
        .map(
          (row) =>
            `${row.kind === 'margin' ? words.requiredMargin : ruleName(row)} ${durationText(row.minutes)}`,
        )
        .join(', ')}
    </p>
    <button type="button" aria-pressed=${chosen} @click=${() => choose(rules)}>
      ${chosen ? words.chosen : words.beginWithThese}
    </button>
  </li>`;
}
