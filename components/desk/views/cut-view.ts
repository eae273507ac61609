import { html, nothing, type TemplateResult } from 'lit';
import type { Move } from '../../../src/engine/index.js';
import type { Interval } from '../../../src/calendar/index.js';
import { countText, momentText } from '../../shared/format.js';
import type { Desk } from '../desk-parts.js';

/** Under the fields of a window that is being changed: what the change would do, before it is made. */
export function cutView(desk: Desk): TemplateResult | typeof nothing {
  const { cutPreview, planning, picked } = desk;
  const { effect, busy, trouble } = cutPreview;
  if (!effect || effect.window !== picked.window) return nothing;
  return html`<div class="ahead" role="status" aria-label="What this change would do">
    ${
      trouble
        ? html`<p class="harm">${trouble}</p>`
        : effect.unreadable
          ? html`<p class="harm">
              As typed the window leaves the plan, and all its work with it: ${effect.unreadable}
            </p>`
          : busy || !effect.moved
            ? html`<p class="quiet">Looking at what would have to move</p>`
            : planning.allocation
              ? moves(desk, effect.moved)
              : html`<p>No plan is made yet, so nothing would have to move.</p>`
    }
    ${isolation(desk)}
  </div>`;
}

function moves(desk: Desk, moved: readonly Move[]): TemplateResult {
  if (moved.length === 0) return html`<p>No piece of the plan would leave its window.</p>`;
  const titles = new Map(
    desk.figures.results?.plan.activities.map((activity) => [activity.id, activity.title] as const),
  );
  return html`<p>
      <strong
        >${countText(moved.length, 'piece')} of the plan would leave
        ${moved.length === 1 ? 'its' : 'their'} window</strong
      >
    </p>
    <ul>
      ${moved.map(
        (move) =>
          html`<li>
            <strong>${move.activity}</strong> ${titles.get(move.activity)}: from
            ${windowsOf(move.before)} to
            ${move.after.length > 0 ? windowsOf(move.after) : html`<span class="harm">no place</span>`}
          </li>`,
      )}
    </ul>`;
}

const windowsOf = (pieces: Move['before']): string =>
  pieces.length === 0
    ? 'no place'
    : [...new Set(pieces.map((piece) => piece.window ?? 'outside work'))].join(', ');

function isolation(desk: Desk): TemplateResult | typeof nothing {
  const { effect } = desk.cutPreview;
  const { cut = [], lost = [] } = effect?.isolation ?? {};
  if (cut.length === 0 && lost.length === 0) return nothing;
  const zone =
    desk.figures.results?.plan.windows.find((window) => window.id === effect?.window)?.zone ??
    desk.document?.zone ??
    'UTC';
  const span = ({ start, end }: Interval): string =>
    `${momentText(start, zone)} to ${momentText(end, zone)}`;
  return html`<p><strong>Isolation</strong></p>
    <ul>
      ${lost.map((section) => html`<li class="harm">${section}: not dead in the window any more</li>`)}
      ${cut.map(
        ({ section, times }) =>
          html`<li>${section}: dead for less, ${times.map(span).join('; ')}</li>`,
      )}
    </ul>`;
}
