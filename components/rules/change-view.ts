import { html, nothing, svg, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import type { FitsChange, RuleChange, UsableChange, WorkKind } from '../../src/engine/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { countText, dayText, numberText } from '../shared/format.js';
import { kindFill, kindPatterns } from '../shared/kinds.js';
import { saidText } from '../shared/said.js';
import type { Place } from '../why/explanation.js';
import type { RulesStrings } from './strings.js';

/** So many windows or packages are shown before the reader asks for all. */
export const SHOWN = 12;
const BAR = 168;

export interface ChangeSetting {
  readonly words: RulesStrings;
  readonly windows: readonly AccessWindow[];
  /** The kind of work whose windows are listed. */
  readonly work: WorkKind;
  /** Lists that are shown whole. */
  readonly whole: ReadonlySet<string>;
  choose(work: WorkKind): void;
  open(list: string): void;
  follow(place: Place): void;
}

/** Which windows gain or lose hours, for one kind of work at a time. */
export function windowsChange(change: RuleChange, setting: ChangeSetting): TemplateResult {
  const { words, work } = setting;
  const kinds = [...new Set(change.windows.map((window) => window.work))];
  const changed = change.windows.filter((window) => window.work === work && window.minutes !== 0);
  return html`<div class="kinds" role="group" aria-label=${words.forWork}>
      <span class="label">${words.forWork}</span>
      ${kinds.map((kind) => {
        const count = change.windows.filter(
          (window) => window.work === kind && window.minutes !== 0,
        ).length;
        return html`<button
          type="button"
          data-work=${kind}
          aria-pressed=${kind === work}
          @click=${() => setting.choose(kind)}
        >
          ${words.workKind[kind]} <span class="count">${count}</span>
        </button>`;
      })}
    </div>
    <p class="told run">${windowsTold(changed, words)}</p>
    ${
      changed.length === 0
        ? nothing
        : html`<div class="scroll" tabindex="0" role="region" aria-label=${words.usablePicture}>
            <table class="windows">
              <thead>
                <tr>
                  <th scope="col">${words.windowHead}</th>
                  <th scope="col" class="picture-head">${words.usablePicture}</th>
                  <th scope="col" class="figure">${words.before}</th>
                  <th scope="col" class="figure">${words.after}</th>
                  <th scope="col" class="figure">${words.difference}</th>
                </tr>
              </thead>
              <tbody>
                ${shown(changed, 'windows', setting).map((item) => windowRow(item, setting))}
              </tbody>
            </table>
          </div>`
    }
    ${expander(changed.length, 'windows', setting)}`;
}

function windowRow(change: UsableChange, setting: ChangeSetting): TemplateResult {
  const window = setting.windows.find((each) => each.id === change.window);
  return html`<tr data-window=${change.window}>
    <th scope="row">
      <button
        class="plain"
        type="button"
        @click=${() => setting.follow({ to: 'window', id: change.window })}
      >
        ${change.window}
      </button>
      ${window ? html`<span class="quiet">${dayText(window.start, window.zone)}</span>` : nothing}
    </th>
    <td class="bar-cell">${bar(change)}</td>
    <td class="figure">${durationText(change.usableBefore)}</td>
    <td class="figure">${durationText(change.usableAfter)}</td>
    <td class="figure">${signed(change.minutes)}</td>
  </tr>`;
}

/**
 * What both rules leave, solid; what is lost, an empty outline; what is gained, paler with an edge. Each window is to
 * its own scale: beside a closure of days a night would be too short to see.
 */
function bar({ usableBefore, usableAfter }: UsableChange): TemplateResult {
  const more = Math.max(1, usableBefore, usableAfter);
  const wide = (minutes: number): number => Math.round((minutes / more) * (BAR - 2) * 10) / 10;
  const both = Math.min(usableBefore, usableAfter);
  return html`<svg class="change-bar" width=${BAR} height="12" aria-hidden="true">
    ${kindPatterns}
    <rect y="1" width=${wide(both)} height="10" fill=${kindFill('usable')}></rect>
    ${svg`<rect class=${usableAfter > usableBefore ? 'gain' : 'loss'} x=${wide(both) + 0.75} y="1.75" width=${Math.max(1, wide(more) - wide(both) - 1.5)} height="8.5"></rect>`}
  </svg>`;
}

function windowsTold(changed: readonly UsableChange[], words: RulesStrings): string {
  const sides = [
    changed.filter((change) => change.minutes < 0),
    changed.filter((change) => change.minutes > 0),
  ];
  const parts = sides.flatMap((list, side) => {
    if (list.length === 0) return [];
    const time = durationText(Math.abs(list.reduce((sum, change) => sum + change.minutes, 0)));
    const counted = countText(list.length, words.oneWindow, words.manyWindows);
    const isSingle = list.length === 1;
    return [
      side === 0
        ? (isSingle ? words.loses : words.lose)(counted, time)
        : (isSingle ? words.gains : words.gain)(counted, time),
    ];
  });
  return parts.length === 0 ? words.noWindow : `${parts.join('; ')}.`;
}

/** What the independent check says of fits gained and lost. */
function checkPart({ gained, lost, faults }: FitsChange, words: RulesStrings): TemplateResult {
  if (faults.length > 0)
    return html`<div role="alert">
      <p><strong>${words.checkFailed}</strong></p>
      <ul>
        ${faults.map(({ text }) => html`<li>${saidText(text)}</li>`)}
      </ul>
    </div>`;
  const said = [
    ...(gained.length > 0 ? [words.gainedChecked] : []),
    ...(lost.length > 0 ? [words.lostChecked] : []),
  ];
  return html`<p class="quiet">${said.join(' ')}</p>`;
}

/** Which packages stop fitting or begin to, window by window. */
export function fitsPart(fits: FitsChange, setting: ChangeSetting): TemplateResult {
  const { words } = setting;
  if (fits.packages.length === 0)
    return html`<p class="told run">${words.noFits}</p>
      <p class="quiet">${words.unchecked}</p>`;
  const counted = (count: number): string => countText(count, words.oneFit, words.manyFits);
  const parts = [
    ...(fits.lost.length > 0 ? [words.lostFits(counted(fits.lost.length))] : []),
    ...(fits.gained.length > 0 ? [words.gainedFits(counted(fits.gained.length))] : []),
  ];
  const nowhere = new Set(fits.nowhere);
  const somewhere = new Set(fits.somewhere);
  // Those that fit nowhere any more come first.
  const ordered = [...fits.packages].sort(
    (a, b) => Number(nowhere.has(b.package)) - Number(nowhere.has(a.package)),
  );
  return html`<p class="told run">${parts.join('; ')}.</p>
    ${checkPart(fits, words)}
    <ul class="packages">
      ${shown(ordered, 'packages', setting).map((change) => {
        const lost = fits.lost.filter((each) => each.package === change.package);
        const gained = fits.gained.filter((each) => each.package === change.package);
        const state = nowhere.has(change.package)
          ? html`<span class="state lost"
              ><span aria-hidden="true">✕</span> ${words.fitsNowhere}</span
            >`
          : somewhere.has(change.package)
            ? html`<span class="state gained"
                ><span aria-hidden="true">●</span> ${words.fitsSomewhere}</span
              >`
            : nothing;
        return html`<li data-package=${change.package}>
          <div class="package">
            <button
              class="plain"
              type="button"
              @click=${() => setting.follow({ to: 'package', id: change.package })}
            >
              ${change.package}
            </button>
            <span class="quiet"
              >${words.countTurn(
                countText(change.windowsBefore, words.oneWindow, words.manyWindows),
                String(change.windowsAfter),
              )}</span
            >
            ${state}
          </div>
          ${fitLinks(
            words.noLonger,
            `lost-${change.package}`,
            lost.map((each) => ({
              ...each,
              note: each.reasons.map(saidText).join(' '),
            })),
            setting,
          )}
          ${fitLinks(
            words.nowFits,
            `gained-${change.package}`,
            gained.map((each) => ({
              ...each,
              note: each.spareMinutes === null ? '' : words.spare(durationText(each.spareMinutes)),
            })),
            setting,
          )}
        </li>`;
      })}
    </ul>
    ${expander(ordered.length, 'packages', setting)}`;
}

function fitLinks(
  title: string,
  list: string,
  fits: readonly { readonly package: string; readonly window: string; readonly note: string }[],
  setting: ChangeSetting,
): TemplateResult | typeof nothing {
  if (fits.length === 0) return nothing;
  return html`<div class="links">
    <span class="quiet">${title}</span>
    <ul>
      ${shown(fits, list, setting).map(
        (item) =>
          html`<li>
            <button
              class="plain"
              type="button"
              title=${item.note}
              @click=${() =>
                setting.follow({ to: 'fit', package: item.package, window: item.window })}
            >
              ${item.window}
            </button>
          </li>`,
      )}
    </ul>
    ${expander(fits.length, list, setting)}
  </div>`;
}

function shown<T>(all: readonly T[], list: string, setting: ChangeSetting): readonly T[] {
  return setting.whole.has(list) ? all : all.slice(0, SHOWN);
}

function expander(
  count: number,
  list: string,
  { words, whole, open }: ChangeSetting,
): TemplateResult | typeof nothing {
  if (count <= SHOWN) return nothing;
  return html`<button type="button" class="more" data-more=${list} @click=${() => open(list)}>
    ${whole.has(list) ? words.fewer : words.more(numberText(count))}
  </button>`;
}

/** A change with its sign and a mark, so that it is read without colour. */
function signed(minutes: number): TemplateResult {
  return minutes < 0
    ? html`<span class="lost"
        ><span aria-hidden="true">▽</span> &minus;${durationText(-minutes)}</span
      >`
    : html`<span class="gained"><span aria-hidden="true">△</span> +${durationText(minutes)}</span>`;
}
