import { planDocumentSchema } from '../model/index.js';

const { tables: _, ...parts } = planDocumentSchema.shape;

/** Entries of the document other than its tables. */
export const partKeys = Object.keys(parts) as (keyof typeof parts)[];

/** Whether the value may stand under this key of the document; of a key that no plan has, none may. */
export function isValidPart(key: string, value: unknown): boolean {
  if (!Object.hasOwn(parts, key)) return false;
  return parts[key as keyof typeof parts].safeParse(value).success;
}

/** How deep the fields of an entry are kept apart. An agreed plan is one value: two halves of two plans are none. */
export const fieldDepth = (key: string): number =>
  ['rules', 'prices', 'site'].includes(key) ? 2 : 1;
