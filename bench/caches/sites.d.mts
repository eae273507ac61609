/** Each cache of the core, with the text of its file when it keeps nothing. */
export function caches(root: string): { name: string; file: string; changed: string }[];
