// What the page is served with: its own policy as a header, which also holds where a page frames it, and no guessing of types.
import { readFileSync } from 'node:fs';

const page = new URL('../app/index.html', import.meta.url);

/** The headers, by name. The policy is the page's own, and that no other site may frame it, which a page cannot say. */
export function pageHeaders() {
  const policy = /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(
    readFileSync(page, 'utf8'),
  )?.[1];
  if (!policy) throw new Error('app/index.html has no policy');
  return {
    'Content-Security-Policy': `${policy}; frame-ancestors 'self'`,
    'X-Content-Type-Options': 'nosniff',
    'X-Frame-Options': 'SAMEORIGIN',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin',
  };
}
