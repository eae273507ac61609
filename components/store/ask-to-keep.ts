/** Asks the browser not to clear the store by itself. Call it after the first real change: some browsers ask the person. */
export async function askToKeep(): Promise<boolean> {
  try {
    return (await globalThis.navigator?.storage?.persist?.()) ?? false;
  } catch {
    return false;
  }
}
