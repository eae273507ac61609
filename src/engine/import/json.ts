import {
  decisionsSchema,
  limitSetSchema,
  planFrom,
  siteSchema,
  type PlanDocument,
} from '../../model/index.js';
import { priceBookSchema } from '../../model/price-book.js';
import { jsonFrom, rulesFrom } from '../../tables/index.js';
import type { Taken } from './table.js';
import type { ImportReport } from './types.js';

type JsonKind = 'plan' | 'rules' | 'prices' | 'site' | 'limits' | 'decisions';

/** Entries by which a file of ours is known, whatever else it holds and whether or not it is sound. */
const marks: readonly (readonly [JsonKind, readonly string[]])[] = [
  ['plan', ['tables']],
  ['rules', ['leadIn', 'leadOut', 'margin', 'curfews', 'shifts']],
  ['prices', ['currency', 'delay', 'standing']],
  ['site', ['hours', 'noise', 'lifting', 'concrete']],
  ['limits', ['limits']],
  ['decisions', ['commitments', 'goPoints']],
];

function kindOf(value: unknown): JsonKind {
  const keys = typeof value === 'object' && value !== null ? Object.keys(value) : [];
  const found = marks.find(([, names]) => names.some((name) => keys.includes(name)));
  return found?.[0] ?? 'rules';
}

/**
 * Takes a JSON file into a document: a whole plan, or one part of it. A file that cannot be used leaves the document as
 * it is, with faults that say where.
 */
export function takeJson(
  file: string,
  text: string,
  encoding: string,
  document: PlanDocument,
): Taken {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    value = undefined;
  }
  const kind = kindOf(value);
  const report = { file, encoding, delimiter: '', rows: 0, matched: [], unmatched: [] };
  const taken = (
    as: ImportReport['kind'],
    faults: ImportReport['faults'],
    part: Partial<PlanDocument> | undefined,
  ): Taken => ({
    document: part ? { ...document, ...part } : document,
    report: { ...report, kind: as, faults },
  });
  switch (kind) {
    case 'plan': {
      const read = planFrom(value, file);
      return read.document
        ? taken('plan', [], read.document)
        : taken('plan', read.faults, undefined);
    }
    case 'prices': {
      const read = jsonFrom(text, file, 'prices', priceBookSchema);
      return taken('prices', read.faults, read.value && { prices: read.value });
    }
    case 'site': {
      const read = jsonFrom(text, file, 'site', siteSchema);
      const site = read.value && { ...document.site, ...read.value };
      return taken('site', read.faults, site && { site });
    }
    case 'limits': {
      const read = jsonFrom(text, file, 'site', limitSetSchema);
      const site = read.value && { ...document.site, hours: read.value };
      return taken('site', read.faults, site && { site });
    }
    case 'decisions': {
      const read = jsonFrom(text, file, 'decisions', decisionsSchema);
      return taken('decisions', read.faults, read.value && { decisions: read.value });
    }
    case 'rules': {
      const read = rulesFrom(text, file);
      return taken('rules', read.faults, read.rules && { rules: read.rules });
    }
  }
}
