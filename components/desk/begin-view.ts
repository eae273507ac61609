import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import { ruleSketch, sketchWindow, type Results } from '../../src/engine/index.js';
import type { PlanDocument, RuleSet } from '../../src/model/index.js';
import { kindText } from '../shared/kinds.js';
import type { Desk } from './desk-parts.js';

/** Length of the closure that the pictures of rule sets are drawn in, in minutes; its start is of no matter. */
const CLOSURE = 480;
const START = Date.UTC(2027, 1, 3, 22);

/** Whether a plan has nothing to plan with yet. */
export const isBlank = ({ plan }: Results): boolean =>
  plan.windows.length === 0 && plan.activities.length === 0;

/** What is shown of a plan with nothing in it: three ways to begin, and rules to start from. */
export function beginView(desk: Desk, document: PlanDocument): TemplateResult {
  return html`<div class="fill pad begin">
    <h2>Which of your work fits which of your possessions?</h2>
    <p>
      Two tables are needed: the windows (name, start, end) and the work (package, activity,
      minutes). Drop the files anywhere on this page, or begin by a door. The plan is then made by
      itself, and the answer stands here.
    </p>
    <div class="doors">
      <button type="button" class="door strong" @click=${() => desk.show('files')}>
        <strong>My own files</strong> CSV, a workbook, or cells to paste
      </button>
      ${
        desk.openSample
          ? html`<button type="button" class="door" @click=${() => void desk.openSample?.()}>
              <strong>The sample</strong> an invented line, to look round in
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
        <strong>Empty tables</strong> to type in
      </button>
    </div>
    ${desk.ruleSets.length === 0 ? nothing : ruleCards(desk, document)}
  </div>`;
}

function ruleCards(desk: Desk, document: PlanDocument): TemplateResult {
  return rulesToBegin(desk.ruleSets, document.rules, (rules) =>
    desk.change({ part: ['rules'], from: document.rules, value: rules }, `rules: ${rules.name}`),
  );
}

/** Sets of rules to begin with, each drawn with what it deducts. */
export function rulesToBegin(
  sets: readonly RuleSet[],
  now: RuleSet,
  choose: (rules: RuleSet) => void,
): TemplateResult {
  return html`<h2>What is deducted from every window</h2>
    <p>
      ${
        now.name === 'none'
          ? 'Nothing yet: without rules every booked minute would count as usable.'
          : `This plan deducts by “${now.name}”.`
      }
      Begin with one of these examples and change its minutes to your own.
    </p>
    <ul class="cards">
      ${sets.map((rules) => ruleCard(rules, now, choose))}
    </ul>`;
}

const barOf = (kind: string, from: number, minutes: number): SVGTemplateResult =>
  svg`<rect class="bar ${kind}" x=${from} y="1" width=${minutes} height="22"></rect>`;

function ruleCard(rules: RuleSet, now: RuleSet, choose: (rules: RuleSet) => void): TemplateResult {
  const { ledger } = ruleSketch(rules, sketchWindow(START, CLOSURE, 'UTC'), {
    isolated: true,
    loud: false,
  });
  const chosen = now.name === rules.name;
  return html`<li>
    <h3>${rules.name}</h3>
    <p>
      ${durationText(CLOSURE)} with isolation become
      <strong>${durationText(ledger.usableMinutes)}</strong> usable
    </p>
    <svg viewBox="0 0 480 24" preserveAspectRatio="none" aria-hidden="true">
      ${ledger.rows.map((row) => barOf(row.kind, (row.start - START) / 60_000, row.minutes))}
    </svg>
    <p class="quiet">
      ${ledger.rows
        .filter((row) => row.kind !== 'usable' && row.minutes > 0)
        .map(
          (row) =>
            `${row.kind === 'margin' ? kindText.margin : row.rule} ${durationText(row.minutes)}`,
        )
        .join(', ')}
    </p>
    <button type="button" aria-pressed=${chosen} @click=${() => choose(rules)}>
      ${chosen ? 'Chosen' : 'Begin with these'}
    </button>
  </li>`;
}
