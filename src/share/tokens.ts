import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { chmodSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

// Who may read and who may write is said by two long random words; nothing else about a person is known or kept.

/** What a token lets its holder do. */
export type Right = 'read' | 'write';

export type Tokens = Readonly<Record<Right, string>>;

const tokensSchema = z.strictObject({
  read: z.string().regex(/^read-[\w-]{43}$/),
  write: z.string().regex(/^write-[\w-]{43}$/),
});

/** The tokens cannot be read or kept; the message says which file and how to mend it. */
export class TokensError extends Error {
  override name = 'TokensError';
}

/** Two new tokens of 256 random bits each. */
export function newTokens(): Tokens {
  const word = (): string => randomBytes(32).toString('base64url');
  return { read: `read-${word()}`, write: `write-${word()}` };
}

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();

/**
 * What a token that somebody gave lets them do; undefined: it is neither.
 *
 * Both are compared, whole and in constant time: how long it takes says nothing of how much was right.
 */
export function rightOf({ read, write }: Tokens, given: string): Right | undefined {
  const found = digest(given);
  const reads = timingSafeEqual(found, digest(read));
  const writes = timingSafeEqual(found, digest(write));
  return writes ? 'write' : reads ? 'read' : undefined;
}

export const tokensFile = (folder: string): string => join(folder, 'tokens.json');

/**
 * The tokens kept in a folder; made where there are none or new ones are asked for. The folder and the file are for
 * their owner alone.
 *
 * @throws {TokensError} The file is damaged.
 */
export function keptTokens(folder: string, fresh = false): Tokens {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const path = tokensFile(folder);
  const kept = fresh ? undefined : readTokens(path);
  if (kept) return kept;
  const made = newTokens();
  writeFileSync(path, `${JSON.stringify(made, null, 2)}\n`, { mode: 0o600 });
  // A file that was there keeps the rights it had.
  chmodSync(path, 0o600);
  return made;
}

function readTokens(path: string): Tokens | undefined {
  if (statSync(path, { throwIfNoEntry: false }) === undefined) return undefined;
  chmodSync(path, 0o600);
  try {
    return tokensSchema.parse(JSON.parse(readFileSync(path, 'utf8')));
  } catch {
    throw new TokensError(
      `${path} does not hold two tokens; --new-tokens writes new ones, which everybody then needs`,
    );
  }
}
