import type { Milestone } from '../../src/engine/types.js';
import type { AccessWindow } from '../../src/model/index.js';
import { floatText, momentText, stretchText } from '../shared/format.js';
import { explainWords } from './explain-words.js';
import type { Explanation } from './explanation.js';

/** By when something has to be asked, offered or published for a window, and by which lead time. */
export function explainMilestone(
  milestone: Milestone,
  window: AccessWindow | undefined,
  rules: string,
): Explanation {
  const words = explainWords();
  const { booking } = words;
  const late = milestone.minutesLeft < 0;
  const size = floatText(Math.abs(milestone.minutesLeft));
  return {
    title: booking.title(milestone.milestone, milestone.window),
    figure: momentText(milestone.due, milestone.zone),
    ...(milestone.state === 'late' ? { tone: 'bad' as const } : {}),
    sentence: `${booking.countedFrom[milestone.before]}${milestone.inTwo ? ` ${booking.inTwo[milestone.before]}` : ''}`,
    rows: [
      ...(window
        ? [
            {
              label: booking.windowLabel,
              figure: stretchText(window.start, window.end, window.zone),
            },
          ]
        : []),
      {
        label: booking.due,
        figure: momentText(milestone.due, milestone.zone),
        note: milestone.zone,
        strong: true,
      },
      ...(milestone.state === 'due' || milestone.state === 'late'
        ? [{ label: booking.timeLeft, figure: late ? booking.ago(size) : size }]
        : []),
      { label: booking.stateLabel, figure: booking.state[milestone.state] },
      ...(milestone.metLateByMinutes === undefined
        ? []
        : [{ label: booking.metLate, figure: floatText(milestone.metLateByMinutes) }]),
      ...(milestone.by === undefined ? [] : [{ label: booking.by, figure: milestone.by }]),
    ],
    rule: {
      name: `${milestone.milestone} (${rules})`,
      text: booking.countedFrom[milestone.before],
      source: `${milestone.source} (${milestone.sureness})`,
    },
    links: [
      {
        text: words.windowInSheet(milestone.window),
        place: { to: 'window', id: milestone.window },
      },
    ],
  };
}
