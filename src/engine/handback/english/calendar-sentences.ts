import { durationText, isoText } from '../../../calendar/index.js';
import type { Moment, WindowStatus } from '../../../model/index.js';
import { chanceText } from '../../../risk/chance-text.js';
import type { HandbackResult } from '../../../risk/types.js';

type InWindow = { readonly window: string };
type Named = InWindow & { readonly name: string };
type Verdict = Pick<
  HandbackResult,
  'verdict' | 'marginMinutes' | 'requiredMinutes' | 'chanceWanted'
> & { readonly onTime: number; readonly runs: number; readonly status: WindowStatus };

const verdictWords = {
  held: 'Held',
  'chance-low': 'Chance low',
  eaten: 'Eaten into',
  overrun: 'Overrun',
};
const clock = ({ at, zone }: Moment): string => isoText(at, zone).replace('T', ' ');

/** English for what a calendar of cut-off times says. */
export const calendarSentences = {
  'calendar-cut-off': ({ window, name }: Named) => `${window}: ${name} must have started`,
  'calendar-latest-start': (given: {
    readonly requiredMinutes: number;
    readonly onTimeBy: Moment;
    /** By when it must start to be on time with the chance `confidence`, where that is known. */
    readonly surelyBy: Moment | null;
    readonly confidence: number;
    readonly planned: Moment;
  }) =>
    [
      `Latest start that keeps the required margin of ${durationText(given.requiredMinutes)}.`,
      `Still on time if started by ${clock(given.onTimeBy)}.`,
      ...(given.surelyBy
        ? [`With ${chanceText(given.confidence)} on time if started by ${clock(given.surelyBy)}.`]
        : []),
      `Planned start ${clock(given.planned)}.`,
    ].join(' '),
  'calendar-no-return': ({ window, name }: Named) => `${window}: point of no return, ${name}`,
  'calendar-do-not-begin': () => 'Not begun by then, do not begin: it cannot be undone.',
  'calendar-abandonment': ({ window, name }: Named) => `${window}: latest abandonment, ${name}`,
  'calendar-no-room': () =>
    'Abandoned later, there is no room to put the line back, lead out and keep the margin.',
  'calendar-go': ({ window, name }: Named) => `${window}: go or no go, ${name}`,
  'calendar-holder': ({ holder }: { readonly holder: string }) =>
    holder === '' ? 'Nobody is named to decide.' : `${holder} decides.`,
  'calendar-end': ({ window }: InWindow) => `${window}: booked end`,
  'calendar-handed-back': () => 'The possession must have been handed back.',
  'calendar-booked-end': ({ end }: { readonly end: Moment }) => `Booked end ${clock(end)}.`,
  'calendar-verdict': (given: Verdict) => {
    const { chanceWanted: wanted } = given;
    const asked = wanted === null ? 'none is set as wanted' : `wanted ${chanceText(wanted)}`;
    return `${verdictWords[given.verdict]}: margin ${durationText(given.marginMinutes)} of ${durationText(given.requiredMinutes)}, ${chanceText(given.onTime)} on time in ${given.runs} simulated runs (${asked}). Window ${given.status}.`;
  },
};
