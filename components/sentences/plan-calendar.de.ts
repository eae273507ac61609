import type { PlanCalendarSentences } from '../../src/engine/index.js';
import { statusText } from '../shared/words.de.js';
import { moment, time } from './parts.de.js';

// What a calendar of the plan of work says. From memory, to be read by a native speaker of the trade.

export const planCalendar: PlanCalendarSentences = {
  'plan-calendar-under': ({ document, plan }, say) =>
    `Dokument: ${document}.\nArbeitsplan: ${say(plan)}.`,
  'plan-calendar-window': ({ status }) => `Sperrpause ${statusText[status]}.`,
  'plan-calendar-piece': ({ piece, start, end }) =>
    `${piece}: ${moment(start)} bis ${moment(end)} (${end.zone})`,
  'plan-calendar-piece-in': ({ piece, window }) =>
    window === null ? `${piece} außerhalb jeder Sperrpause` : `${piece} in Sperrpause ${window}`,
  'plan-calendar-key-date': (given) =>
    `Ecktermin von ${given.package}: nach diesem Plan ${given.met ? 'gehalten' : 'verfehlt'}`,
  'plan-calendar-forecast': ({ forecast, met, float }) =>
    [
      forecast === null
        ? 'Nicht alles davon ist untergebracht.'
        : `Vorhersage ${moment(forecast)} (${forecast.zone}), ${met ? 'gehalten' : 'verfehlt'}.`,
      ...(float ? [`Puffer ${float.atLeast ? 'mindestens ' : ''}${time(float.minutes)}.`] : []),
    ].join(' '),
};
