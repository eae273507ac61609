import * as z from 'zod/mini';
import { weekdays } from './weekdays.js';

/**
 * What lead times of whole weeks are counted back from: the day on which the window starts, or the first day of the
 * planning week in which it does. Which of the two holds, and on which day that week begins, is by the local code.
 */
export const weeksFrom = ['window', 'railway week'] as const;

export const bookingCountSchema = z.strictObject({
  weeksFrom: z._default(z.enum(weeksFrom), 'window'),
  /** First day of the planning week. */
  weekStarts: z._default(z.enum(weekdays), 'sat'),
});
export type BookingCount = z.infer<typeof bookingCountSchema>;
