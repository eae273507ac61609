import type { Milestone } from '../../src/engine/types.js';
import type { AccessWindow } from '../../src/model/index.js';
import { floatText, momentText, stretchText } from '../shared/format.js';
import type { Explanation } from './explanation.js';

const countedFrom: Readonly<Record<Milestone['before'], string>> = {
  window: 'Counted back from the start of the window.',
  'railway week': 'Counted back from the railway week in which the window starts.',
  'four-week period': 'Counted back from the four-week period in which the window starts.',
  'timetable change': 'Counted back from the timetable change before the window.',
};

/** By when something has to be asked, offered or published for a window, and by which lead time. */
export function explainMilestone(
  one: Milestone,
  window: AccessWindow | undefined,
  rules: string,
): Explanation {
  const late = one.minutesLeft < 0;
  const size = floatText(Math.abs(one.minutesLeft));
  return {
    title: `${one.milestone}, window ${one.window}`,
    figure: momentText(one.due, one.zone),
    ...(one.state === 'late' ? { tone: 'bad' as const } : {}),
    sentence: `${countedFrom[one.before]}${one.note === undefined ? '' : ` ${one.note}`}`,
    rows: [
      ...(window
        ? [{ label: 'Window', figure: stretchText(window.start, window.end, window.zone) }]
        : []),
      { label: 'Due', figure: momentText(one.due, one.zone), note: one.zone, strong: true },
      ...(one.state === 'due' || one.state === 'late'
        ? [{ label: 'Time left when this was worked out', figure: late ? `${size} ago` : size }]
        : []),
      { label: 'State', figure: one.state },
      ...(one.metLateByMinutes === undefined
        ? []
        : [{ label: 'Met late by', figure: floatText(one.metLateByMinutes) }]),
      ...(one.by === undefined ? [] : [{ label: 'By whom', figure: one.by }]),
    ],
    rule: {
      name: `${one.milestone} (${rules})`,
      text: countedFrom[one.before],
      source: `${one.source} (${one.sureness})`,
    },
    links: [{ text: `Window ${one.window} in the sheet`, place: { to: 'window', id: one.window } }],
  };
}
