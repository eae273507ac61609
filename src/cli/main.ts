// Runs one command line.
import { BadInput, UsageError } from './errors.js';
import { afterWrongUse, command, helpOf, usageLines, usualWidth } from './help.js';
import { verbs, type Verb } from './options.js';
import type { Block } from './print/blocks.js';
import { clipped, complain, longestLine, write } from './print/output.js';
import { onScreen, printError } from './print/screen.js';
import { version } from './version.js';

/** The requested help, version or schema; `undefined` when none is requested. */
async function asked(words: readonly string[]): Promise<string | undefined> {
  if (words.includes('--version')) return `possession-fit ${version}`;
  const verb = words.find((word): word is Verb => (verbs as readonly string[]).includes(word));
  if (words.includes('--help') || words.includes('-h'))
    return onScreen(verb ? helpOf(verb) : usageLines(), process.stdout, usualWidth);
  if (!words.includes('--schema')) return undefined;
  const { answerSchema } = await import('./answers/index.js');
  const schema = verb
    ? answerSchema(verb)
    : Object.fromEntries(verbs.map((text) => [text, answerSchema(text)]));
  return JSON.stringify(schema, null, 2);
}

/** Runs a server until it is stopped. */
async function runShare(words: readonly string[]): Promise<number> {
  const tell = async (blocks: readonly Block[]): Promise<void> => {
    await write([`${onScreen(blocks, process.stdout, usualWidth)}\n`]);
  };
  if (words.includes('--help') || words.includes('-h')) {
    const { shareHelpLines } = await import('./share-help.js');
    await tell(shareHelpLines(command));
    return 0;
  }
  const { share } = await import('./share.js');
  const { readShareArguments } = await import('./share-arguments.js');
  const isTerminal = process.stdout.isTTY;
  return share(readShareArguments(words), { print: tell, complain: printError, isTerminal });
}

/** Runs one command line and returns its exit code. Unexpected errors are thrown. */
export async function main(words: readonly string[]): Promise<number> {
  try {
    if (words.find((word) => !word.startsWith('-')) === 'share') return await runShare(words);
    const help = await asked(words);
    const { code, end } =
      help === undefined
        ? await (await import('./answered.js')).answered(words)
        : { code: 0, end: await write([`${help}\n`]) };
    if (end instanceof Error)
      throw new UsageError(`the answer could not be written: ${end.message}`);
    return code;
  } catch (error) {
    if (error instanceof BadInput) return 1;
    if (!(error instanceof UsageError)) throw error;
    printError(clipped(error.message, longestLine));
    complain(`\n${onScreen(afterWrongUse(words), process.stderr, usualWidth)}`);
    return 2;
  }
}
