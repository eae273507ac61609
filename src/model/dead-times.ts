import {
  dailyBands,
  intersect,
  unionOf,
  type Interval,
  type IntervalSet,
} from '../calendar/index.js';
import type { IsolatedSection } from './window.js';

/** The stretches of a window in which a section may be isolated, earthed and given back. */
export function deadTimes(section: IsolatedSection, window: Interval, zone: string): IntervalSet {
  const { during } = section;
  if (!during) return [{ start: window.start, end: window.end }];
  const all = during.flatMap((one) =>
    'fromMinute' in one ? dailyBands(one, window, zone, 'shorter') : [one],
  );
  return intersect(unionOf(all), [window]);
}
