import * as z from 'zod/mini';
import { count, flag, list, placement, reason, said, status, text, whole } from './parts.js';

const countOrNone = z.nullable(
  said(
    count,
    'Null where the package has rows that could not be read, and where it was not worked out.',
  ),
);

export const fitAnswer = z.object({
  fits: list(
    z.object({
      package: text,
      window: text,
      status: z.optional(status),
      fits: flag,
      spareMinutes: z.nullable(
        said(whole, 'Usable minutes left; below 0: minutes missing; null: no time helps.'),
      ),
      spareAtMost: z.optional(whole),
      proven: flag,
      fitsUnits: countOrNone,
      ofUnits: countOrNone,
      fitsPieces: countOrNone,
      ofPieces: countOrNone,
      mostProven: z.nullable(flag),
      reasons: said(list(reason), 'Empty where it fits.'),
      placements: list(placement),
    }),
  ),
});

/** The JSON of `fit`. */
export type FitAnswer = z.infer<typeof fitAnswer>;
