// Words for what is wrong with a plan file. They are loaded when they are first shown.
import type { ProblemWords } from './fault.js';

const unchanged =
  'Choose a file that was saved as a plan and not changed by hand, or correct this entry.';

const asFile = 'Ask for the plan as a file.';

export const planFileProblems = {
  'link-cut': (): ProblemWords => ['The link is not whole: part of it is missing.', asFile],
  'link-cut/packed': (): ProblemWords => [
    'The link is not whole: what it holds cannot be unpacked.',
    asFile,
  ],
  'link-too-large': (): ProblemWords => [
    'What the link holds is larger than any plan sent by link.',
    asFile,
  ],
  'plan-not-json': (): ProblemWords => [
    'The text is not a plan file, or part of it is missing.',
    'Choose a file that was saved as a plan. If it came by mail, ask for it again.',
  ],
  'plan-text-too-long': ({
    part,
    length,
    mostTyped,
  }: {
    readonly part: string;
    readonly length: number;
    readonly mostTyped: number;
  }): ProblemWords => [
    `Under "${part}" stands a text of ${length} characters; at most ${mostTyped} are taken.`,
    'Shorten it in the file, or ask for the plan again.',
  ],
  'plan-zone-not-known': ({ zone }: { readonly zone: string }): ProblemWords => [
    `The plan's times are those of "${zone}", which is no time zone.`,
    'Ask for the plan again, or write a zone such as Europe/London under "zone".',
  ],
  'plan-key-refused': ({ key }: { readonly key: string }): ProblemWords => [
    `The file has an entry named "${key}", which is not accepted.`,
    'Take it out, or ask where the file comes from.',
  ],
  'plan-newer': ({
    schema,
    latestSchema,
  }: {
    readonly schema: number | undefined;
    readonly latestSchema: number;
  }): ProblemWords => [
    `The plan was saved by a newer version (plan version ${schema}; this page reads up to ${latestSchema}). Nothing was changed.`,
    'Reload the page to get the newer version, or ask for the tables as CSV files.',
  ],
  'plan-schema-missing': (): ProblemWords => [
    'The file does not say which version of a plan it is.',
    'Choose a file that was saved as a plan.',
  ],
  'plan-no-way-up': (): ProblemWords => [
    'The plan is of a version that cannot be read any more.',
    'Open it with the version that wrote it and save its tables as CSV files.',
  ],
  'plan-entry-not-known': ({ names }: { readonly names: readonly string[] }): ProblemWords => [
    `There is an entry that no plan has: ${names.join(', ')}.`,
    unchanged,
  ],
  'plan-entry-wrong/kind': ({ expected }: { readonly expected: string }): ProblemWords => [
    `A ${expected} is expected here.`,
    unchanged,
  ],
  'plan-entry-wrong': ({ message }: { readonly message: string }): ProblemWords => [
    `What stands here is not what a plan holds (${message}).`,
    unchanged,
  ],
};

export type PlanFileProblems = typeof planFileProblems;
