import { Big } from 'big.js';
import type { Instant } from '../calendar/index.js';
import type { AccessWindow, Phrase, PriceBook } from '../model/index.js';
import { noticeGiven } from './measure-span.js';
import { input } from './heads/head.js';
import { decimalText, minorOf } from './money.js';
import { sayPrice, sumOf } from './say-price.js';
import type { PriceInput } from './types.js';

/** A cost and how it was calculated. */
export interface CostLine {
  readonly what: Phrase;
  /** Decimal text, rounded once. */
  readonly amount: string;
  readonly formula: Phrase;
  readonly inputs: readonly PriceInput[];
  readonly source: Phrase;
}

export interface BookingRequest {
  /** The window to extend or to book. */
  readonly window: AccessWindow;
  /** Minutes added, or the length of the new window. */
  readonly minutes: number;
  /** Extra windows booked; 0 when one is only extended. */
  readonly windows: number;
  readonly prices: PriceBook;
  readonly holidays: readonly string[];
  /** When the request is made. Absent: no notice band is applied. */
  readonly askedAt?: Instant;
}

/** Cost of booking more time. Null when the price book does not price bookings. */
export function bookingCost(asked: BookingRequest): CostLine | null {
  const { window, minutes, windows, prices: book, askedAt } = asked;
  const rule = book.booking;
  if (!rule) return null;
  const band =
    askedAt === undefined || askedAt > window.start
      ? undefined
      : noticeGiven({ start: askedAt, end: window.start }, window.zone, book.notice, asked.holidays)
          .band;
  const factor = band?.factor ?? '1';
  const over = new Big(rule.perHour)
    .times(minutes)
    .plus(new Big(rule.perWindow).times(windows).times(60))
    .times(factor);
  const minor = minorOf(over, book, 60);
  const money = (amount: string) => ({ amount, currency: book.currency });
  return {
    what:
      windows > 0
        ? sayPrice('booking-of', { window: window.id })
        : sayPrice('booking-longer', { window: window.id, minutes }),
    amount: decimalText(minor, book),
    formula: sayPrice('booking-sum', {
      windows: windows > 0 ? { count: windows, each: money(rule.perWindow) } : null,
      minutes,
      hour: money(rule.perHour),
      notice: band ? { factor, name: band.name } : null,
      total: sumOf(minor, book),
    }),
    inputs: [
      input('input-minutes-booked', minutes, 'min'),
      input('input-price-of-hour', rule.perHour, book.currency),
      input('input-price-of-window', rule.perWindow, book.currency),
      input('input-notice-factor', factor),
    ],
    source: rule.source ?? book.source,
  };
}

/** Cost of re-booking the remaining units, without their plant and labour. Null when the book does not price it. */
export function reBookingCost(units: number, visits: number, book: PriceBook): CostLine | null {
  const rule = book.reBooking;
  if (!rule) return null;
  const minor = minorOf(
    new Big(rule.perUnit).times(units).plus(new Big(rule.perVisit).times(visits)),
    book,
  );
  return {
    what: sayPrice('left-over-booked-again'),
    amount: decimalText(minor, book),
    formula: sayPrice('re-booking-sum', {
      units,
      unit: { amount: rule.perUnit, currency: book.currency },
      visits,
      visit: { amount: rule.perVisit, currency: book.currency },
      total: sumOf(minor, book),
    }),
    inputs: [
      input('input-left-over', units, sayPrice('units')),
      input('input-price-of-one', rule.perUnit, book.currency),
      input('input-further-visits', visits),
      input('input-price-of-visit', rule.perVisit, book.currency),
    ],
    source: rule.source ?? book.source,
  };
}
