import type { Sentences } from '../../src/engine/index.js';
import { bookingCalendar } from './booking-calendar.de.js';
import { calendar } from './calendar.de.js';
import { faults } from './faults.de.js';
import { ledger } from './ledger.de.js';
import { live } from './live.de.js';
import { notes } from './notes.de.js';
import { options } from './options.de.js';
import { planCalendar } from './plan-calendar.de.js';
import { plans } from './plans.de.js';
import { prices } from './prices.de.js';
import { reasons } from './reasons.de.js';
import { repairs } from './repairs.de.js';
import { reports } from './reports.de.js';

export { explanations } from './explanations.de.js';

/** All that the core says, in German. From memory, to be read by a native speaker of the trade. */
export const sentences: Sentences = {
  ...reasons,
  ...plans,
  ...notes,
  ...ledger,
  ...prices,
  ...options,
  ...faults,
  ...live,
  ...repairs,
  ...reports,
  ...calendar,
  ...planCalendar,
  ...bookingCalendar,
};
