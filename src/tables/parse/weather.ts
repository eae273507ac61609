import { parseDecimal } from './number.js';
import { plain, refuse, type Parsed, type Parser } from './parsed.js';

const knots = 1852 / 3600;
const milesAnHour = 1609.344 / 3600;

/** Metres a second in one of the unit that a text ends with or names; `undefined` when it names none. */
function speedUnit(text: string): number | undefined {
  const tidy = plain(text).toLowerCase();
  if (/(?:^|[^a-z])(?:km ?\/? ?h|kph|kmh)\b/.test(tidy)) return 1 / 3.6;
  if (/(?:^|[^a-z])mph\b/.test(tidy)) return milesAnHour;
  if (/(?:^|[^a-z])(?:kts?|kn|knots?)\b/.test(tidy)) return knots;
  if (/(?:^|[^a-z])m ?\/? ?s\b/.test(tidy)) return 1;
  return undefined;
}

/** A parser of wind speeds to m/s. A unit in the cell comes before that of the heading; without either it is m/s. */
export function speedParser(heading: string, most: number): Parser<number> {
  const unit = speedUnit(heading) ?? 1;
  return (text): Parsed<number> => {
    const own = /^([\d.,]+)\s*([a-z/ ]{1,8})$/i.exec(plain(text));
    const factor = own ? speedUnit(own[2]!) : unit;
    if (factor === undefined) return refuse('wind-not-read', { text });
    const read = parseDecimal(own ? own[1]! : text);
    if ('problem' in read) return read;
    const value = read.value * factor;
    return value >= 0 && value <= most ? { value } : refuse('wind-out-of-range', { text, most });
  };
}

/** A parser of temperatures to °C; °F where the cell or the heading says so. */
export function temperatureParser(heading: string): Parser<number> {
  const inFahrenheit = /(?:^|[^a-z])(?:f|fahrenheit)\b/i.test(plain(heading));
  return (text): Parsed<number> => {
    const own = /^(.*[^ °]) ?°? ?([cf])$/i.exec(plain(text));
    const read = parseDecimal((own ? own[1]! : text).replace(/\s?°$/, ''));
    if ('problem' in read) return read;
    const fahrenheit = own ? own[2]!.toLowerCase() === 'f' : inFahrenheit;
    const value = fahrenheit ? ((read.value - 32) * 5) / 9 : read.value;
    return value >= -70 && value <= 110 ? { value } : refuse('temperature-out-of-range', { text });
  };
}
