import type { ImportedFile } from '../../src/engine/index.js';
import { wordsOf } from '../shared/words-of.js';

/** What came of the addresses of a `src` attribute. */
export interface Fetched {
  readonly files: readonly ImportedFile[];
  /** Files that did not arrive, in words. */
  readonly missing: readonly string[];
}

/** Fetches files side by side; one that does not arrive is told of and the others are still given. */
export async function readFiles(
  addresses: readonly string[],
  base: string,
  signal: AbortSignal,
): Promise<Fetched> {
  const missing: string[] = [];
  const read = await Promise.all(
    addresses.map(async (address): Promise<ImportedFile | undefined> => {
      try {
        const url = new URL(address, base);
        const answer = await fetch(url, { signal });
        if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
        const name = decodeURIComponent(url.pathname.split('/').at(-1) ?? '') || address;
        return { name, bytes: new Uint8Array(await answer.arrayBuffer()) };
      } catch (error) {
        signal.throwIfAborted();
        missing.push(`${address}: not read, ${wordsOf(error)}`);
        return undefined;
      }
    }),
  );
  return { files: read.filter((item) => item !== undefined), missing };
}
