import { problemWords } from '../../shared/problem-words.js';
import { html, nothing, type TemplateResult } from 'lit';
import type { Move } from '../../../src/engine/index.js';
import type { Interval } from '../../../src/calendar/index.js';
import { momentText } from '../../shared/format.js';
import type { FormStrings } from '../forms/strings.js';
import type { Desk } from '../desk-parts.js';

/** Under the fields of a window that is being changed: what the change would do, before it is made. */
export function cutView(desk: Desk): TemplateResult | typeof nothing {
  const { cutPreview, planning, picked } = desk;
  const { effect, busy, trouble } = cutPreview;
  const words = desk.words.forms.cut;
  if (!effect || effect.window !== picked.window) return nothing;
  return html`<div class="ahead" role="status" aria-label=${words.title}>
    ${
      trouble
        ? html`<p class="harm">${trouble}</p>`
        : effect.unreadable !== undefined
          ? html`<p class="harm">
              ${words.unreadable}
              ${effect.unreadable ? problemWords(effect.unreadable)[0] : words.rowUnread}
            </p>`
          : busy || !effect.moved
            ? html`<p class="quiet">${words.looking}</p>`
            : planning.allocation
              ? moves(desk, effect.moved)
              : html`<p>${words.noPlan}</p>`
    }
    ${isolation(desk)}
  </div>`;
}

function moves(desk: Desk, moved: readonly Move[]): TemplateResult {
  const words = desk.words.forms.cut;
  if (moved.length === 0) return html`<p>${words.noneLeaves}</p>`;
  const titles = new Map(
    desk.figures.results?.plan.activities.map((activity) => [activity.id, activity.title] as const),
  );
  return html`<p>
      <strong>${words.leave(moved.length)}</strong>
    </p>
    <ul>
      ${moved.map(
        (move) =>
          html`<li>
            <strong>${move.activity}</strong> ${titles.get(move.activity)}:
            ${words.from(windowsOf(move.before, words))}
            ${move.after.length > 0 ? windowsOf(move.after, words) : html`<span class="harm">${words.noPlace}</span>`}
          </li>`,
      )}
    </ul>`;
}

const windowsOf = (pieces: Move['before'], words: FormStrings['cut']): string =>
  pieces.length === 0
    ? words.noPlace
    : [...new Set(pieces.map((piece) => piece.window ?? words.outside))].join(', ');

function isolation(desk: Desk): TemplateResult | typeof nothing {
  const { effect } = desk.cutPreview;
  const { cut = [], lost = [] } = effect?.isolation ?? {};
  if (cut.length === 0 && lost.length === 0) return nothing;
  const zone =
    desk.figures.results?.plan.windows.find((window) => window.id === effect?.window)?.zone ??
    desk.document?.zone ??
    'UTC';
  const words = desk.words.forms.cut;
  const span = ({ start, end }: Interval): string =>
    words.fromTo(momentText(start, zone), momentText(end, zone));
  return html`<p><strong>${words.isolation}</strong></p>
    <ul>
      ${lost.map((section) => html`<li class="harm">${words.noLongerDead(section)}</li>`)}
      ${cut.map(
        ({ section, times }) =>
          html`<li>${words.deadForLess(section, times.map(span).join('; '))}</li>`,
      )}
    </ul>`;
}
