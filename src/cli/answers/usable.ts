import * as z from 'zod/mini';
import { count, flag, list, moment, said, status, text, texts } from './parts.js';

export const usableAnswer = z.object({
  needs: z.object({ isolation: texts, loud: flag }),
  windows: list(
    z.object({
      window: text,
      title: text,
      status,
      startsAt: moment,
      endsAt: moment,
      grossMinutes: count,
      usableMinutes: count,
      shortfallMinutes: said(count, 'By how much the window is too short for its own deductions.'),
      barred: list(z.object({ code: text, text })),
      ledger: said(
        list(
          z.object({
            rule: text,
            kind: z.enum(['lead-in', 'usable', 'curfew', 'shift-break', 'lead-out', 'margin']),
            from: moment,
            to: moment,
            minutes: count,
            why: text,
          }),
        ),
        'Each minute of the window is in one row; rows sum to the gross.',
      ),
    }),
  ),
});

/** The JSON of `usable`. */
export type UsableAnswer = z.infer<typeof usableAnswer>;
