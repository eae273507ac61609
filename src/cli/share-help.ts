// What the command line says of `share`.
import type { Block } from './print/blocks.js';

export const shareHelp = 'carries plans between desks, on this machine, until it is stopped';

const options = {
  folder: {
    takes: 'FOLDER',
    help: 'where plans and tokens are kept; without it, in your home folder',
  },
  port: { takes: 'N', help: 'port on 127.0.0.1; 4174 without, 0 for any that is free' },
  origin: {
    takes: 'ORIGIN',
    several: true,
    help: 'a site whose pages may share too, such as https://desk.example.org',
  },
  'new-tokens': { help: 'writes new tokens; the old ones open nothing any more' },
  redis: { takes: 'URL', help: 'joins servers of the same tokens, such as redis://127.0.0.1:6379' },
} as const;

/** What help says of `share`. */
export function shareHelpLines(command: string): readonly Block[] {
  return [
    `share: ${shareHelp}`,
    '',
    `  ${command} share [--folder FOLDER] [--port N]`,
    '',
    {
      terms: Object.entries(options).map(
        ([name, option]) =>
          [`--${name}${'takes' in option ? ` ${option.takes}` : ''}`, option.help] as const,
      ),
      indent: 2,
    },
    '',
    'It prints an address and two tokens, one to read and one to write: desks ask for both under the name of the plan. Where it prints to no terminal it names the file that has the tokens instead. Ctrl+C stops it, with all written.',
    '',
    'Exit code: 0 stopped, 1 it cannot run (why, on standard error), 2 wrong usage.',
  ];
}
