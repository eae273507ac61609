export function pageHeaders(): Readonly<Record<string, string>>;
