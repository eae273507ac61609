// Help texts of the command line.
import { basename } from 'node:path';
import type { Block } from './print/blocks.js';
import { shareHelp } from './share-help.js';
import { options, verbHelp, verbs, type Option, type Verb } from './options.js';

/** How the command was started: from the package, or in a copy of the project. */
export const command =
  basename(process.argv[1] ?? '') === 'cli.mjs' ? 'npm run --silent cli --' : 'possession-fit';

const exits =
  'Exit code: 0 done, 1 the input is bad (each fault on standard error), 2 wrong usage.';

/** The short help of the whole command. */
export function usageLines(): readonly Block[] {
  return [
    'possession-fit: which work fits which possession',
    '',
    `  ${command} VERB --windows FILE [--work FILE] [--rules FILE] [--resources FILE] [--prices FILE] [--trains FILE] [--zone ZONE] [--json]`,
    '',
    {
      terms: [...verbs.map((verb) => [verb, verbHelp[verb]] as const), ['share', shareHelp]],
      indent: 2,
    },
    '',
    'VERB --help lists what a verb takes (share takes no tables), VERB --schema prints the JSON schema of its --json (--schema alone: of all). --version prints the version.',
    'A file named - is standard input. Tables are CSV or .xlsx.',
    '',
    exits,
  ];
}

/** Help after wrong use: that of the named verb, or all verbs. Short, so that the error stays visible. */
export function afterWrongUse(words: readonly string[]): readonly Block[] {
  const verb = words.find((word) => [...verbs, 'share'].includes(word));
  return verb ? [`${command} ${verb} --help lists what ${verb} takes.`] : usageLines();
}

/** Width of help when the screen width is unknown. */
export const usualWidth = 80;

/** The help of one verb. */
export function helpOf(verb: Verb): readonly Block[] {
  const own = Object.entries(options as Record<string, Option>).filter(
    ([, option]) => option.verbs?.includes(verb) ?? true,
  );
  return [
    `${verb}: ${verbHelp[verb]}`,
    '',
    `  ${command} ${verb} --windows FILE …`,
    '',
    {
      terms: own.map(
        ([name, { takes, help }]) =>
          [`--${name}${takes === undefined ? '' : ` ${takes}`}`, help] as const,
      ),
      indent: 2,
    },
    '',
    exits,
  ];
}
