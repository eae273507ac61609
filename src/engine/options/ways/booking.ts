import type { AccessWindow } from '../../../model/index.js';
import { bookingCost, parseMoney } from '../../../price/index.js';
import type { Situation } from '../situation.js';
import type { OptionPart } from '../types.js';

/** What booking more time comes to. */
export interface Booking {
  /** Its line among the costs; none where the price book has no price of booking. */
  readonly lines: readonly OptionPart[];
  /** Smallest coins. */
  readonly minor: number;
}

/** Nothing is booked. */
export const noBooking: Booking = { lines: [], minor: 0 };

/** The price of more minutes of a window, and of so many further windows. */
export function bookingOf(
  { prices, holidays, request }: Situation,
  window: AccessWindow,
  minutes: number,
  windows: number,
): Booking {
  const booked = bookingCost({
    window,
    minutes,
    windows,
    prices,
    holidays,
    ...(request.askedAt !== undefined && { askedAt: request.askedAt }),
  });
  return booked
    ? { lines: [{ part: 'booking', ...booked }], minor: parseMoney(booked.amount, prices) }
    : noBooking;
}
