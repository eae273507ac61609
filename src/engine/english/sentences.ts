import { commonPhrases } from '../../model/index.js';
import { priceSentences } from '../../price/english/index.js';
import { faultSentences } from '../../verify/english/index.js';
import { reportSentences } from '../report/english/index.js';
import { calendarSentences } from '../handback/english/calendar-sentences.js';
import { bookingCalendarSentences } from './booking-calendar.js';
import { planCalendarSentences } from '../plan-out/english/plan-calendar-sentences.js';
import { optionSentences } from '../options/english/index.js';

/** English words for what the core says by key. */
export const englishSentences = {
  ...commonPhrases,
  ...priceSentences,
  ...optionSentences,
  ...faultSentences,
  ...reportSentences,
  ...calendarSentences,
  ...planCalendarSentences,
  ...bookingCalendarSentences,
};
