import type { SpeedLimit } from '../../model/index.js';
import { plain, refuse, type Parsed } from './parsed.js';

const written = /^(\d{1,3}(?:\.\d{1,2})?) ?(mph|mi\/h|km\/h|kmh|kph|km\/hr)?$/;

/** Reads a limit on speed such as `20 mph` or `50 km/h`, or `none`. A bare number is refused, since it reads two ways. */
export function parseSpeedLimit(text: string): Parsed<SpeedLimit | 'none'> {
  if (plain(text).toLowerCase() === 'none') return { value: 'none' };
  const found = written.exec(plain(text).toLowerCase());
  const value = Number(found?.[1]);
  if (!found || value === 0) return refuse('speed-not-read', { text });
  if (found[2] === undefined) return refuse('speed-unit-missing', { text, number: found[1]! });
  return { value: { value, unit: found[2].startsWith('m') ? 'mph' : 'km/h' } };
}
