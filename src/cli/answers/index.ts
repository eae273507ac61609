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

/** What every answer carries beside its own. */
const envelope = {
  notes: list(note),
  cautions: said(texts, 'To be shown wherever somebody could act on a figure.'),
};

/**
 * The JSON schema of what a verb prints with `--json` (draft 2020-12). It says what is there and forbids nothing more:
 * later versions may add fields.
 */
export function answerSchema(verb: Verb): object {
  const { $schema, ...schema } = z.toJSONSchema(
    z.extend(answers[verb] as z.ZodMiniObject, envelope),
    {
      // As input: unknown keys are not ruled out.
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
