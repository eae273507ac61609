import { html, nothing, type TemplateResult } from 'lit';
import { durationText, lengthMinutes, type Instant } from '../../../src/calendar/index.js';
import type { HandbackResult } from '../../../src/engine/index.js';
import type { AccessWindow } from '../../../src/model/index.js';
import { dayText, momentText, stretchText, numberText } from '../../shared/format.js';
import { cautionList } from '../../shared/cautions.js';
import { decisionTable } from '../cut-off-tables.js';
import { goPointTable } from '../live/go-points.js';
import { leftOpenList } from '../left-open-list.js';
import { endName, type Setting } from '../result-parts.js';
import type { HandbackStrings } from '../strings.js';
import { aimText, errorText, exactClock } from '../times.js';
import { verdictTag } from '../verdict-shape.js';
import { percentText } from '../../shared/chance.js';
import { titleText } from '../../shared/name.js';
import { subjectName } from '../subject-name.js';

/** From so many rows on the sheet is set closer, so that it stays one. */
const MANY = 16;

/** The longest window in which the clock alone says which day is meant, in minutes. */
const NIGHT = 1440;

const blanks = (
  head: string,
  rows: readonly string[],
  columns: readonly string[],
): TemplateResult =>
  html`<table class="blanks">
    <thead>
      <tr>
        <th scope="col">${head}</th>
        ${columns.map((column) => html`<th scope="col">${column}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (row) =>
          html`<tr>
            <th scope="row">${row}</th>
            ${columns.map(() => html`<td></td>`)}
          </tr>`,
      )}
    </tbody>
  </table>`;

/** One sheet of paper for a window, seen in print only: times to keep, lines to fill in, and what it rests on. */
export function printSheet(
  result: HandbackResult,
  window: AccessWindow | undefined,
  { zone, strings }: Setting<HandbackStrings>,
  assumptions: readonly string[],
  now: Instant | null,
  plan: string,
): TemplateResult {
  const { simulation: run, bookedEnd, live } = result;
  const time = (at: Instant): string => `${dayText(at, zone)} ${exactClock(at, zone)}`;
  // The head of the sheet has the dates: the clock is enough for a night, the day of the week for a blockade.
  const long = window !== undefined && lengthMinutes(window) > NIGHT;
  const brief = (at: Instant): string =>
    long ? `${dayText(at, zone).slice(0, 3)} ${exactClock(at, zone)}` : exactClock(at, zone);
  const aim = aimText(result.confidence);
  const { onTime } = run.outlook;
  const facts: readonly (readonly [string, unknown])[] = [
    ...(plan === '' ? [] : [[strings.planLine, plan] as const]),
    [endName(result, strings), momentText(bookedEnd, zone)],
    ...(result.bookedBefore === null
      ? []
      : [[strings.bookedEnd, momentText(result.bookedBefore, zone)] as const]),
    [strings.plannedClear, time(result.plannedClear)],
    live
      ? [strings.forecast, time(live.forecastHandback)]
      : [strings.plannedHandback, time(result.plannedHandback)],
    [
      live ? strings.marginLeft : strings.margin,
      html`${durationText(live?.marginLeftMinutes ?? result.marginMinutes)}
      ${strings.ofRequired(durationText(result.requiredMinutes))},
      ${verdictTag(result.verdict, strings.verdict[result.verdict])}`,
    ],
    [
      strings.chanceHead,
      `${percentText(onTime.probability, run.runs)} ±${errorText(onTime)}, ${strings.aim} ${aim}`,
    ],
    ['P50 / P80 / P90 / P95', [run.p50, run.p80, run.p90, run.p95].map(brief).join(' / ')],
    [strings.stamp, html`<code>${result.inputsStamp}</code>`],
    ...(now === null ? [] : [[strings.printed, momentText(now, zone)] as const]),
  ];
  return html`<section
    part="print-sheet"
    class="paper ${result.cutOffs.length > MANY ? 'dense' : ''}"
    aria-label=${strings.printTitle}
  >
    <header>
      <h2>${strings.printTitle}: ${result.window} ${titleText(window?.title ?? '')}</h2>
      <p>
        ${window ? html`${stretchText(window.start, window.end, zone)}. ` : nothing}${strings.zone}:
        ${zone}
      </p>
    </header>
    <dl class="facts">
      ${facts.map(
        ([name, value]) =>
          html`<div>
            <dt>${name}</dt>
            <dd>${value}</dd>
          </div>`,
      )}
    </dl>
    <table class="steps">
      <thead>
        <tr>
          <th scope="col">${strings.step}</th>
          <th scope="col">${strings.plannedStart}</th>
          <th scope="col">${strings.plannedFinish}</th>
          <th scope="col">${strings.keepsMargin}</th>
          <th scope="col">${strings.chanceStart(aim)}</th>
          <th scope="col">${strings.stillOnTime}</th>
          <th scope="col">${strings.actualStart}</th>
          <th scope="col">${strings.actualFinish}</th>
        </tr>
      </thead>
      <tbody>
        ${result.cutOffs.map(
          (cutOff) =>
            html`<tr>
              <th scope="row">${subjectName(cutOff, strings)}</th>
              <td>${brief(cutOff.plannedStart)}</td>
              <td>${brief(cutOff.plannedFinish)}</td>
              <td><strong>${brief(cutOff.latestStart)}</strong></td>
              <td>${cutOff.chanceStart === null ? '–' : brief(cutOff.chanceStart)}</td>
              <td>${brief(cutOff.onTimeStart)}</td>
              <td class="blank"></td>
              <td class="blank"></td>
            </tr>`,
        )}
      </tbody>
    </table>
    ${leftOpenList(result, strings)} ${decisionTable(result, { zone, strings })}
    ${goPointTable(result, { zone, strings }, true)}
    <div class="pair">
      ${blanks(`${strings.contacts}, ${strings.decides.toLowerCase()}`, strings.contactRows, [strings.name, strings.telephone])}
      ${blanks(strings.signatures, strings.signatureRows, [strings.name, strings.signature, strings.dateTime])}
    </div>
    <h3>${strings.assumptions}</h3>
    <ul class="assumptions">
      ${[...strings.assumptionLines, ...assumptions].map((line) => html`<li>${line}</li>`)}
      <li>${strings.waits}</li>
      <li>${strings.thinTail}</li>
      <li>${strings.madeWith(numberText(run.runs), run.seed)}</li>
    </ul>
    <h3>${strings.cautions}</h3>
    ${cautionList(strings.cautions, strings.cautionLines)}
  </section>`;
}
