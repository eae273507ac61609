import { saidText } from '../shared/said.js';
import { html, nothing, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import {
  type OptionOutcome,
  type OptionsAnswer,
  type PricedOption,
} from '../../src/engine/index.js';
import { clockText, dayText } from '../shared/format.js';
import { errorText, moneyText, sumText } from '../overrun/money-text.js';
import type { OptionsStrings } from './strings.js';
import { percentText } from '../shared/chance.js';

export interface OptionRowShown {
  readonly answer: OptionsAnswer;
  readonly zone: string;
  readonly strings: OptionsStrings;
  /** Whether options cannot be taken into the plan. */
  readonly readonly: boolean;
  readonly take: (option: PricedOption) => void;
}

/** An option with its figures and, collapsed, how they are calculated. */
export function optionRow(option: OptionOutcome, shown: OptionRowShown): TemplateResult {
  const { answer, strings } = shown;
  if (option.state !== 'priced')
    return html`<li part="option">
      <div>
        <h3>${saidText(option.name)}</h3>
        <span class="tag">${strings[option.state]}</span>
      </div>
      <p class="quiet">${saidText(option.reason)}</p>
    </li>`;
  const cheapest = answer.cheapest === option.id;
  return html`<li part="option" class=${cheapest ? 'cheapest' : ''}>
    <div>
      <h3>${saidText(option.name)}</h3>
      ${
        cheapest || answer.tied.includes(option.id)
          ? html`<span class="tag">${cheapest ? strings.cheapest : strings.tied}</span>`
          : nothing
      }
      ${option.changes.map((change) => html`<p class="quiet">${saidText(change)}</p>`)}
    </div>
    <div>${figures(option, shown)}</div>
    ${details(option, shown)}
  </li>`;
}

function figures(option: PricedOption, { answer, zone, strings }: OptionRowShown): TemplateResult {
  const { currency } = answer;
  return html`<dl class="figures">
    <div>
      <dt>${strings.total}</dt>
      <dd>
        <strong>${sumText(option.expectedTotal, currency)}</strong>
        <span class="quiet">&plusmn;${moneyText(option.standardError)}</span>
      </dd>
    </div>
    ${
      option.verdict === 'the reference'
        ? nothing
        : html`<div>
            <dt>${strings.difference}</dt>
            <dd>
              <strong>${moneyText(option.difference)}</strong>
              <span class="quiet">&plusmn;${moneyText(option.differenceError)}</span>
              <span class="verdict ${option.verdict}">${strings.verdict[option.verdict]}</span>
            </dd>
          </div>`
    }
    ${option.handbacks.map(
      (handback) =>
        html`<div>
            <dt>${option.handbacks.length > 1 ? `${handback.window}: ` : ''}${strings.onTime}</dt>
            <dd>
              <strong>${percentText(handback.onTime.probability, answer.runs)}</strong>
              <span class="quiet">${errorText(handback.onTime.standardError)}</span>
            </dd>
          </div>
          <div>
            <dt>${strings.p80}</dt>
            <dd>${dayText(handback.p80, zone)} ${clockText(handback.p80, zone)}</dd>
          </div>
          <div>
            <dt>${strings.margin}</dt>
            <dd>${durationText(handback.marginMinutes)}</dd>
          </div>`,
    )}
  </dl>`;
}

function details(option: PricedOption, shown: OptionRowShown): TemplateResult {
  const { answer, strings, zone } = shown;
  return html`<details>
    <summary>${strings.details}<span class="unseen">, ${saidText(option.name)}</span></summary>
    ${option.breakEven ? html`<p>${saidText(option.breakEven.text)}</p>` : nothing}
    <p class="quiet">
      ${
        option.verdict === 'the reference'
          ? nothing
          : strings.cheaperIn(percentText(option.cheaperInShare, answer.runs))
      }
      ${strings.totalsNote} ${strings.p50Total} ${sumText(option.p50Total, answer.currency)},
      ${strings.p80Total} ${sumText(option.p80Total, answer.currency)}, ${strings.p95Total}
      ${sumText(option.p95Total, answer.currency)}.
    </p>
    <table class="parts">
      <thead>
        <tr>
          <th scope="col">${strings.part}</th>
          <th scope="col" class="figure">${strings.cost(answer.currency)}</th>
        </tr>
      </thead>
      <tbody>
        ${option.parts.map(
          (part) =>
            html`<tr>
              <th scope="row">
                ${saidText(part.what)}
                ${formulaLines(saidText(part.formula)).map((line) => html`<span class="formula">${line}</span>`)}
                <span class="formula">${strings.source}: ${saidText(part.source)}</span>
              </th>
              <td class="figure">${moneyText(part.amount)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    ${
      option.moved.length > 0
        ? html`<p>
            ${strings.moved}:
            ${option.moved
              .map(
                (work) =>
                  `${work.units} ${work.activity} ${work.title} (${work.window ?? strings.outside}, ${dayText(work.from, zone)})`,
              )
              .join('; ')}
          </p>`
        : nothing
    }
    ${option.notes.map((note) => html`<p class="quiet">${saidText(note)}</p>`)}
    ${
      option.verdict === 'the reference' || option.kind === 'earlier-cut-off'
        ? nothing
        : html`<button
            type="button"
            part="take"
            ?disabled=${shown.readonly}
            @click=${() => shown.take(option)}
          >
            ${strings.take}<span class="unseen">: ${saidText(option.name)}</span>
          </button>`
    }
  </details>`;
}

/** Splits a formula into one line per sum; a semicolon in brackets does not split. */
export function formulaLines(formula: string): readonly string[] {
  let depth = 0;
  let line = '';
  const lines: string[] = [];
  for (const letter of formula) {
    if (letter === '(') depth += 1;
    if (letter === ')') depth -= 1;
    if (letter === ';' && depth === 0) {
      lines.push(line.trim());
      line = '';
    } else line += letter;
  }
  return [...lines, line.trim()].filter((text) => text !== '');
}
