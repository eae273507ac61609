import { html, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { isoText } from '../../../src/calendar/index.js';
import type { HandbackResult } from '../../../src/engine/index.js';
import type { AccessWindow, Decisions, GoPoint } from '../../../src/model/index.js';
import { pointForm, putBack, type PointForm } from './point-form.js';
import type { Setting } from '../result-parts.js';
import type { HandbackStrings } from '../strings.js';
import { clockBeside } from '../times.js';

/** An id that no point has yet. */
function freeId(points: readonly GoPoint[]): string {
  const taken = new Set(points.map((point) => point.id));
  let number = points.length + 1;
  while (taken.has(`G${number}`)) number += 1;
  return `G${number}`;
}

/** Shuts the fold a form is in; the keyboard goes back to what opened it. */
function shut(form: HTMLFormElement): void {
  const fold = form.closest('details')!;
  fold.open = false;
  fold.querySelector('summary')!.focus();
}

/**
 * The go/no-go points of a window, each with what changes it and what takes it out, and the form for another. What a
 * time means on a night on which clocks change is settled when it is typed: the earlier reading, unless its offset is
 * typed with it.
 */
export function pointList(
  result: HandbackResult,
  window: AccessWindow,
  decisions: Decisions,
  { zone, strings }: Setting<HandbackStrings>,
  change: (decisions: Decisions) => void,
): TemplateResult {
  const own = decisions.goPoints.filter((point) => point.window === window.id);
  const work = result.cutOffs.filter((cutOff) => cutOff.activity !== undefined);
  const timed = new Map(result.goPoints.map((point) => [point.id, point.at]));
  const withPoints = (goPoints: readonly GoPoint[]): void =>
    change({ ...decisions, goPoints: [...goPoints] });
  const line = (point: GoPoint): TemplateResult => {
    const { id, window: of, ...words } = point;
    const on: PointForm = {
      ...{ zone, strings, window, work, words, changes: true },
      take: (next, form) => {
        shut(form);
        withPoints(
          decisions.goPoints.map((item) => (item === point ? { id, window: of, ...next } : item)),
        );
      },
      leave: (form) => {
        putBack(form, on);
        shut(form);
      },
    };
    const at = timed.get(id);
    return html`<li>
      <div class="name">
        <strong>${point.name}</strong>
        <span class="quiet"
          >${at === undefined ? strings.notTimed : clockBeside(at, result.bookedEnd, zone)},
          ${point.holder === '' ? strings.nobody : strings.decides1(point.holder)}</span
        >
      </div>
      <button
        type="button"
        class="remove"
        @click=${(event: Event) => {
          const form = (event.currentTarget as Element).closest('.decision-form');
          form?.querySelector('summary')?.focus();
          withPoints(decisions.goPoints.filter((item) => item !== point));
        }}
      >
        ${strings.remove}<span class="unseen">: ${point.name}</span>
      </button>
      <details class="change">
        <summary>${strings.changePoint}<span class="unseen">: ${point.name}</span></summary>
        ${pointForm(on)}
      </details>
    </li>`;
  };
  const another: PointForm = {
    ...{ zone, strings, window, work, changes: false },
    words: { name: '', holder: '', at: isoText(result.plannedClear, zone) },
    take: (next, form) => {
      withPoints([
        ...decisions.goPoints,
        { id: freeId(decisions.goPoints), window: window.id, ...next },
      ]);
      putBack(form, another);
    },
  };
  return html`<ul class="points">
      ${repeat(own, (item) => item.id, line)}
    </ul>
    ${pointForm(another)}`;
}
