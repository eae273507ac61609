import { dailyBands } from '../calendar/index.js';
import { weekdays, type AccessWindow, type Curfew, type Needs } from '../model/index.js';
import type { Claim } from './claim.js';

const minuteOf = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));

/**
 * The stretches of a window in which work with these needs must stop, in the order of the list; they may overlap.
 *
 * A curfew belongs to the day it starts on, so one that began the evening before the window counts. `from` and `to` are
 * read from the clocks of the window's zone: over a clock change the curfew is an hour longer or shorter.
 */
export function curfewClaims(
  window: AccessWindow,
  needs: Needs,
  curfews: readonly Curfew[],
): readonly Claim[] {
  return curfews
    .filter((one) => one.bars === 'all' || needs.loud)
    .flatMap((one) => {
      const band = {
        fromMinute: minuteOf(one.from),
        toMinute: minuteOf(one.to),
        ...(one.days && { days: one.days.map((day) => weekdays.indexOf(day) + 1) }),
      };
      const who = one.bars === 'all' ? 'All work' : 'Loud work';
      const nights = one.days ? `, when the day it starts on is ${one.days.join(', ')}` : '';
      const source = one.source === undefined ? '' : ` Source: ${one.source}.`;
      return dailyBands(band, window, window.zone).map((stretch) => ({
        ...stretch,
        rule: one.name,
        kind: 'curfew' as const,
        why: `${who} stops from ${one.from} to ${one.to}${nights}.${source}`,
      }));
    });
}
