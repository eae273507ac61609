// Help texts of `share`.
import type { Block } from './print/blocks.js';

export const shareHelp = 'carries plans between desks, on this machine, until it is stopped';

const options = {
  folder: {
    takes: 'FOLDER',
    help: 'where plans and tokens are kept; in your home folder if not given',
  },
  port: { takes: 'N', help: 'port on 127.0.0.1; 4174 if not given, 0 for any free port' },
  origin: {
    takes: 'ORIGIN',
    several: true,
    help: 'a site whose pages may share too, such as https://desk.example.org',
  },
  'new-tokens': { help: 'makes new tokens; the old ones stop working' },
  redis: { takes: 'URL', help: 'joins servers of the same tokens, such as redis://127.0.0.1:6379' },
} as const;

/** The help of `share`. */
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
    'It prints an address and two tokens, one to read and one to write. A desk asks for the address and a token under the name of the plan. Tokens are printed to a terminal only; elsewhere it names the file that holds them. Ctrl+C saves everything and stops it.',
    '',
    'Exit code: 0 stopped, 1 it cannot run (standard error says why), 2 wrong usage.',
  ];
}
