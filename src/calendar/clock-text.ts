/**
 * Minutes past midnight that a clock text names, hours and minutes of two digits each.
 * @example minuteOfClock('23:30') // 1410
 * @example minuteOfClock('24:00') // 1440
 */
export function minuteOfClock(clock: string): number {
  return Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
}

/**
 * Minutes past midnight as a clock text.
 * @example clockOfMinute(1410) // '23:30'
 */
export function clockOfMinute(minute: number): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}
