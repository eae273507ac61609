import { wordsOf } from '../../components/shared/words-of.js';
import type { ElementFacts } from './manifest.js';
import { specimen } from './specimen.js';
import type { State } from './states.js';

const waiting = new WeakMap<Element, () => void>();

const watch = new IntersectionObserver(
  (entries) => {
    for (const { target, isIntersecting } of entries) if (isIntersecting) waiting.get(target)?.();
  },
  { rootMargin: '400px' },
);

/** Puts an element into its ground once that is about to be seen, and tells below it of what the element sends. */
export function mountWhenNear(ground: HTMLElement, told: ElementFacts, state: State): void {
  if (waiting.has(ground)) return;
  waiting.set(ground, () => {
    watch.unobserve(ground);
    waiting.set(ground, () => undefined);
    const said = ground.parentElement?.querySelector('.sent');
    const say = (text: string): void => {
      if (said) said.textContent = text;
    };
    for (const { name } of told.events)
      ground.addEventListener(name, (event) => say(`Sent: ${name} ${fieldsText(event)}`));
    const { element, ready } = specimen(told, state);
    ground.replaceChildren(element);
    ground.setAttribute('aria-busy', 'true');
    ready
      .catch((error: unknown) => say(`Not worked out: ${wordsOf(error)}`))
      .finally(() => ground.setAttribute('aria-busy', 'false'));
  });
  watch.observe(ground);
}

/** What an event carries, as far as it is short. */
function fieldsText(event: Event): string {
  const fields = Object.entries(event).filter(([name]) => name !== 'isTrusted');
  const text = JSON.stringify(Object.fromEntries(fields)) ?? '';
  return text.length > 160 ? `${text.slice(0, 160)}…` : text;
}
