// What the command line prints, held against the schemas that are published. The check is Ajv's (https://ajv.js.org),
// which shares no code with the library that writes the schemas; its strict mode refuses a schema that is ill made.
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { answerSchema } from '../../src/cli/answers/index.js';
import type { Verb } from '../../src/cli/options.js';

/** The schema with every object closed: what is printed and not described is a fault here, though not for a reader. */
function closed(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(closed);
  if (typeof schema !== 'object' || schema === null) return schema;
  const inner = Object.fromEntries(Object.entries(schema).map(([key, one]) => [key, closed(one)]));
  return inner['type'] === 'object' && 'properties' in inner
    ? { ...inner, additionalProperties: false }
    : inner;
}

const checks = new Map<Verb, ValidateFunction>();

function checkOf(verb: Verb): ValidateFunction {
  const known = checks.get(verb);
  if (known) return known;
  const made = new Ajv2020({ strict: true, allErrors: true }).compile(
    closed(answerSchema(verb)) as object,
  );
  checks.set(verb, made);
  return made;
}

/** What is wrong with an answer by its schema; empty where nothing is. */
export function answerFaults(verb: Verb, answer: unknown): readonly string[] {
  const check = checkOf(verb);
  if (check(answer)) return [];
  return (check.errors ?? []).map(
    (error) =>
      `${verb}${error.instancePath}: ${error.message ?? error.keyword} ${JSON.stringify(error.params)}`,
  );
}
