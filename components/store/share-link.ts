// A plan in a link: nothing leaves the machine but by whoever passes the link on, for what stands after # is never sent
// to a server. A link is a stranger's file: it is limited, checked, and opened as a copy to be looked at.
import { planFileProblem } from '../../src/model/index.js';
import { planFile, readPlanFile, type ReadPlan } from '../../src/model/index.js';
import type { PlanDocument } from '../../src/model/index.js';
import { numberText } from '../shared/format.js';
import { fromBase64, toBase64 } from './base64.js';

const key = '#plan=';

/** Longest link that is made, in characters. Browsers take it; common practice, no source. */
export const longestLink = 32_000;
/** Above this many characters some mail and message programs cut a link. Common practice, no source. */
export const sureLink = 2_000;
/** Most text that a link may unpack to, in bytes: a few bytes can be made to unpack to gigabytes. */
export const mostUnpacked = 8_000_000;

export type MadeLink =
  | { readonly url: string; readonly length: number; readonly mayBeCut: boolean }
  | { readonly url?: undefined; readonly length: number };

/** A link to the page at `page` with the plan in it; without `url` where it would be too long. */
export async function linkOf(document: PlanDocument, page: string): Promise<MadeLink> {
  const bytes = new TextEncoder().encode(planFile(document));
  const packed = await all(streamOf(bytes).pipeThrough(new CompressionStream('deflate')), Infinity);
  const url = `${page.split('#')[0]}${key}${toBase64Url(packed!)}`;
  const { length } = url;
  return length > longestLink ? { length } : { url, length, mayBeCut: length > sureLink };
}

export const defaultLinkStrings = {
  tooLarge: (size: string, most: string): string =>
    `The plan is too large for a link (${size} characters; at most ${most}). Save it as a file and send the file.`,
  mayBeCut: (size: string): string =>
    `The link has ${size} characters. Some mail and message programs cut links of this length: send the file if it does not open.`,
  has: (size: string): string => `The link has ${size} characters.`,
};

/** The size of a link in words, with what to do where it is large. */
export function linkText(link: MadeLink, words = defaultLinkStrings): string {
  const size = numberText(link.length);
  if (link.url === undefined) return words.tooLarge(size, numberText(longestLink));
  return link.mayBeCut ? words.mayBeCut(size) : words.has(size);
}

/** Whether the page's address carries a plan. `hash` is `location.hash`. */
export function hasPlanLink(hash: string): boolean {
  return hash.startsWith(key);
}

/**
 * The plan of a link. Open it by `PlanStore.create`, as a plan of its own: it never takes the place of saved work.
 *
 * Never rejects: a damaged, hostile or cut link gives faults.
 */
export async function readLink(hash: string): Promise<ReadPlan> {
  const packed = hasPlanLink(hash) ? fromBase64Url(hash.slice(key.length)) : undefined;
  if (packed === undefined) return fault('link-cut');
  try {
    const stream = streamOf(packed).pipeThrough(new DecompressionStream('deflate'));
    const bytes = await all(stream, mostUnpacked);
    if (bytes === undefined) return fault('link-too-large');
    return readPlanFile(new TextDecoder('utf-8', { fatal: true }).decode(bytes), 'link');
  } catch {
    return fault('link-cut/packed');
  }
}

function fault(key: 'link-cut' | 'link-cut/packed' | 'link-too-large'): ReadPlan {
  return { faults: [{ ...planFileProblem(key), severity: 'error', file: 'link' }] };
}

function streamOf(bytes: Uint8Array<ArrayBuffer>): ReadableStream<Uint8Array<ArrayBuffer>> {
  return new ReadableStream({
    start(controller) {
      controller.enqueue(bytes);
      controller.close();
    },
  });
}

/** All bytes of the stream; `undefined`, and no more is unpacked, once they are more than `most`. */
async function all(
  stream: ReadableStream<Uint8Array>,
  most: number,
): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const reader = stream.getReader();
  const parts: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) {
      await reader.cancel();
      return undefined;
    }
    parts.push(value);
  }
  const joined = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    joined.set(part, at);
    at += part.length;
  }
  return joined;
}

function toBase64Url(bytes: Uint8Array): string {
  return toBase64(bytes).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

function fromBase64Url(text: string): Uint8Array<ArrayBuffer> | undefined {
  if (text.length > 1_000_000 || !/^[\w-]*$/.test(text)) return undefined;
  return fromBase64(text.replaceAll('-', '+').replaceAll('_', '/'));
}
