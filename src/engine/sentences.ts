import type { certificateSentences } from '../planner/certificate-words.js';
import type { planSentences } from '../planner/plan-sentences.js';
import type { reasonSentences } from '../planner/reason-sentences.js';
import type { repairSentences } from '../planner/repair/repair-sentences.js';
import type { unplacedSentences } from '../planner/search/unplaced-sentences.js';
import type { commonPhrases, commonSentences } from '../model/index.js';
import type { ledgerSentences } from '../rules/ledger-sentences.js';
import type { formulaSentences } from '../price/english/formula-sentences.js';
import type { inputSentences } from '../price/english/input-sentences.js';
import type { priceSentences } from '../price/english/index.js';
import type { calendarSentences } from './handback/english/calendar-sentences.js';
import type { bookingCalendarSentences } from './english/booking-calendar.js';
import type { planCalendarSentences } from './plan-out/english/plan-calendar-sentences.js';
import type { optionSentences } from './options/english/index.js';
import type { reportSentences } from './report/english/index.js';
import type { ReportWord } from './report/english/words.js';
import type { liveSentences } from '../risk/shift/live-sentences.js';
import type { noteSentences } from '../tables/note-sentences.js';
import type { faultSentences } from '../verify/english/index.js';

/** Those of why work does not fit, or finds no place. */
export type ReasonSentences = typeof reasonSentences & typeof unplacedSentences;
/** Those of how good a plan is, and what nobody said of its work. */
export type PlanSentences = typeof planSentences & typeof certificateSentences;
/** Those of what tables were taken to mean. */
export type NoteSentences = typeof noteSentences;
/** Those of why a row of a ledger applies; and sentences side by side. */
export type LedgerSentences = typeof ledgerSentences &
  typeof commonSentences &
  typeof commonPhrases;
/** Those of how sums of money come about. */
export type FormulaSentences = typeof formulaSentences & typeof inputSentences;
/** Those of what an overrun costs. */
export type PriceSentences = typeof priceSentences;

/** Those of ways to do the work of a window. */
export type OptionSentences = typeof optionSentences;

/** Those of what the independent check finds. */
export type FaultSentences = typeof faultSentences;

/** Those of reports. */
export type ReportSentences = typeof reportSentences;
/** Words that stand alone in them, by the English ones. */
export type ReportWords = Readonly<Record<ReportWord, string>>;

/** Those of a calendar of cut-off times. */
export type CalendarSentences = typeof calendarSentences;

/** Those of a calendar of booking dates. */
export type BookingCalendarSentences = typeof bookingCalendarSentences;

/** Those of a calendar of the plan of work. */
export type PlanCalendarSentences = typeof planCalendarSentences;

/** Those of a shift as it goes. */
export type LiveSentences = typeof liveSentences;

/** Those of what of a plan no longer holds, and why pieces of it move. */
export type RepairSentences = typeof repairSentences;

/** All that the core says, by its keys: what a catalogue of another language has to hold. */
export type Sentences = ReasonSentences &
  PlanSentences &
  NoteSentences &
  LedgerSentences &
  PriceSentences &
  OptionSentences &
  FaultSentences &
  LiveSentences &
  RepairSentences &
  ReportSentences &
  CalendarSentences &
  PlanCalendarSentences &
  BookingCalendarSentences;
