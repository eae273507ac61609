import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import {
  hearOfStorage,
  keepServer,
  keptServer,
} from '../../../components/desk/sharing/shared-servers.js';

const server = { address: 'ws://127.0.0.1:4174', token: 'a token', reads: true };

/** A storage that counts how often it is read, and refuses to write where it is full. */
class Storage {
  readonly texts = new Map<string, string>();
  reads = 0;
  full = false;

  getItem(key: string): string | null {
    this.reads += 1;
    return this.texts.get(key) ?? null;
  }

  setItem(key: string, text: string): void {
    if (this.full) throw new DOMException('full', 'QuotaExceededError');
    this.texts.set(key, text);
  }

  removeItem(key: string): void {
    this.texts.delete(key);
  }
}

describe('the servers that plans are shared on', () => {
  let storage: Storage;
  beforeEach(() => {
    storage = new Storage();
    vi.stubGlobal('localStorage', storage);
    hearOfStorage(null);
  });
  afterEach(() => vi.unstubAllGlobals());

  it('are read from the storage once', () => {
    storage.setItem('possession-fit/shared/p', JSON.stringify(server));
    for (let times = 0; times < 3; times += 1) expect(keptServer('p')).toEqual(server);
    for (let times = 0; times < 3; times += 1) expect(keptServer('q')).toBeUndefined();
    expect(storage.reads).toBe(2);
  });

  it('are read again when another page wrote', () => {
    expect(keptServer('p')).toBeUndefined();
    storage.setItem('possession-fit/shared/p', JSON.stringify(server));
    expect(hearOfStorage('something else')).toBe(false);
    expect(keptServer('p')).toBeUndefined();
    expect(hearOfStorage('possession-fit/shared/p')).toBe(true);
    expect(keptServer('p')).toEqual(server);
  });

  it('hold until the page is closed where the storage is full', () => {
    storage.full = true;
    keepServer('p', server);
    expect(keptServer('p')).toEqual(server);
    keepServer('p', undefined);
    expect(keptServer('p')).toBeUndefined();
  });
});
