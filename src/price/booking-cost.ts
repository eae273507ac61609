import { Big } from 'big.js';
import type { Instant } from '../calendar/index.js';
import type { AccessWindow, PriceBook } from '../model/index.js';
import { noticeGiven } from './measure-span.js';
import { decimalText, minorOf, moneyText } from './money.js';
import type { PriceInput } from './types.js';

/** A cost and how it was calculated. */
export interface CostLine {
  readonly what: string;
  /** Decimal text, rounded once. */
  readonly amount: string;
  readonly formula: string;
  readonly inputs: readonly PriceInput[];
  readonly source: string;
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
  const parts = [
    ...(windows > 0 ? [`${windows} x ${book.currency} ${rule.perWindow} a window`] : []),
    `${minutes} min x ${book.currency} ${rule.perHour} an hour`,
  ];
  const notice = band ? ` x ${factor} (${band.name})` : '';
  return {
    what: windows > 0 ? `Booking ${window.id}` : `Booking ${window.id} for ${minutes} min more`,
    amount: decimalText(minor, book),
    formula: `${parts.length > 1 ? `(${parts.join(' + ')})` : parts[0]!}${notice} = ${moneyText(minor, book)}`,
    inputs: [
      { name: 'minutes booked', value: String(minutes), unit: 'min' },
      { name: 'price of an hour', value: rule.perHour, unit: book.currency },
      { name: 'price of a window', value: rule.perWindow, unit: book.currency },
      { name: 'factor of notice', value: factor, unit: '' },
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
    what: 'Work left over, booked again',
    amount: decimalText(minor, book),
    formula: `${units} left over x ${book.currency} ${rule.perUnit} + ${visits} further ${visits === 1 ? 'visit' : 'visits'} x ${book.currency} ${rule.perVisit} = ${moneyText(minor, book)}`,
    inputs: [
      { name: 'left over', value: String(units), unit: 'units' },
      { name: 'price of one', value: rule.perUnit, unit: book.currency },
      { name: 'further visits', value: String(visits), unit: '' },
      { name: 'price of a visit', value: rule.perVisit, unit: book.currency },
    ],
    source: rule.source ?? book.source,
  };
}
