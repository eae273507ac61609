export function findBrowser(): Promise<string>;
