import type * as Open from './open.js';

/** What opens plans. Rejects where it cannot be loaded. */
export const loadOpen = (): Promise<typeof Open> => import('./open.js');
