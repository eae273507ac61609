import { html, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { repeat } from 'lit/directives/repeat.js';
import { curfewBars, weekdays, type Curfew, type Weekday } from '../../src/model/index.js';
import { kindPatterns, kindSwatch } from '../shared/kinds.js';
import { changeTold, choiceField, textField, type Form } from './form.js';
import { readClock } from './read-field.js';
import { freeName, withCurfew, withCurfewAdded, withField, withoutCurfew } from './rule-edits.js';
import { applied, nameField, removeButton, sourceField, type Rows } from './row-parts.js';
import { weekdayText } from '../shared/format.js';

/** The times of day at which work stops: name, what stops, from, to, days, source. */
export function curfewList(form: Form, rows: Rows): TemplateResult {
  const { words, rules } = form;
  return html`<section class="curfews" part="curfews" data-list="curfews">
    <h3>
      <svg width="16" height="12" aria-hidden="true">${kindPatterns}${kindSwatch('curfew')}</svg>
      ${words.curfews}
    </h3>
    ${
      rules.curfews.length === 0
        ? html`<p class="quiet none">${words.noCurfews}</p>`
        : html`<ol>
            ${repeat(
              rules.curfews,
              (_, index) => rows.keys.at(index),
              (curfew, index) => curfewRow(form, curfew, index, rows),
            )}
          </ol>`
    }
    <button
      type="button"
      class="add"
      data-add="curfews"
      @click=${() => {
        const name = freeName(
          rules.curfews.map((curfew) => curfew.name),
          words.newCurfew,
        );
        const edit = { rules: withCurfewAdded(rules, name), label: words.added(name) };
        rows.add(edit, rules.curfews.length);
      }}
    >
      ${words.addCurfew}
    </button>
  </section>`;
}

function curfewRow(form: Form, curfew: Curfew, index: number, rows: Rows): TemplateResult {
  const { words, rules } = form;
  const row = rows.keys.at(index);
  const named = `\u201c${curfew.name}\u201d`;
  const next = (changed: Curfew) => withCurfew(rules, index, changed);
  const clock = (field: 'from' | 'to'): TemplateResult =>
    textField(form, {
      key: `${row}.${field}`,
      label: words[field],
      value: curfew[field],
      size: 'clock',
      edit: (text) =>
        applied(readClock(text, words.wrong), (value) => ({
          rules: next({ ...curfew, [field]: value }),
          label: changeTold(words, `${named}, ${words[field]}`, curfew[field], value),
        })),
    });
  return html`<li class="row" data-row=${row}>
    <span class="number" aria-hidden="true">${index + 1}</span>
    <div class="fields">
      ${nameField(form, row, words.curfew, curfew.name, (name) => ({
        rules: next({ ...curfew, name }),
        label: changeTold(words, words.curfew, curfew.name, name),
      }))}
      ${choiceField(form, {
        key: `${row}.bars`,
        label: words.bars,
        value: curfew.bars,
        choices: curfewBars.map((choice) => [choice, words.barsText[choice]] as const),
        edit: (bars) => ({
          value: {
            rules: next({ ...curfew, bars }),
            label: changeTold(words, named, words.barsText[curfew.bars], words.barsText[bars]),
          },
        }),
      })}
      <div class="spread">${clock('from')}${clock('to')}</div>
      ${daysField(form, curfew, index, row)}
      ${sourceField(form, row, curfew.source, (source) => ({
        rules: next(withField(curfew, 'source', source)),
        label: changeTold(words, `${words.source} ${named}`, curfew.source, source),
      }))}
    </div>
    <div class="controls">
      ${removeButton(form, named, () =>
        rows.remove({ rules: withoutCurfew(rules, index), label: words.removed(named) }, index),
      )}
    </div>
  </li>`;
}

/** The days on which it starts; all seven are kept as none named, which means every day. */
function daysField(form: Form, curfew: Curfew, index: number, row: string): TemplateResult {
  const { words, rules } = form;
  const key = `${row}.days`;
  const draft = form.drafts.get(key);
  const chosen = new Set<Weekday>(curfew.days ?? weekdays);
  const turn = (day: Weekday): void => {
    const days = weekdays.filter((weekday) => chosen.has(weekday) !== (weekday === day));
    if (days.length === 0) {
      form.commit(key, '', { trouble: words.wrong.days });
      return;
    }
    const daysText = (list: readonly Weekday[]): string =>
      list.map((text) => weekdayText(1 + weekdays.indexOf(text))).join(', ');
    const kept = days.length === weekdays.length ? undefined : days;
    form.commit(key, '', {
      value: {
        rules: withCurfew(rules, index, withField(curfew, 'days', kept)),
        label: changeTold(
          words,
          `\u201c${curfew.name}\u201d`,
          daysText([...chosen]),
          daysText(days),
        ),
      },
    });
  };
  return html`<fieldset class="field days">
    <legend class="label">${words.days}</legend>
    <span class="boxes"
      >${weekdays.map(
        (day) =>
          html`<label class="box"
            ><input
              type="checkbox"
              data-field="${key}.${day}"
              .checked=${live(chosen.has(day))}
              @change=${() => turn(day)}
            />${weekdayText(1 + weekdays.indexOf(day))}</label
          >`,
      )}</span
    >
    ${
      draft
        ? html`<span class="wrong" role="alert"
            ><span aria-hidden="true">✕</span> ${draft.trouble}</span
          >`
        : ''
    }
  </fieldset>`;
}
