import type { JournalRoom } from '../../../components/store/journal.js';

/** Local storage as the standard has it, with a limit in characters. */
export function localRoom(most = 5_000_000): JournalRoom {
  const held = new Map<string, string>();
  return {
    get length() {
      return held.size;
    },
    key: (at) => [...held.keys()][at] ?? null,
    getItem: (key) => held.get(key) ?? null,
    removeItem: (key) => void held.delete(key),
    setItem(key, value) {
      const others = [...held].filter(([name]) => name !== key);
      const size = others.reduce((sum, [name, text]) => sum + name.length + text.length, 0);
      if (size + key.length + value.length > most)
        throw new DOMException('full', 'QuotaExceededError');
      held.set(key, value);
    },
  };
}
