// The page that is kept for use without a network is the one that was kept with its version. A host may serve it in another
// language since, or to other people: the page takes the language of the document as the host serves it.
import { keepText, keptText } from '../components/shared/kept-text.js';

const KEY = 'possession-fit/language';

/** Takes the language that the host serves, at once as it was last heard of, and as it is now where there is a network. */
export async function followServedLanguage(): Promise<void> {
  // No worker answers yet: this document is the host's own.
  if (!navigator.serviceWorker?.controller) return keepText(KEY, document.documentElement.lang);
  take(keptText(KEY));
  try {
    // The worker lets pass what asks past every cache.
    const answer = await fetch(location.pathname + location.search, { cache: 'no-store' });
    if (!answer.ok) return;
    const page = await answer.text();
    const root = page.indexOf('<html');
    const [, served] = / lang="([\w-]+)"/.exec(page.slice(root, page.indexOf('>', root))) ?? [];
    if (served === undefined) return;
    keepText(KEY, served);
    take(served);
  } catch {
    // Without a network the language stays as it was last heard of.
  }
}

function take(language: string): void {
  if (language !== '' && document.documentElement.lang !== language)
    document.documentElement.lang = language;
}
