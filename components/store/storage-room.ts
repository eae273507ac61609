/** What the browser says of the room for this page, in bytes; absent where it does not say. */
export interface StorageRoom {
  readonly used?: number;
  readonly most?: number;
  /** Whether the browser has promised not to clear it by itself; absent where it cannot say. */
  readonly kept?: boolean;
}

/** Asks the browser not to clear the store by itself. Call it after the first real change: some browsers ask the person. */
export async function askToKeep(): Promise<boolean> {
  try {
    return (await globalThis.navigator?.storage?.persist?.()) ?? false;
  } catch {
    return false;
  }
}

export async function storageRoom(): Promise<StorageRoom> {
  try {
    const storage = globalThis.navigator?.storage;
    const { usage, quota } = (await storage?.estimate?.()) ?? {};
    const kept = await storage?.persisted?.();
    return {
      ...(usage !== undefined && { used: usage }),
      ...(quota !== undefined && { most: quota }),
      ...(kept !== undefined && { kept }),
    };
  } catch {
    return {};
  }
}
