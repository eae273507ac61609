import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { isoText } from '../../src/calendar/index.js';
import { grantStep, handedBackStep } from '../../src/engine/index.js';
import type { AccessWindow, RiskEvent } from '../../src/model/index.js';
import { eventFiles, type EventFiles } from './event-files.js';
import { changeTold, choiceField, textField, type Form } from './form.js';
import { readMoment, readPercent, readThree, threeText, momentText } from './read-field.js';
import { percent } from './risk-fields.js';
import {
  holdingUp,
  holdsUpOf,
  riskOf,
  withEvent,
  withEventAdded,
  withoutEvent,
} from './risk-edits.js';
import { freeName, withField } from './rule-edits.js';
import { applied, nameField, removeButton, sourceField, type Rows } from './row-parts.js';

/** What events can name. */
export interface EventSetting {
  readonly windows: readonly AccessWindow[];
  readonly activities: readonly { readonly id: string; readonly title: string }[];
  readonly zone: string;
}

export type EventListSetting = EventSetting & EventFiles;

/** What may happen and costs time: what, how likely, how long, in which window, and what it holds up. */
export function eventList(form: Form, rows: Rows, setting: EventListSetting): TemplateResult {
  const { words, rules } = form;
  const { events } = riskOf(rules);
  const add = (name: (number: number) => string, recorded: boolean): void => {
    const free = freeName(
      events.map((item) => item.name),
      name,
    );
    rows.add(
      { rules: withEventAdded(rules, free, recorded), label: words.added(free) },
      events.length,
    );
  };
  return html`<section class="events" part="events" data-list="events">
    <h3>${words.events}</h3>
    <p class="quiet">${words.thinTail}</p>
    ${
      events.length === 0
        ? html`<p class="quiet none">${words.noEvents}</p>`
        : html`<ol>
            ${repeat(
              events,
              (_, index) => rows.keys.at(index),
              (event, index) => eventRow(form, event, index, rows, setting),
            )}
          </ol>`
    }
    <button type="button" class="add" data-add="events" @click=${() => add(words.newEvent, false)}>
      ${words.addEvent}
    </button>
    <button
      type="button"
      class="add"
      data-add="recorded"
      @click=${() => add(words.somethingWrong, true)}
    >
      ${words.addRecorded}
    </button>
    <p class="quiet">${words.recordedTold}</p>
    ${eventFiles(form, rows, setting)}
  </section>`;
}

function eventRow(
  form: Form,
  event: RiskEvent,
  index: number,
  rows: Rows,
  setting: EventSetting,
): TemplateResult {
  const { words, rules } = form;
  const row = rows.keys.at(index);
  const named = `\u201c${event.name}\u201d`;
  const next = (changed: RiskEvent) => withEvent(rules, index, changed);
  const spanText = (what: string, from: string | undefined, to: string | undefined): string =>
    changeTold(words, `${named}, ${what}`, from, to);
  const { delay } = event;
  return html`<li class="row" data-row=${row}>
    <span class="number" aria-hidden="true">${index + 1}</span>
    <div class="fields">
      ${nameField(form, row, words.event, event.name, (name) => ({
        rules: next({ ...event, name }),
        label: changeTold(words, words.event, event.name, name),
      }))}
      ${textField(form, {
        key: `${row}.chance`,
        label: words.eventChance,
        value: percent(event.chance),
        size: 'short',
        ...(event.chance === 0 && { hint: words.noChanceYet }),
        edit: (text) => {
          const read = readPercent(text, words.wrong);
          if ('value' in read && read.value === undefined) return { trouble: words.wrong.percent };
          return applied(read, (chance = 0) => ({
            rules: next({ ...event, chance }),
            label: spanText(words.eventChance, percent(event.chance), percent(chance)),
          }));
        },
      })}
      ${choiceField(form, {
        key: `${row}.length`,
        label: words.delay,
        value: delay === 'recorded' ? 'recorded' : 'three',
        choices: [
          ['three', words.delayThree],
          ['recorded', words.delayRecorded],
        ] as const,
        edit: (kind) => ({
          value: {
            rules: next({
              ...event,
              delay: kind === 'recorded' ? 'recorded' : { low: 15, likely: 30, high: 60 },
            }),
            label: spanText(
              words.delay,
              undefined,
              kind === 'recorded' ? words.delayRecorded : words.delayThree,
            ),
          },
        }),
      })}
      ${
        delay === 'recorded'
          ? nothing
          : textField(form, {
              key: `${row}.delay`,
              label: words.delayMinutes,
              value: threeText(delay),
              size: 'long',
              hint: words.delayHint,
              edit: (text) => {
                const read = readThree(text, words.wrong);
                if ('value' in read && read.value === undefined)
                  return { trouble: words.wrong.three };
                return applied(read, (points = delay) => ({
                  rules: next({ ...event, delay: points }),
                  label: spanText(words.delayMinutes, threeText(delay), threeText(points)),
                }));
              },
            })
      }
      ${holdsUp(form, event, index, row, setting)} ${inWindow(form, event, index, row, setting)}
      ${sourceField(form, row, event.source, (source) => ({
        rules: next(withField(event, 'source', source)),
        label: spanText(words.source, event.source, source),
      }))}
    </div>
    <div class="controls">
      ${removeButton(form, named, () =>
        rows.remove({ rules: withoutEvent(rules, index), label: words.removed(named) }, index),
      )}
    </div>
  </li>`;
}

/** What it delays: a step, an activity, or all work from a moment on, which is then given. */
function holdsUp(
  form: Form,
  event: RiskEvent,
  index: number,
  row: string,
  { windows, activities, zone }: EventSetting,
): TemplateResult {
  const { words, rules } = form;
  const named = `\u201c${event.name}\u201d`;
  const now = holdsUpOf(event);
  const steps = (stage: 'lead-in' | 'lead-out') =>
    (stage === 'lead-in' ? rules.leadIn : rules.leadOut).map(
      ({ step }) => [`step ${stage} ${step}`, step] as const,
    );
  const known: readonly (readonly [string, string])[] = [
    [`step  ${handedBackStep}`, words.lineHandedBack],
    [`step  ${grantStep}`, words.possessionGranted],
    ...steps('lead-in'),
    ...steps('lead-out'),
    ...activities.map(({ id, title }) => [`activity ${id}`, `${id} ${title}`] as const),
    ['at', words.allWorkFrom],
  ];
  const listed = known.some(([choice]) => choice === now);
  const choices = listed
    ? known
    : [...known, [now, words.notThere(event.activity ?? event.step ?? '')] as const];
  const wordOf = (choice: string): string =>
    choices.find(([value]) => value === choice)?.[1] ?? choice;
  const first = windows.find((window) => window.id === event.window) ?? windows[0];
  const moment = event.at ?? isoText(first?.start ?? 0, zone);
  return html`${choiceField(form, {
    key: `${row}.holds`,
    label: words.holdsUp,
    value: now,
    choices,
    edit: (choice) => ({
      value: {
        rules: withEvent(rules, index, holdingUp(event, choice, moment)),
        label: changeTold(words, `${named}, ${words.holdsUp}`, wordOf(now), wordOf(choice)),
      },
    }),
  })}
  ${
    event.at === undefined
      ? nothing
      : textField(form, {
          key: `${row}.at`,
          label: words.moment,
          value: momentText(event.at, zone),
          size: 'long',
          edit: (text) =>
            applied(readMoment(text, zone, words.wrong), (at) => ({
              rules: withEvent(rules, index, { ...event, at }),
              label: changeTold(words, `${named}, ${words.moment}`, event.at, at),
            })),
        })
  }`;
}

function inWindow(
  form: Form,
  event: RiskEvent,
  index: number,
  row: string,
  { windows }: EventSetting,
): TemplateResult {
  const { words, rules } = form;
  const now = event.window ?? '';
  const ids = windows.map((window) => window.id);
  const listed = now === '' || ids.includes(now) ? ids : [...ids, now];
  const wordOf = (id: string): string =>
    id === '' ? words.anyWindow : ids.includes(id) ? id : words.notThere(id);
  return choiceField(form, {
    key: `${row}.window`,
    label: words.window,
    value: now,
    choices: ['', ...listed].map((text) => [text, wordOf(text)] as const),
    edit: (id) => ({
      value: {
        rules: withEvent(rules, index, withField(event, 'window', id === '' ? undefined : id)),
        label: changeTold(
          words,
          `\u201c${event.name}\u201d, ${words.window}`,
          wordOf(now),
          wordOf(id),
        ),
      },
    }),
  });
}
