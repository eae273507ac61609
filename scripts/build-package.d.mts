/** Modules for a page without a bundler; the files of each bundle by its name. */
export function browserBundles(outDir: string, write?: boolean): Promise<Record<string, unknown>>;
export const bundles: Readonly<Record<string, string>>;
