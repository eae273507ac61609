import { startOfLocalDay, type Instant } from '../../calendar/index.js';
import { midnight, candidatesAt, candidatesOf, settle } from './local-moment.js';
import { refuse, type Parsed, type Parser } from './parsed.js';
import { parseMoment, type DateOrder } from './written-moment.js';
import type { TwiceReason } from '../problems/cell-problems.js';

/** How a cell that names one moment is read. */
export interface MomentReading {
  readonly zone: string;
  readonly order: DateOrder;
  /** What a date alone means: the first moment of that local day, or the end of it. */
  readonly dateAlone: 'start' | 'end';
  /** Which reading to take of a time that clocks show twice, and why. */
  readonly twice: readonly ['earlier' | 'later', why: TwiceReason];
}

/** A parser of one moment: a date and time, or a date alone. A time alone is refused. */
export function momentParser({ zone, order, dateAlone, twice }: MomentReading): Parser<Instant> {
  return (text): Parsed<Instant> => {
    const read = parseMoment(text, order);
    if ('problem' in read) return read;
    const { date, time } = read.value;
    if (!date) return refuse('date-missing', { text });
    if (!time) {
      // Noon is there in every zone on every day: it stands for the day.
      const noon = candidatesAt(date, { ...midnight, hour: 12 }, zone);
      if ('problem' in noon) return noon;
      return { value: startOfLocalDay(noon.value[0]!, zone, dateAlone === 'end' ? 1 : 0) };
    }
    const found = candidatesOf(read.value, zone);
    return 'problem' in found ? found : settle(found.value, twice[0], zone, twice[1]);
  };
}
