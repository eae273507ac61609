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

/** Rules an element breaks, each with where and why; empty when none. Page-wide rules do not apply to a part. */
export async function axeFaults(element: Element): Promise<string[]> {
  const { violations } = await globalThis.axe.run(element, {
    rules: { region: { enabled: false } },
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
  for (const scheme of ['light', 'dark'] as const) {
    root.style.setProperty('color-scheme', scheme);
    document.body.style.setProperty('background', scheme === 'light' ? '#f3f1ea' : '#14171b');
    await check(scheme);
  }
  root.style.removeProperty('color-scheme');
  document.body.style.removeProperty('background');
}
