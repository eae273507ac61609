import { html, type TemplateResult } from 'lit';
import { addMinutes, isoText } from '../../src/calendar/index.js';
import type { HandbackResult } from '../../src/engine/index.js';
import type { AccessWindow, Commitment, Decisions, GoPoint } from '../../src/model/index.js';
import { clockText } from '../shared/format.js';
import { clockParts, momentsOf } from './clock-entry.js';
import type { Setting } from './result-parts.js';
import type { HandbackStrings } from './strings.js';
import { exactClock } from './times.js';

/** An id that no point has yet. */
function freeId(points: readonly GoPoint[]): string {
  const taken = new Set(points.map((one) => one.id));
  let number = points.length + 1;
  while (taken.has(`G${number}`)) number += 1;
  return `G${number}`;
}

/** The commitments with one thing about one activity changed; what says nothing any more goes. */
function withCommitment<K extends keyof Commitment>(
  { commitments }: Decisions,
  activity: string,
  key: K,
  value: Commitment[K] | undefined,
): Commitment[] {
  const before = commitments.find((one) => one.activity === activity);
  const { [key]: _, ...others } = before ?? { activity, irreversible: false };
  const next = {
    activity,
    irreversible: false,
    ...others,
    ...(value !== undefined && { [key]: value }),
  };
  const rest = commitments.filter((one) => one !== before);
  return next.irreversible || Object.keys(next).length > 2 ? [...rest, next] : rest;
}

/**
 * Where a planner places go/no-go points in a window and says what cannot be undone. What a time means on a night on
 * which clocks change is settled when it is typed: the reading that leaves less time, the earlier.
 */
export function decisionForm(
  result: HandbackResult,
  window: AccessWindow,
  decisions: Decisions,
  { zone, strings }: Setting<HandbackStrings>,
  change: (decisions: Decisions) => void,
): TemplateResult {
  const own = decisions.goPoints.filter((one) => one.window === window.id);
  const work = result.cutOffs.filter((one) => one.activity !== undefined);
  const middle = addMinutes(window.start, (window.end - window.start) / 120_000);
  const add = (event: Event): void => {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const field = <T extends HTMLInputElement | HTMLSelectElement>(name: string): T =>
      form.querySelector<T>(`[name=${name}]`)!;
    const name = field<HTMLInputElement>('point').value.trim();
    const before = field<HTMLSelectElement>('before').value;
    const clock = field<HTMLInputElement>('clock');
    const moments = momentsOf(clock.value, middle, zone);
    const inside = moments.filter((at) => at >= window.start && at <= window.end);
    clock.setCustomValidity(
      before !== '' || inside.length > 0
        ? ''
        : clockParts(clock.value) === undefined
          ? strings.giveTime
          : moments.length === 0
            ? strings.noSuchTime
            : strings.notInWindow,
    );
    if (name === '' || !form.reportValidity()) return;
    const point: GoPoint = {
      id: freeId(decisions.goPoints),
      window: window.id,
      name,
      holder: field<HTMLInputElement>('holder').value.trim(),
      ...(before === '' ? { at: isoText(inside[0]!, zone) } : { before }),
    };
    change({ ...decisions, goPoints: [...decisions.goPoints, point] });
    form.reset();
  };
  const minutes = (
    activity: string,
    name: string,
    label: string,
    key: 'testMinutes' | 'reinstatementMinutes',
  ): TemplateResult => {
    const value = decisions.commitments.find((one) => one.activity === activity)?.[key];
    return html`<input
      type="number"
      inputmode="numeric"
      min="0"
      max="100000"
      step="1"
      aria-label="${label}: ${name}"
      .value=${value === undefined ? '' : String(value)}
      @change=${(event: Event) => {
        const input = event.currentTarget as HTMLInputElement;
        if (!input.reportValidity()) return;
        const typed = input.value === '' ? undefined : input.valueAsNumber;
        change({ ...decisions, commitments: withCommitment(decisions, activity, key, typed) });
      }}
    />`;
  };
  return html`<details class="decision-form">
    <summary>${strings.editDecisions}</summary>
    <ul class="points">
      ${own.map(
        (one) =>
          html`<li>
            <span>${one.name}</span>
            <span class="quiet">${one.holder === '' ? strings.nobody : one.holder}</span>
            <button
              type="button"
              class="remove"
              @click=${() =>
                change({
                  ...decisions,
                  goPoints: decisions.goPoints.filter((other) => other !== one),
                })}
            >
              ${strings.remove}<span class="unseen">: ${one.name}</span>
            </button>
          </li>`,
      )}
    </ul>
    <form class="add-point" @submit=${add}>
      <label>${strings.point}<input name="point" required maxlength="200" /></label>
      <label>${strings.holder}<input name="holder" maxlength="200" /></label>
      <label
        >${strings.pointWhen}<select name="before">
          <option value="">${strings.pointAt}</option>
          ${work.map(
            (one) => html`<option value=${one.activity!}>${strings.pointBefore(one.name)}</option>`,
          )}
        </select></label
      >
      <label
        >${strings.time}<input
          name="clock"
          class="clock"
          inputmode="numeric"
          autocomplete="off"
          maxlength="5"
          .value=${clockText(result.plannedClear, zone)}
          @input=${(event: Event) =>
            (event.currentTarget as HTMLInputElement).setCustomValidity('')}
      /></label>
      <button type="submit">${strings.addPoint}</button>
    </form>
    <table>
      <thead>
        <tr>
          <th scope="col">${strings.activity}</th>
          <th scope="col">${strings.irreversible}</th>
          <th scope="col">${strings.testAfter}</th>
          <th scope="col">${strings.reinstate}</th>
        </tr>
      </thead>
      <tbody>
        ${work.map((one) => {
          const activity = one.activity!;
          return html`<tr>
            <th scope="row">
              ${one.name} <span class="quiet">${exactClock(one.plannedStart, zone)}</span>
            </th>
            <td data-label=${strings.irreversible}>
              <input
                type="checkbox"
                aria-label="${strings.irreversible}: ${one.name}"
                .checked=${decisions.commitments.some(
                  (other) => other.activity === activity && other.irreversible,
                )}
                @change=${(event: Event) =>
                  change({
                    ...decisions,
                    commitments: withCommitment(
                      decisions,
                      activity,
                      'irreversible',
                      (event.currentTarget as HTMLInputElement).checked,
                    ),
                  })}
              />
            </td>
            <td data-label=${strings.testAfter}>
              ${minutes(activity, one.name, strings.testAfter, 'testMinutes')}
            </td>
            <td data-label=${strings.reinstate}>
              ${minutes(activity, one.name, strings.reinstate, 'reinstatementMinutes')}
            </td>
          </tr>`;
        })}
      </tbody>
    </table>
  </details>`;
}
