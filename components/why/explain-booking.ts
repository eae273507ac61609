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
  milestone: Milestone,
  window: AccessWindow | undefined,
  rules: string,
): Explanation {
  const late = milestone.minutesLeft < 0;
  const size = floatText(Math.abs(milestone.minutesLeft));
  return {
    title: `${milestone.milestone}, window ${milestone.window}`,
    figure: momentText(milestone.due, milestone.zone),
    ...(milestone.state === 'late' ? { tone: 'bad' as const } : {}),
    sentence: `${countedFrom[milestone.before]}${milestone.note === undefined ? '' : ` ${milestone.note}`}`,
    rows: [
      ...(window
        ? [{ label: 'Window', figure: stretchText(window.start, window.end, window.zone) }]
        : []),
      {
        label: 'Due',
        figure: momentText(milestone.due, milestone.zone),
        note: milestone.zone,
        strong: true,
      },
      ...(milestone.state === 'due' || milestone.state === 'late'
        ? [{ label: 'Time left when this was worked out', figure: late ? `${size} ago` : size }]
        : []),
      { label: 'State', figure: milestone.state },
      ...(milestone.metLateByMinutes === undefined
        ? []
        : [{ label: 'Met late by', figure: floatText(milestone.metLateByMinutes) }]),
      ...(milestone.by === undefined ? [] : [{ label: 'By whom', figure: milestone.by }]),
    ],
    rule: {
      name: `${milestone.milestone} (${rules})`,
      text: countedFrom[milestone.before],
      source: `${milestone.source} (${milestone.sureness})`,
    },
    links: [
      {
        text: `Window ${milestone.window} in the sheet`,
        place: { to: 'window', id: milestone.window },
      },
    ],
  };
}
