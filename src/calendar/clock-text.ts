/**
 * Minutes past midnight that a clock text names, hours and minutes of two digits each.
 * @example minuteOfClock('23:30') // 1410
 * @example minuteOfClock('24:00') // 1440
 */
export function minuteOfClock(clock: string): number {
  return Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
}
