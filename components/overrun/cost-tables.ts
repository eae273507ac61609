import { html, nothing, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import { type ExpectedCost, type PriceResult, type PriceRow } from '../../src/engine/index.js';
import { clockText, dayText } from '../shared/format.js';
import { askFigure, type AskFigure } from './ask-figure.js';
import { errorText, moneyText, sumText } from './money-text.js';
import type { StepGroup } from './numbered-steps.js';
import type { OverrunStrings } from './strings.js';
import { percentText } from '../shared/chance.js';
import { saidText } from '../shared/said.js';

/** The heads of cost of one overrun, how each is calculated, and their total; zero rows are collapsed. */
export function rowTable(at: PriceResult, ask: AskFigure, strings: OverrunStrings): TemplateResult {
  const costly = at.rows.filter((row) => Number(row.amount) !== 0);
  const free = at.rows.filter((row) => Number(row.amount) === 0);
  const line = (row: PriceRow): TemplateResult => costRow(row, at, ask, strings);
  return html`<table class="rows">
      <thead>
        <tr>
          <th scope="col">${strings.headOfCost}</th>
          <th scope="col" class="figure">${strings.amount(at.currency)}</th>
        </tr>
      </thead>
      <tbody>
        ${costly.map(line)}
      </tbody>
      <tfoot>
        <tr class="sum">
          <th scope="row">${strings.sum}</th>
          <td class="figure">
            <strong
              >${askFigure(
                moneyText(at.total),
                sumText(at.total, at.currency),
                { of: 'cost-total' },
                ask,
                strings,
              )}</strong
            >
          </td>
        </tr>
        ${
          at.rows.some((row) => !row.counted)
            ? html`<tr>
                <th scope="row">${strings.sumNotCounted}</th>
                <td class="figure beside">${moneyText(at.notCounted)}</td>
              </tr>`
            : nothing
        }
      </tfoot>
    </table>
    ${
      free.length === 0
        ? nothing
        : html`<details class="nothing">
            <summary>${strings.costNothing(free.length)}</summary>
            <table class="rows">
              <tbody>
                ${free.map(line)}
              </tbody>
            </table>
          </details>`
    }`;
}

function costRow(
  row: PriceRow,
  { currency }: PriceResult,
  ask: AskFigure,
  strings: OverrunStrings,
): TemplateResult {
  return html`<tr part="row" class=${row.counted ? 'counts' : 'beside'}>
    <th scope="row">
      <span class="title">${saidText(row.title)}</span>
      ${
        strings.head[row.head].toLowerCase() === saidText(row.title).toLowerCase()
          ? nothing
          : html`<span class="head">${strings.head[row.head]}</span>`
      }
      <span class="formula">${saidText(row.formula)}</span>
      <span class="source">${strings.source}: ${saidText(row.source)}</span>
    </th>
    <td class="figure">
      <span class="amount"
        >${askFigure(
          moneyText(row.amount),
          `${saidText(row.title)}, ${sumText(row.amount, currency)}`,
          { of: 'cost-row', code: row.code },
          ask,
          strings,
        )}</span
      >
      <span class="state">${row.counted ? strings.counted : strings.notCounted}</span>
    </td>
  </tr>`;
}

/** The steps of the curve by minute; with chances, also the share of shifts that reach each. */
export function stepTable(
  groups: readonly StepGroup[],
  expected: ExpectedCost | null,
  asked: number,
  strings: OverrunStrings,
): TemplateResult {
  if (groups.length === 0) return html`<p class="quiet">${strings.noSteps}</p>`;
  // All steps of one minute have the same chance.
  const chances = new Map((expected?.steps ?? []).map((step) => [step.atMinute, step]));
  const runs = expected?.runs;
  const withChance = chances.size > 0;
  return html`<div class="scroll list" tabindex="0" role="region" aria-label=${strings.steps}>
    <table class="steps">
      <thead>
        <tr>
          <th scope="col"><span class="unseen">${strings.mark}</span></th>
          <th scope="col" class="figure">${strings.from}</th>
          <th scope="col" class="what">${strings.what}</th>
          <th scope="col" class="figure">${strings.rise}</th>
          ${withChance ? html`<th scope="col" class="figure">${strings.chance}</th>` : nothing}
        </tr>
      </thead>
      <tbody>
        ${groups.map((group) => {
          const chance = chances.get(group.atMinute);
          return html`<tr class=${group.atMinute <= asked ? 'reached' : ''}>
            <td>
              ${group.mark === undefined ? nothing : html`<span class="disc">${group.mark}</span>`}
            </td>
            <td class="figure">${durationText(group.atMinute)}</td>
            <td class="what">
              ${group.steps.map(
                (step) =>
                  html`<div>
                    ${saidText(step.name)}${step.counted ? nothing : html`<span class="quiet">, ${strings.notCounted}</span>`}
                  </div>`,
              )}
            </td>
            <td class="figure">${group.mark === undefined ? nothing : moneyText(group.rise)}</td>
            ${
              withChance
                ? html`<td class="figure">
                    ${
                      chance
                        ? html`${percentText(chance.chance, runs)}
                            <span class="quiet">${errorText(chance.standardError)}</span>`
                        : nothing
                    }
                  </td>`
                : nothing
            }
          </tr>`;
        })}
      </tbody>
    </table>
  </div>`;
}

/** The trains that a late handback delays or cancels. */
export function trainTable(at: PriceResult, zone: string, strings: OverrunStrings): TemplateResult {
  return html`<div class="scroll" tabindex="0" role="region" aria-label=${strings.trains}>
    <table class="trains">
      <thead>
        <tr>
          <th scope="col">${strings.train}</th>
          <th scope="col">${strings.due}</th>
          <th scope="col">${strings.passes}</th>
          <th scope="col" class="figure">${strings.late}</th>
          <th scope="col" class="figure">${strings.weight}</th>
          <th scope="col" class="figure">${strings.charged}</th>
        </tr>
      </thead>
      <tbody>
        ${at.trains.map(
          (train) =>
            html`<tr>
              <th scope="row">${train.train}</th>
              <td class="when">${dayText(train.dueAt, zone)} ${clockText(train.dueAt, zone)}</td>
              <td class="when">
                ${
                  train.cancelled
                    ? html`<strong class="cancelled">${strings.cancelled}</strong>`
                    : clockText(train.leavesAt, zone)
                }
              </td>
              <td class="figure">${durationText(train.minutesLate)}</td>
              <td class="figure">${train.weight}</td>
              <td class="figure">${train.countedMinutes}</td>
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}
