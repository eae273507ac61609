import { createDecoder, readVarString, readVarUint, readVarUint8Array } from 'lib0/decoding';
import { closings, Refused } from './closing.js';

// The outside of a message, as the engine of sharing writes it: the name of a document, a kind, and what belongs to it.

const kinds = {
  0: 'sync',
  1: 'presence',
  2: 'token',
  3: 'ask-presence',
  4: 'sync-reply',
  5: 'note',
  6: 'note-to-all',
  7: 'leave',
  8: 'sync-status',
} as const;
type Kind = (typeof kinds)[keyof typeof kinds];

/** Kinds that a desk sends. Notes to all would pass anybody's text to everybody, unchecked. */
const taken: readonly Kind[] = ['sync', 'presence', 'token', 'ask-presence', 'sync-reply', 'leave'];

const LONGEST_TOKEN = 200;
const LONGEST_PRESENCE = 200_000;

export type Message =
  | { readonly name: string; readonly kind: 'token' | 'ask-presence' | 'leave' }
  | { readonly name: string; readonly kind: 'presence'; readonly bytes: Uint8Array }
  | { readonly name: string; readonly kind: 'have'; readonly bytes: Uint8Array }
  | { readonly name: string; readonly kind: 'change'; readonly bytes: Uint8Array };

/** Names of documents: what a desk makes for a plan, and that of the list of plans. */
export const isName = (text: string): boolean => /^[\w-]{1,64}$/.test(text);

/**
 * Takes a message apart. `have` says what somebody has, `change` brings what another has not.
 *
 * @throws {Refused} It is cut, of another kind, or larger than its kind may be.
 */
export function readMessage(bytes: Uint8Array): Message {
  try {
    return parts(bytes);
  } catch (error) {
    throw error instanceof Refused ? error : new Refused(closings.broken);
  }
}

function parts(bytes: Uint8Array): Message {
  const decoder = createDecoder(bytes);
  const name = readVarString(decoder);
  const kind = kinds[readVarUint(decoder) as keyof typeof kinds];
  if (!isName(name) || !taken.includes(kind)) throw new Refused(closings.broken);
  switch (kind) {
    case 'presence': {
      const inside = readVarUint8Array(decoder);
      if (inside.length > LONGEST_PRESENCE) throw new Refused(closings.large);
      return { name, kind, bytes: inside };
    }
    case 'sync':
    case 'sync-reply': {
      const step = readVarUint(decoder);
      if (step > 2) throw new Refused(closings.broken);
      return { name, kind: step === 0 ? 'have' : 'change', bytes: readVarUint8Array(decoder) };
    }
    default:
      if (bytes.length > LONGEST_TOKEN + 100) throw new Refused(closings.broken);
      return { name, kind: kind as 'token' | 'ask-presence' | 'leave' };
  }
}
