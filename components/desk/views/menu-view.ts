import { html, nothing, type TemplateResult } from 'lit';
import type { Desk } from '../desk-parts.js';
import { commandView } from './command-view.js';
import { helpView } from './help-view.js';
import { planFiles } from '../files/plan-files.js';

/** What is open over the view: the plan's menu, or the help. Escape closes it. */
export function menuView(desk: Desk): TemplateResult | typeof nothing {
  if (desk.menu === '') return nothing;
  const { words } = desk;
  const close = (): void => {
    desk.menu = '';
  };
  return html`<div
    id="menu"
    class="menu ${desk.menu}"
    role="region"
    tabindex="-1"
    aria-label=${{ plan: words.plan, help: words.help, find: words.find }[desk.menu]}
    @keydown=${(event: KeyboardEvent) => {
      if (event.key === 'Escape') close();
    }}
  >
    <button class="shut" type="button" @click=${close}>${words.close}</button>
    ${desk.menu === 'plan' ? planFiles(desk) : desk.menu === 'find' ? commandView(desk) : helpView(desk)}
  </div>`;
}
