import type { Server } from '../../share/connection.js';

// Where plans are shared is kept on this device until they are left, so that a page loaded anew is back with the others.

/** A server that a plan is shared on, and whether its token lets one only read. */
export interface KeptServer extends Server {
  readonly reads: boolean;
}

/** What was read or kept: the storage is slow, and what it would not take holds until the page is closed. */
const known = new Map<string, KeptServer | undefined>();

const prefix = 'possession-fit/shared/';
const nameKey = 'possession-fit/name';

export function keptServer(plan: string): KeptServer | undefined {
  if (!known.has(plan)) known.set(plan, readServer(plan));
  return known.get(plan);
}

/** Keeps a server of a plan, or lets it go. Where storage is full it holds until the page is closed. */
export function keepServer(plan: string, server: KeptServer | undefined): void {
  known.set(plan, server);
  try {
    if (server) localStorage.setItem(prefix + plan, JSON.stringify(server));
    else localStorage.removeItem(prefix + plan);
  } catch {
    // It holds until the page is closed.
  }
}

/** Another page wrote in the storage; a key of null stands for all of it. Returns whether it was about sharing. */
export function hearOfStorage(key: string | null): boolean {
  if (key === null) known.clear();
  else if (key.startsWith(prefix)) known.delete(key.slice(prefix.length));
  return key === null || key === nameKey || key.startsWith(prefix);
}

function readServer(plan: string): KeptServer | undefined {
  try {
    const kept = JSON.parse(localStorage.getItem(prefix + plan) ?? 'null') as KeptServer | null;
    if (typeof kept?.address !== 'string' || typeof kept.token !== 'string') return undefined;
    return { address: kept.address, token: kept.token, reads: kept.reads === true };
  } catch {
    return undefined;
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
