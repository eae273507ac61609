import * as z from 'zod/mini';
import type { Verb } from '../options.js';
import { version } from '../version.js';
import { allocateAnswer } from './allocate.js';
import { bookAnswer } from './book.js';
import { fitAnswer } from './fit.js';
import { handbackAnswer } from './handback.js';
import { lookAheadAnswer } from './look-ahead.js';
import { list, note, said, texts } from './parts.js';
import { priceAnswer } from './price.js';
import { liftingAnswer, noiseAnswer, peopleAnswer } from './site.js';
import { summaryAnswer } from './summary.js';
import { usableAnswer } from './usable.js';

const answers = {
  usable: usableAnswer,
  fit: fitAnswer,
  allocate: allocateAnswer,
  handback: handbackAnswer,
  price: priceAnswer,
  book: bookAnswer,
  summary: summaryAnswer,
  'look-ahead': lookAheadAnswer,
  people: peopleAnswer,
  noise: noiseAnswer,
  lifting: liftingAnswer,
} as const satisfies Readonly<Record<Verb, z.ZodMiniObject>>;

/** Fields of every answer besides its own. */
const envelope = {
  notes: list(note),
  cautions: said(texts, 'To be shown wherever somebody could act on a figure.'),
};

/**
 * The JSON schema of what a verb prints with `--json` (draft 2020-12). It describes the present fields and allows
 * others: later versions may add fields.
 */
export function answerSchema(verb: Verb): object {
  const { $schema, ...schema } = z.toJSONSchema(
    z.extend(answers[verb] as z.ZodMiniObject, envelope),
    {
      // As input: allows unknown keys.
      io: 'input',
      override: ({ jsonSchema }) => {
        delete jsonSchema.readOnly;
        if (jsonSchema.minimum === Number.MIN_SAFE_INTEGER) delete jsonSchema.minimum;
        if (jsonSchema.maximum === Number.MAX_SAFE_INTEGER) delete jsonSchema.maximum;
      },
    },
  );
  return { $schema, title: `possession-fit ${verb} --json, version ${version}`, ...schema };
}
