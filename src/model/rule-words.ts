/** What must be true of the work for a step to apply. */
export const stepConditions = ['always', 'isolation', 'loud'] as const;

/** What stops in a curfew. `loud`: only loud work. `all`: all work. */
export const curfewBars = ['loud', 'all'] as const;

/** Shape of three-point lengths. */
export const spreadShapes = ['triangular', 'beta-pert'] as const;
