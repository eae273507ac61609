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
  const all = during.flatMap((item) =>
    'fromMinute' in item ? dailyBands(item, window, zone, 'shorter') : [item],
  );
  return intersect(unionOf(all), [window]);
}
