// `share`: runs a server on this machine that carries plans between desks.
import type * as Share from '../share/index.js';
import type { Block } from './print/blocks.js';
import type { ShareArguments } from './share-arguments.js';

type Room = typeof Share;

/** Packages of the server; not installed by default, as figures and elements do not need them. */
const packages = '@hocuspocus/server@3.4.4 classic-level@3.0.0 ws@8.23.0';
const redisPackage = '@hocuspocus/extension-redis@3.4.4';

export interface ShareOutput {
  /** For standard output. */
  readonly print: (blocks: readonly Block[]) => Promise<void>;
  /** For standard error. */
  readonly complain: (line: string) => void;
  /** Whether standard output is a terminal; tokens are only shown there. */
  readonly isTerminal: boolean;
}

/** Runs the server until it is stopped; returns the exit code. */
export async function share(asked: ShareArguments, output: ShareOutput): Promise<number> {
  const room = await loaded(output);
  if (!room) return 1;
  const { keptTokens, tokensFile, startSharing, TokensError, ShelfError } = room;
  let sharing: Share.Sharing;
  let tokens: Share.Tokens;
  try {
    tokens = keptTokens(asked.folder, asked.newTokens);
    sharing = await startSharing({
      ...asked,
      tokens,
      hold: room.holdPlan,
      say: (line) => output.complain(line),
      ...(asked.redis !== undefined && { extensions: [await room.joinedBy(asked.redis)] }),
    });
  } catch (error) {
    const trouble = error as NodeJS.ErrnoException;
    if (trouble.code === 'EADDRINUSE') {
      output.complain(`Port ${asked.port} is taken by another program; --port N takes another.`);
      return 1;
    }
    if (trouble.code === 'ERR_MODULE_NOT_FOUND') {
      output.complain(
        `--redis needs a package that is not installed here: npm install ${redisPackage}`,
      );
      return 1;
    }
    const isTold =
      error instanceof TokensError || error instanceof ShelfError || trouble.code !== undefined;
    if (!isTold) throw error;
    output.complain(trouble.message);
    return 1;
  }
  // Listens for the stop signal before the start message, as a reader may stop it at once.
  const end = stopped();
  await output.print(
    startLines(sharing.port, tokens, asked, tokensFile(asked.folder), output.isTerminal),
  );
  await end;
  await sharing.close();
  return 0;
}

function startLines(
  port: number,
  tokens: Share.Tokens,
  { folder }: ShareArguments,
  file: string,
  isTerminal: boolean,
): readonly Block[] {
  const given: readonly (readonly [string, string])[] = isTerminal
    ? [
        ['token to read', tokens.read],
        ['token to write', tokens.write],
      ]
    : [['tokens', `in ${file}, which you alone can read`]];
  return [
    {
      terms: [['address', `ws://127.0.0.1:${port}`], ...given, ['kept in', folder]],
      indent: 0,
    },
    'Whoever has a token can read, or write, every plan here: pass it on as you would a key. Ctrl+C stops the server.',
  ];
}

/** Loads the server; reports and returns undefined when its packages are not installed. */
async function loaded(output: ShareOutput): Promise<Room | undefined> {
  try {
    const beside = new URL(
      import.meta.url.endsWith('.mjs') ? './share.mjs' : './share.js',
      import.meta.url,
    );
    return (await import(beside.href)) as Room;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ERR_MODULE_NOT_FOUND') throw error;
    output.complain(`share needs packages that are not installed here: npm install ${packages}`);
    return undefined;
  }
}

/** Resolves at the first stop signal; a second one ends the program at once. */
function stopped(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const)
      process.once(signal, () => resolve());
  });
}
