// A link is a stranger's file: it is limited, checked, and opened as a copy to be looked at.
import { planFileProblem, readPlanFile, type ReadPlan } from '../../src/model/index.js';
import { fromBase64 } from './base64.js';
import { hasPlanLink, linkKey } from './share-link.js';
import { all, streamOf } from './streams.js';

/** Most text that a link may unpack to, in bytes: a few bytes can be made to unpack to gigabytes. */
const mostUnpacked = 8_000_000;

/**
 * The plan of a link. Open it by `PlanStore.create`, as a plan of its own: it never takes the place of saved work.
 *
 * Never rejects: a damaged, hostile or cut link gives faults.
 */
export async function readLink(hash: string): Promise<ReadPlan> {
  const packed = hasPlanLink(hash) ? fromBase64Url(hash.slice(linkKey.length)) : undefined;
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

function fromBase64Url(text: string): Uint8Array<ArrayBuffer> | undefined {
  if (text.length > 1_000_000 || !/^[\w-]*$/.test(text)) return undefined;
  return fromBase64(text.replaceAll('-', '+').replaceAll('_', '/'));
}
