import type { Server } from '../../share/connection.js';

// Where plans are shared is kept on this device until they are left, so that a page loaded anew is back with the others.

/** A server that a plan is shared on, and whether its token lets one only read. */
export interface KeptServer extends Server {
  readonly reads: boolean;
}

/** What could not be stored. */
const unstored = new Map<string, KeptServer>();

const keyOf = (plan: string): string => `possession-fit/shared/${plan}`;
const nameKey = 'possession-fit/name';

export function keptServer(plan: string): KeptServer | undefined {
  const here = unstored.get(plan);
  if (here) return here;
  try {
    const kept = JSON.parse(localStorage.getItem(keyOf(plan)) ?? 'null') as KeptServer | null;
    if (typeof kept?.address !== 'string' || typeof kept.token !== 'string') return undefined;
    return { address: kept.address, token: kept.token, reads: kept.reads === true };
  } catch {
    return undefined;
  }
}

/** Keeps a server of a plan, or lets it go. Where storage is full it holds until the page is closed. */
export function keepServer(plan: string, server: KeptServer | undefined): void {
  unstored.delete(plan);
  try {
    if (server) localStorage.setItem(keyOf(plan), JSON.stringify(server));
    else localStorage.removeItem(keyOf(plan));
  } catch {
    if (server) unstored.set(plan, server);
  }
}

/** What the person here is called; empty: not said. */
export function keptName(): string {
  try {
    return localStorage.getItem(nameKey) ?? '';
  } catch {
    return '';
  }
}

export function keepName(name: string): void {
  try {
    localStorage.setItem(nameKey, name);
  } catch {
    // It holds until the page is closed.
  }
}
