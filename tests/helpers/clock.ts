import { instantOf, type Disambiguation, type Instant } from '../../src/calendar/index.js';

export const zone = 'Europe/London';

/**
 * The moment at which clocks show a time: `at('2027-03-27 22:50')`.
 *
 * Of a time that clocks show twice it is the earlier, unless told otherwise.
 */
export function at(
  text: string,
  reading: Disambiguation = 'earlier',
  inZone: string = zone,
): Instant {
  const [year, month, day, hour, minute] = text.split(/[-T :]/).map(Number) as [
    number,
    number,
    number,
    number,
    number,
  ];
  return instantOf({ year, month, day, hour, minute }, inZone, reading);
}
