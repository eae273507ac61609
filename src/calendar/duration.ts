/**
 * Minutes in words, as a planner writes them.
 * @example durationText(80) // '1 h 20'
 * @example durationText(-45) // '-45 min'
 */
export function durationText(minutes: number): string {
  const size = Math.abs(Math.round(minutes));
  const sign = minutes < 0 && size > 0 ? '-' : '';
  const hours = Math.floor(size / 60);
  const rest = size % 60;
  if (hours === 0) return `${sign}${rest} min`;
  return rest === 0 ? `${sign}${hours} h` : `${sign}${hours} h ${String(rest).padStart(2, '0')}`;
}
