// A word that a browser keeps for its user. Where it keeps nothing, or its store is full, the word holds until the page is closed.

/** The word kept under a key; empty where none is. */
export function keptText(key: string): string {
  try {
    return localStorage.getItem(key) ?? '';
  } catch {
    return '';
  }
}

export function keepText(key: string, text: string): void {
  try {
    localStorage.setItem(key, text);
  } catch {
    // It holds until the page is closed.
  }
}
