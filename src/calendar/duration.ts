/**
 * Minutes in words, as a planner writes them.
 * @example durationText(80) // '1 h 20'
 * @example durationText(-45) // '-45 min'
 * @example durationText(10_400) // '7 d 5 h 20', days of 24 elapsed hours, from 100 h on
 */
export function durationText(minutes: number): string {
  const size = Math.abs(Math.round(minutes));
  const sign = minutes < 0 && size > 0 ? '-' : '';
  const days = size >= 6000 ? Math.floor(size / 1440) : 0;
  if (days > 0) {
    const left = size - days * 1440;
    return left === 0 ? `${sign}${days} d` : `${sign}${days} d ${durationText(left)}`;
  }
  const hours = Math.floor(size / 60);
  const rest = size % 60;
  if (hours === 0) return `${sign}${rest} min`;
  return rest === 0 ? `${sign}${hours} h` : `${sign}${hours} h ${String(rest).padStart(2, '0')}`;
}
