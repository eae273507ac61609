import 'axe-core/axe.min.js';

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly {
      readonly target: readonly unknown[];
      readonly failureSummary?: string;
    }[];
  }[];
}
interface Axe {
  run(context: Element, options?: object): Promise<AxeResult>;
}

declare global {
  var axe: Axe;
}

/** While both schemes are looked at: the markup that light has shown, in the order of the looks, and those of dark so far. */
let both: { readonly light: string[]; dark: number; isDark: boolean } | undefined;

/** Rules about colours, of which alone another scheme has others. */
const ofColours = ['color-contrast', 'link-in-text-block'];

/**
 * What an element holds, with all shadows in it: without the name of the scheme, the numbers by which parts made anew are told
 * apart, and how large a drawing is.
 */
function markupOf(root: Element | ShadowRoot): string {
  const within = [root, ...root.querySelectorAll('*')].flatMap((part) =>
    part instanceof Element && part.shadowRoot ? markupOf(part.shadowRoot) : [],
  );
  const own = root.innerHTML
    .replaceAll(/ (theme|data-[\w-]+)="[^"]*"/g, '')
    .replaceAll(/ (id|for|name|aria-(labelledby|describedby|controls))="[^"]*"/g, (attribute) =>
      attribute.replaceAll(/\d/g, ''),
    )
    .replaceAll(/<canvas[^>]*>/g, '<canvas>')
    .replaceAll(/<svg[^]*?<\/svg>/g, (drawing) => drawing.replaceAll(/[\d.]/g, ''));
  return [own, ...within].join('\n');
}

/** Whether the element is in the dark what it was in the light at the same look: then nothing but its colours is new. */
function isAsInLight(element: Element): boolean {
  if (!both) return false;
  const markup = markupOf(element);
  if (both.isDark) return both.light[both.dark++] === markup;
  both.light.push(markup);
  return false;
}

/** Rules an element breaks, each with where and why; empty when none. Page-wide rules do not apply to a part. */
export async function axeFaults(element: Element): Promise<string[]> {
  const { violations } = await globalThis.axe.run(element, {
    ...(isAsInLight(element) ? { runOnly: ofColours } : { rules: { region: { enabled: false } } }),
    // What passes is not written out, node by node.
    resultTypes: ['violations'],
  });
  return violations.flatMap((violation) =>
    violation.nodes.map(
      (node) => `${violation.id}: ${node.target.flat().join(' ')} ${node.failureSummary ?? ''}`,
    ),
  );
}

/** Runs a check in light and then in dark. The background is the page's, so that contrast is that of the page. */
export async function inBothSchemes(
  check: (scheme: 'light' | 'dark') => Promise<void>,
): Promise<void> {
  const root = document.documentElement;
  both = { light: [], dark: 0, isDark: false };
  for (const scheme of ['light', 'dark'] as const) {
    root.style.setProperty('color-scheme', scheme);
    document.body.style.setProperty('background', scheme === 'light' ? '#f3f1ea' : '#14171b');
    both.isDark = scheme === 'dark';
    await check(scheme);
  }
  both = undefined;
  root.style.removeProperty('color-scheme');
  document.body.style.removeProperty('background');
}
