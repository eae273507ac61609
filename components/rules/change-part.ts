import { html, nothing, type TemplateResult } from 'lit';
import type { RuleChange } from '../../src/engine/index.js';
import type { RuleSet } from '../../src/model/index.js';
import { fitsPart, windowsChange, type ChangeSetting } from './change-view.js';

interface Compared {
  readonly rules: RuleSet;
  readonly beforeRules: RuleSet | null;
  readonly change: RuleChange | null;
  readonly busy: boolean;
  /** Whether the rules may not be changed back. */
  readonly readonly: boolean;
}

interface ChangeActs {
  back(before: RuleSet): void;
  base(): void;
}

/** The rules against those before: what to do about the difference, and what it does to windows and fits. */
export function changePart(
  { rules, beforeRules, change, busy, readonly }: Compared,
  setting: ChangeSetting,
  acts: ChangeActs,
): TemplateResult {
  const { words } = setting;
  const same = beforeRules !== null && JSON.stringify(beforeRules) === JSON.stringify(rules);
  return html`<section part="change" class="change" aria-label=${words.change}>
    <h3>${words.change} <span class="quiet">${words.changeTold}</span></h3>
    ${
      beforeRules === null || same
        ? nothing
        : html`<p class="acts">
            <button
              type="button"
              data-act="back"
              ?disabled=${readonly}
              @click=${() => acts.back(beforeRules)}
            >
              ${words.back}
            </button>
            <button type="button" data-act="base" @click=${() => acts.base()}>${words.base}</button>
          </p>`
    }
    ${
      same
        ? html`<p class="quiet">${words.same}</p>`
        : change
          ? windowsChange(change, setting)
          : html`<p class="quiet">${busy ? words.working : words.noBefore}</p>`
    }
    ${
      !change || same
        ? nothing
        : html`<h4>${words.fits}</h4>
            <div aria-live="polite" aria-busy=${change.fits === null}>
              ${
                change.fits
                  ? fitsPart(change.fits, setting)
                  : html`<p class="quiet working">${words.working}</p>`
              }
            </div>`
    }
  </section>`;
}
