// Parses the words after `share`.
import { homedir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { isOrigin } from '../share/origins.js';
import { UsageError } from './errors.js';

export interface ShareArguments {
  readonly folder: string;
  readonly port: number;
  readonly origins: readonly string[];
  readonly newTokens: boolean;
  readonly redis?: string;
}

/** @throws {UsageError} When the words do not make a command. */
export function readShareArguments(words: readonly string[]): ShareArguments {
  const { values, positionals } = parsed(words);
  if (positionals.length > 1)
    throw new UsageError(`unexpected "${positionals.slice(1).join(' ')}"`);
  const origins = values.origin ?? [];
  for (const origin of origins)
    if (!isOrigin(origin))
      throw new UsageError(
        `--origin takes scheme, host and port as a browser writes them, such as https://desk.example.org, not "${origin}"`,
      );
  if (values.redis !== undefined && !/^rediss?:\/\/./.test(values.redis))
    throw new UsageError(`--redis takes an address that begins with redis:// or rediss://`);
  return {
    folder: values.folder ?? join(homedir(), '.possession-fit', 'shared'),
    port: portOf(values.port),
    origins,
    newTokens: values['new-tokens'] ?? false,
    ...(values.redis !== undefined && { redis: values.redis }),
  };
}

function parsed(words: readonly string[]) {
  try {
    return parseArgs({
      args: [...words],
      allowPositionals: true,
      options: {
        folder: { type: 'string' },
        port: { type: 'string' },
        origin: { type: 'string', multiple: true },
        'new-tokens': { type: 'boolean' },
        redis: { type: 'string' },
      },
    });
  } catch (error) {
    throw new UsageError((error as Error).message.split('. To specify')[0]);
  }
}

function portOf(text = '4174'): number {
  const port = Number(text);
  if (!/^\d{1,5}$/.test(text) || port > 65_535)
    throw new UsageError(`--port takes a whole number from 0 to 65535, not "${text}"`);
  return port;
}
