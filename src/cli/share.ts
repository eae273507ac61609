// `share`: a server on this machine that carries plans between desks.
import type * as Share from '../share/index.js';
import type { Block } from './print/blocks.js';
import type { ShareArguments } from './share-arguments.js';

type Room = typeof Share;

/** What the server is made of: who only wants figures or elements has none of it. */
const packages = '@hocuspocus/server@3.4.4 classic-level@3.0.0 ws@8.23.0';
const redisPackage = '@hocuspocus/extension-redis@3.4.4';

export interface ShareTold {
  /** For standard output. */
  readonly tell: (blocks: readonly Block[]) => Promise<void>;
  /** For standard error. */
  readonly complain: (line: string) => void;
  /** Whether somebody reads standard output at a terminal: tokens go nowhere else. */
  readonly isTerminal: boolean;
}

/** Runs the server until it is stopped; gives the exit code. */
export async function share(asked: ShareArguments, told: ShareTold): Promise<number> {
  const room = await loaded(told);
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
      say: (line) => told.complain(line),
      ...(asked.redis !== undefined && { extensions: [await room.joinedBy(asked.redis)] }),
    });
  } catch (error) {
    const trouble = error as NodeJS.ErrnoException;
    if (trouble.code === 'EADDRINUSE') {
      told.complain(`Port ${asked.port} is taken by another program; --port N takes another.`);
      return 1;
    }
    if (trouble.code === 'ERR_MODULE_NOT_FOUND') {
      told.complain(
        `--redis needs a package that is not installed here: npm install ${redisPackage}`,
      );
      return 1;
    }
    const isTold =
      error instanceof TokensError || error instanceof ShelfError || trouble.code !== undefined;
    if (!isTold) throw error;
    told.complain(trouble.message);
    return 1;
  }
  // Listens before it tells that it can be stopped: who reads that may stop it at once.
  const end = stopped();
  await told.tell(
    startLines(sharing.port, tokens, asked, tokensFile(asked.folder), told.isTerminal),
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

/** The server, which stands in a file beside this one; undefined, and told, where its packages are not installed. */
async function loaded(told: ShareTold): Promise<Room | undefined> {
  try {
    const beside = new URL(
      import.meta.url.endsWith('.mjs') ? './share.mjs' : './share.js',
      import.meta.url,
    );
    return (await import(beside.href)) as Room;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ERR_MODULE_NOT_FOUND') throw error;
    told.complain(`share needs packages that are not installed here: npm install ${packages}`);
    return undefined;
  }
}

/** Resolved when somebody stops the program; a second time it ends at once. */
function stopped(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const)
      process.once(signal, () => resolve());
  });
}
