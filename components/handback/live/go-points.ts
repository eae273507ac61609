import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { MINUTE, type Instant } from '../../../src/calendar/index.js';
import type { HandbackResult } from '../../../src/engine/index.js';
import { countdown } from './countdown.js';
import { stateOf, type LiveSetting } from './live-setting.js';
import { titleOf, type GoPointTime, type Setting } from '../result-parts.js';
import type { HandbackStrings } from '../strings.js';
import { clockBeside, exactClock } from '../times.js';

/** What is to be decided, or can no longer be begun or given up, this soon is in sight. */
const NEAR_MINUTES = 60;

interface Decision {
  readonly at: Instant;
  readonly key: string;
  /** It has been decided. */
  readonly said: boolean;
  readonly line: () => TemplateResult;
}

const tooLate = (
  result: HandbackResult,
  { tooLateFor }: GoPointTime,
  strings: HandbackStrings,
): TemplateResult | typeof nothing =>
  tooLateFor.length === 0
    ? nothing
    : html`<span class="too-late"
        >${strings.tooLateFor(tooLateFor.map((text) => titleOf(result, text)).join(', '))}</span
      >`;

/** Go/no-go points of a window as planned; nothing when nobody placed one. */
export function goPointTable(
  result: HandbackResult,
  { zone, strings }: Setting<HandbackStrings>,
  blank = false,
): TemplateResult | typeof nothing {
  if (result.goPoints.length === 0) return nothing;
  return html`<section class="go-points">
    <h3>${strings.goPoints}</h3>
    <table>
      <thead>
        <tr>
          <th scope="col" class="time">${strings.time}</th>
          <th scope="col">${strings.decided}</th>
          <th scope="col">${strings.holder}</th>
          ${blank ? html`<th scope="col">${strings.goOrNot}</th>` : nothing}
        </tr>
      </thead>
      <tbody>
        ${result.goPoints.map(
          (point) =>
            html`<tr>
              <td class="time">
                <strong>${clockBeside(point.at, result.bookedEnd, zone)}</strong>
              </td>
              <th scope="row">${point.name} ${tooLate(result, point, strings)}</th>
              <td>${point.holder === '' && !blank ? strings.nobody : point.holder}</td>
              ${blank ? html`<td class="blank"></td>` : nothing}
            </tr>`,
        )}
      </tbody>
    </table>
  </section>`;
}

/** What is to be decided during the shift, with how long there is, and what cannot be undone after when. */
export function liveDecisions(
  result: HandbackResult,
  setting: LiveSetting,
): TemplateResult | typeof nothing {
  const { zone, strings, now, state, write } = setting;
  const outcomes = new Map(
    state.standing.flatMap(({ entry }) =>
      entry.event.kind === 'decided' ? [[entry.event.point, entry] as const] : [],
    ),
  );
  const open = new Set(
    result.cutOffs.flatMap((cutOff) =>
      cutOff.activity !== undefined && stateOf(cutOff, setting) === 'to-come'
        ? [cutOff.activity]
        : [],
    ),
  );
  const over = new Set(
    result.cutOffs.flatMap((cutOff) =>
      cutOff.activity !== undefined && stateOf(cutOff, setting) === 'done' ? [cutOff.activity] : [],
    ),
  );
  const limits = result.decisions.flatMap(({ activity, pointOfNoReturn, latestAbort }) => [
    ...(pointOfNoReturn !== null && open.has(activity)
      ? [{ at: pointOfNoReturn, words: strings.doNotBegin(titleOf(result, activity)) }]
      : []),
    ...(latestAbort !== null && !open.has(activity) && !over.has(activity)
      ? [{ at: latestAbort, words: strings.abandonBy(titleOf(result, activity)) }]
      : []),
  ]);
  if (result.goPoints.length + limits.length === 0) return nothing;
  const decide = (point: GoPointTime, go: boolean): void =>
    write({ event: { kind: 'decided', point: point.id, name: point.name, go }, at: null });
  const pointLine = (goPointTime: GoPointTime): TemplateResult => {
    const outcome = outcomes.get(goPointTime.id);
    return html`<li class="go-point">
      <div class="name">
        <strong>${goPointTime.name}</strong>
        <span
          >${exactClock(goPointTime.at, zone)}
          ${outcome ? nothing : countdown(goPointTime.at, now, strings)}</span
        >
        <span class="quiet"
          >${goPointTime.holder === '' ? strings.nobody : strings.decides1(goPointTime.holder)}</span
        >
        ${tooLate(result, goPointTime, strings)}
      </div>
      ${
        outcome && outcome.event.kind === 'decided'
          ? html`<p class="outcome">
              ${strings.wasDecided(
                outcome.event.go ? strings.go : strings.noGo,
                exactClock(outcome.at, zone),
              )}
            </p>`
          : html`<div class="buttons">
              <button type="button" class="no-go" @click=${() => decide(goPointTime, false)}>
                ${strings.noGo}<span class="unseen">: ${goPointTime.name}</span>
              </button>
              <button type="button" class="go" @click=${() => decide(goPointTime, true)}>
                ${strings.go}<span class="unseen">: ${goPointTime.name}</span>
              </button>
            </div>`
      }
    </li>`;
  };
  const all: readonly Decision[] = [
    ...result.goPoints.map((point) => ({
      at: point.at,
      key: `point ${point.id}`,
      said: outcomes.has(point.id),
      line: () => pointLine(point),
    })),
    ...limits.map((limit) => ({
      at: limit.at,
      key: `limit ${limit.words}`,
      said: false,
      line: () =>
        html`<li class="limit">
          <span>${limit.words}</span>
          <span
            ><strong>${exactClock(limit.at, zone)}</strong>
            ${countdown(limit.at, now, strings)}</span
          >
        </li>`,
    })),
  ].sort((a, b) => a.at - b.at);
  const first = all.find((decision) => !decision.said);
  // With no moment to count from, nothing is known to be late or early.
  const isNow = (decision: Decision): boolean =>
    !decision.said &&
    (decision === first || now === null || decision.at - now <= NEAR_MINUTES * MINUTE);
  const folded = all.filter((decision) => !isNow(decision));
  const list = (some: readonly Decision[]): TemplateResult =>
    html`<ol>
      ${repeat(
        some,
        (decision) => decision.key,
        (decision) => decision.line(),
      )}
    </ol>`;
  return html`<section class="deciding">
    <h3>${strings.goPoints}</h3>
    ${list(all.filter(isNow))}
    ${
      folded.length > 0
        ? html`<details>
            <summary>${strings.laterDecisions(folded.length)}</summary>
            ${list(folded)}
          </details>`
        : nothing
    }
  </section>`;
}
