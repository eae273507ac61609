/** What opens plans. Rejects where it cannot be loaded; the next call tries it again. */
export const loadOpen = (): Promise<typeof import('./open.js')> => import('./open.js');
