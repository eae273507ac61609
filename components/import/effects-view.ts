import { html, nothing, type TemplateResult } from 'lit';
import type { Effect, ImportPreview, Take } from '../../src/engine/types.js';
import { numberText } from '../shared/format.js';
import type { Choose } from './choices-view.js';
import type { ImportStrings } from './strings.js';

const takes: readonly Take[] = ['replace', 'append', 'update'];

/** What taking the file would do to the plan, each way of taking it with its counts. */
export function effectsView(
  { effects, chosen, rewritten }: ImportPreview,
  group: string,
  words: ImportStrings,
  choose: Choose,
): TemplateResult | typeof nothing {
  if (!effects) return nothing;
  const offered = effects.replace.before === 0 ? takes.slice(0, 1) : takes;
  const radio = (
    value: Take | 'leave',
    label: string,
    told: string,
    on: boolean,
    pick: () => void,
  ): TemplateResult =>
    html`<label class="way">
      <input type="radio" name=${group} value=${value} .checked=${on} @change=${pick} />
      <span
        ><strong>${label}</strong
        >${told === '' ? nothing : html` <span class="quiet">${told}</span>`}</span
      >
    </label>`;
  return html`<fieldset class="ways">
    <legend>${words.into}</legend>
    ${offered.map((take) =>
      radio(
        take,
        words.takes[take],
        toldOf(take, effects[take], words),
        !chosen.leave && (chosen.take === take || offered.length === 1),
        () => choose({ take, leave: false }),
      ),
    )}
    ${radio('leave', words.leave, '', chosen.leave, () => choose({ leave: true }))}
    ${rewritten > 0 ? html`<p class="quiet">${words.rewritten(words.count.cell(rewritten))}</p>` : nothing}
  </fieldset>`;
}

function toldOf(take: Take, effect: Effect, words: ImportStrings): string {
  const rows = (count: number): string => words.count.row(count);
  const figure = (count: number): string => numberText(count);
  switch (take) {
    case 'replace':
      return effect.before === 0
        ? words.firstTable(rows(effect.after))
        : words.replaces(rows(effect.before), figure(effect.removed));
    case 'append':
      return words.adds(rows(effect.added), figure(effect.twice));
    case 'update':
      return words.updates(rows(effect.changed), figure(effect.added), figure(effect.unchanged));
  }
}
