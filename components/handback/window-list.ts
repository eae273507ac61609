import { html, nothing, type TemplateResult } from 'lit';
import { durationText, type Instant } from '../../src/calendar/index.js';
import type { HandbackResult } from '../../src/engine/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { dayText } from '../shared/format.js';
import { endName } from './result-parts.js';
import type { HandbackStrings } from './strings.js';
import { aimText, clockBeside, errorText, exactClock } from './times.js';
import { verdictTag } from './verdict-shape.js';
import { percentText } from '../shared/chance.js';
import { titleText } from '../shared/name.js';

export interface ListSetting {
  readonly strings: HandbackStrings;
  readonly selected: string;
  readonly windowOf: (id: string) => AccessWindow | undefined;
  readonly onKey: (event: KeyboardEvent) => void;
  readonly onClick: (event: Event) => void;
}

const levels = ['p50', 'p80', 'p90', 'p95'] as const;

/** Where no chance is wanted the word speaks of the margin alone, and says so. */
const verdictWord = (
  { chanceWanted }: HandbackResult,
  verdict: HandbackResult['verdict'],
  strings: HandbackStrings,
): string =>
  verdict === 'held' && chanceWanted === null ? strings.heldByMargin : strings.verdict[verdict];

/** The margin that the chance wanted would need, where it is not reached; that it is close, where it is. */
function needed(
  { chanceWanted, chanceIsClose, simulation, marginForChanceMinutes }: HandbackResult,
  strings: HandbackStrings,
): TemplateResult | typeof nothing {
  if (chanceWanted === null) return nothing;
  const { probability } = simulation.outlook.onTime;
  const aim = aimText(chanceWanted);
  const words = [
    ...(probability < chanceWanted
      ? [strings.wouldGive(durationText(marginForChanceMinutes), aim)]
      : []),
    ...(chanceIsClose ? [strings.close(aim)] : []),
  ];
  return words.length === 0 ? nothing : html`<span class="quiet need">${words.join('; ')}</span>`;
}

function row(result: HandbackResult, setting: ListSetting, reachable: boolean): TemplateResult {
  const { strings, selected, windowOf } = setting;
  const window = windowOf(result.window);
  const zone = window?.zone ?? 'UTC';
  const { simulation: run, bookedEnd, live } = result;
  const marginMinutes = live?.marginLeftMinutes ?? result.marginMinutes;
  const verdict = live?.verdict ?? result.verdict;
  const { onTime } = run.outlook;
  const time = (at: Instant): string => clockBeside(at, bookedEnd, zone);
  return html`<div
    part="row"
    class="row"
    role="option"
    data-id=${result.window}
    tabindex=${reachable ? 0 : -1}
    aria-selected=${result.window === selected}
  >
    <div class="name">
      <strong>${result.window}</strong> <span>${titleText(window?.title ?? '')}</span>
    </div>
    <div class="booked">
      <span class="label">${endName(result, strings)} </span>${dayText(bookedEnd, zone)}
      <strong>${exactClock(bookedEnd, zone)}</strong>
      ${result.bookedBefore === null ? nothing : html`<span class="quiet">${strings.agreed}</span>`}
    </div>
    <div class="margin">
      <span class="label">${strings.margin} </span
      ><strong
        >${
          marginMinutes < 0
            ? strings.late(durationText(-marginMinutes))
            : durationText(marginMinutes)
        }</strong
      >
      <span class="quiet"
        >${live ? strings.leftNow : nothing}
        ${strings.ofRequired(durationText(result.requiredMinutes))}</span
      >
    </div>
    <div>
      ${verdictTag(verdict, verdictWord(result, verdict, strings))} ${needed(result, strings)}
    </div>
    <div class="figure">
      <span class="label">${strings.onTime} </span
      ><strong>${percentText(onTime.probability, run.runs)}</strong>
      <span class="quiet"
        >&plusmn;${errorText(onTime)}<span class="unseen"> ${strings.standardError}</span></span
      >
    </div>
    ${levels.map(
      (level) =>
        html`<div class="figure">
          <span class="label">${level.toUpperCase()} </span>${time(run[level])}
        </div>`,
    )}
  </div>`;
}

/** One row a window: margin against what is required, the chance of being on time, and the P-values. */
export function windowList(
  results: readonly HandbackResult[],
  setting: ListSetting,
): TemplateResult {
  const { strings, selected } = setting;
  const chosen = results.some((result) => result.window === selected);
  return html`<div class="head" aria-hidden="true">
      <span>${strings.window}</span><span>${strings.bookedEnd}</span><span>${strings.margin}</span
      ><span></span
      ><span class="figure">${strings.onTime}, &plusmn; ${strings.standardError}</span>${levels.map(
        (level) => html`<span class="figure">${level.toUpperCase()}</span>`,
      )}
    </div>
    <div
      role="listbox"
      aria-label=${strings.list}
      @keydown=${setting.onKey}
      @click=${setting.onClick}
    >
      ${results.map((result, index) =>
        row(result, setting, chosen ? result.window === selected : index === 0),
      )}
    </div> `;
}
