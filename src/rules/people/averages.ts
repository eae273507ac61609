/** The legal average for night work: A / (B - C). */
export interface AverageDay {
  /** B - C. */
  readonly daysCounted: number;
  readonly minutesADay: number;
}

/**
 * Minutes worked in each 24 hours by the formula A / (B - C): A the normal hours in the reference period, B its days, C
 * the weekly rest due in it in days (24 hours a week unless agreed otherwise).
 *
 * @throws {RangeError} When no days are left to count.
 * @example averageDay({ workedMinutes: 17 * 48 * 60, days: 119 }).minutesADay // 480
 * @see Working Time Regulations 1998, regulation 6(5); from memory.
 */
export function averageDay(of: {
  workedMinutes: number;
  days: number;
  weeklyRestHours?: number;
}): AverageDay {
  const { workedMinutes, days, weeklyRestHours = 24 } = of;
  const daysCounted = days - ((days / 7) * weeklyRestHours) / 24;
  if (!(daysCounted > 0)) throw new RangeError(`no day left to average over: ${days} days`);
  return { daysCounted, minutesADay: workedMinutes / daysCounted };
}
