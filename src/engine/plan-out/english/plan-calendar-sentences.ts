import { durationText, isoText } from '../../../calendar/index.js';
import type { Moment, SayPhrase, WindowStatus } from '../../../model/index.js';
import { minuteText } from '../plan-name.js';

type Told = Parameters<SayPhrase>[0];
/** A piece of work in a word, such as `FIX x 4`. */
type Piece = { readonly piece: string };

const clock = ({ at, zone }: Moment): string => isoText(at, zone);

/** English for what a calendar of the plan of work says. */
export const planCalendarSentences = {
  'plan-calendar-under': (
    { document, plan }: { readonly document: string; readonly plan: Told },
    say: SayPhrase,
  ) => `Document: ${document}.\nPlan of work: ${say(plan)}.`,
  'plan-calendar-window': ({ status }: { readonly status: WindowStatus }) => `Window ${status}.`,
  'plan-calendar-piece': (given: Piece & { readonly start: Moment; readonly end: Moment }) =>
    `${given.piece}: ${clock(given.start)} to ${clock(given.end)}`,
  'plan-calendar-piece-in': ({ piece, window }: Piece & { readonly window: string | null }) =>
    window === null ? `${piece} outside any window` : `${piece} in ${window}`,
  'plan-calendar-key-date': (given: { readonly package: string; readonly met: boolean }) =>
    `Key date of ${given.package}: ${given.met ? 'met' : 'missed'} as planned`,
  'plan-calendar-forecast': (given: {
    readonly forecast: Moment | null;
    readonly met: boolean;
    /** Absent where nothing is known of it. */
    readonly float: { readonly minutes: number; readonly atLeast: boolean } | null;
  }) => {
    const { forecast, met, float } = given;
    return [
      forecast === null
        ? 'Not all of it is placed.'
        : `Forecast ${minuteText(forecast.at, forecast.zone)} (${forecast.zone}), ${met ? 'met' : 'missed'}.`,
      ...(float
        ? [`Float ${float.atLeast ? 'at least ' : ''}${durationText(float.minutes)}.`]
        : []),
    ].join(' ');
  },
};
