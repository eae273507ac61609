import type { Demand } from '../../model/index.js';
import { partsOf } from './list.js';
import { parseWhole } from './number.js';
import { refuse, type Parsed } from './parsed.js';

/** Reads what an activity needs at once: `crane:1; gang:2`. A bare name is one of it. */
export function parseDemands(text: string): Parsed<Demand[]> {
  const demands = new Map<string, number>();
  for (const part of partsOf(text)) {
    const colon = part.lastIndexOf(':');
    const resource = (colon < 0 ? part : part.slice(0, colon)).trim();
    const digits = colon < 0 ? '1' : part.slice(colon + 1).trim();
    if (resource === '' || resource.includes(',')) {
      return refuse('resource-not-read', { part });
    }
    const amount = parseWhole(digits, 1);
    if ('problem' in amount) {
      return refuse('resource-not-read/number', { part });
    }
    if (demands.has(resource)) {
      return refuse('resource-twice', { resource });
    }
    demands.set(resource, amount.value);
  }
  return { value: [...demands].map(([resource, amount]) => ({ resource, amount })) };
}
