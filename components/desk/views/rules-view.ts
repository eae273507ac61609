import { html, nothing, type TemplateResult } from 'lit';
import type { Results } from '../../../src/engine/index.js';
import type { PlanDocument } from '../../../src/model/index.js';
import type { RulesChangeEvent } from '../../rules/rules-change-event.js';
import type { RulesSaveEvent } from '../../rules/rules-save-event.js';
import type { WhyLinkEvent } from '../../why/why-events.js';
import type { Desk } from '../desk-parts.js';
import { saveFile } from '../files/save-file.js';

/** The rule set as a form and a picture, with what each change gains and loses. */
export function rulesView(desk: Desk, results: Results, document: PlanDocument): TemplateResult {
  const { ruleTrial } = desk;
  return html`<div class="fill pad">
    ${ruleTrial.trouble ? html`<p class="trouble" role="alert">${ruleTrial.trouble}</p>` : nothing}
    <possession-rules
      .rules=${document.rules}
      .readonly=${desk.sharing.reads}
      .beforeRules=${ruleTrial.before}
      .change=${ruleTrial.change}
      .busy=${ruleTrial.busy}
      .windows=${results.plan.windows}
      .activities=${results.plan.activities}
      .zone=${document.zone}
      @possession-rules-change=${(event: RulesChangeEvent) => {
        if (!ruleTrial.before) ruleTrial.startFrom(document.rules);
        desk.change({ part: ['rules'], from: document.rules, value: event.rules }, event.label);
      }}
      @possession-rules-save=${({ name, text, mediaType }: RulesSaveEvent) =>
        saveFile(name, text, mediaType)}
      @possession-rules-base=${() => ruleTrial.startFrom(document.rules)}
      @possession-why-link=${(event: WhyLinkEvent) => void desk.goTo(event.place)}
    ></possession-rules>
  </div>`;
}

/** Asks what the rules changed, where they did. */
export function askRules({ engine, document, ruleTrial }: Desk): void {
  if (engine && document) void ruleTrial.ask(engine, document);
}
