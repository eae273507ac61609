/** The `exports` of package.json as they should be. */
export function packageExports(): Record<string, string | { types: string; default: string }>;
