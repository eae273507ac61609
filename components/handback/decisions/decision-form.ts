import { html, type TemplateResult } from 'lit';
import type { HandbackResult } from '../../../src/engine/index.js';
import type { AccessWindow, Commitment, Decisions } from '../../../src/model/index.js';
import { pointList } from './point-list.js';
import type { Setting } from '../result-parts.js';
import type { HandbackStrings } from '../strings.js';
import { exactClock } from '../times.js';

/** The commitments with one thing about one activity changed; what says nothing any more goes. */
function withCommitment<K extends keyof Commitment>(
  { commitments }: Decisions,
  activity: string,
  key: K,
  value: Commitment[K] | undefined,
): Commitment[] {
  const before = commitments.find((commitment) => commitment.activity === activity);
  const { [key]: _, ...others } = before ?? { activity, irreversible: false };
  const next = {
    activity,
    irreversible: false,
    ...others,
    ...(value !== undefined && { [key]: value }),
  };
  const rest = commitments.filter((commitment) => commitment !== before);
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
  const work = result.cutOffs.filter((cutOff) => cutOff.activity !== undefined);
  const minutes = (
    activity: string,
    name: string,
    label: string,
    key: 'testMinutes' | 'reinstatementMinutes',
  ): TemplateResult => {
    const value = decisions.commitments.find((commitment) => commitment.activity === activity)?.[
      key
    ];
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
    ${pointList(result, window, decisions, { zone, strings }, change)}
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
        ${work.map((off) => {
          const activity = off.activity!;
          return html`<tr>
            <th scope="row">
              ${off.name} <span class="quiet">${exactClock(off.plannedStart, zone)}</span>
            </th>
            <td data-label=${strings.irreversible}>
              <input
                type="checkbox"
                aria-label="${strings.irreversible}: ${off.name}"
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
              ${minutes(activity, off.name, strings.testAfter, 'testMinutes')}
            </td>
            <td data-label=${strings.reinstate}>
              ${minutes(activity, off.name, strings.reinstate, 'reinstatementMinutes')}
            </td>
          </tr>`;
        })}
      </tbody>
    </table>
  </details>`;
}
