// A plan in a link: nothing leaves the machine but by whoever passes the link on, for what stands after # is never sent
// to a server.
import { planFile, type PlanDocument } from '../../src/model/index.js';
import { numberText } from '../shared/format.js';
import { toBase64 } from './base64.js';
import { all, streamOf } from './streams.js';

/** What comes before the plan in the part of an address after its page. */
export const linkKey = '#plan=';

/** Longest link that is made, in characters. Browsers take it; common practice, no source. */
export const longestLink = 32_000;
/** Above this many characters some mail and message programs cut a link. Common practice, no source. */
export const sureLink = 2_000;

export type MadeLink =
  | { readonly url: string; readonly length: number; readonly mayBeCut: boolean }
  | { readonly url?: undefined; readonly length: number };

/** A link to the page at `page` with the plan in it; without `url` where it would be too long. */
export async function linkOf(document: PlanDocument, page: string): Promise<MadeLink> {
  const bytes = new TextEncoder().encode(planFile(document));
  const packed = await all(streamOf(bytes).pipeThrough(new CompressionStream('deflate')), Infinity);
  const url = `${page.split('#')[0]}${linkKey}${toBase64Url(packed!)}`;
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
  return hash.startsWith(linkKey);
}

function toBase64Url(bytes: Uint8Array): string {
  return toBase64(bytes).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}
