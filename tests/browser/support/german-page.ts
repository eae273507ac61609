import { text } from './look.js';

// What a page in German says in English without marking it so.

/** Attributes that are read out or shown. */
const spokenAttributes = ['aria-label', 'aria-description', 'title', 'placeholder', 'alt'];

/** Words of English sentences that no German sentence has. */
const englishWords = new RegExp(
  `(?<!\\p{L})(?:${[
    'the of and is are not with to for from by no has have been this that its it which than be at on or as you your',
    'what when how can all may need needs only nothing between before after until row rows window windows work piece',
    'pieces due late show save open close set fault note missed met held day days hours minutes week',
  ]
    .join(' ')
    .replaceAll(' ', '|')})(?!\\p{L})`,
  'iu',
);

/** Names that have such words in them: of a licence, of an encoding, of this project, of a key. */
const names = /CC BY|Windows-1252|possession-fit|\bEsc\b/g;

interface Said {
  readonly where: string;
  readonly text: string;
}

/** Every text and spoken attribute below a node, through shadow roots, but for what is marked as another language. */
function* saidIn(node: Node, where: string): Generator<Said> {
  if (node instanceof Element) {
    if (node.localName === 'style' || node.localName === 'script') return;
    const lang = node.getAttribute('lang');
    if (lang !== null && !lang.startsWith('de')) return;
    const here = node.localName.includes('-') ? node.localName : where;
    for (const name of spokenAttributes) {
      const value = node.getAttribute(name);
      if (value !== null && value !== '') yield { where: `${here} ${name}`, text: value };
    }
    for (const child of [...(node.shadowRoot?.childNodes ?? []), ...node.childNodes])
      yield* saidIn(child, here);
  } else if (node instanceof Text && text(node) !== '') yield { where, text: text(node) };
}

/** Every text that was typed, or that an example holds in place of it: it is in whatever language it was written in. */
export function typedIn(value: unknown, found = new Set<string>()): ReadonlySet<string> {
  if (typeof value === 'string') {
    const said = value.replaceAll(/\s+/g, ' ').trim();
    if (said.length > 1) found.add(said);
  } else if (typeof value === 'object' && value !== null)
    for (const [key, item] of Object.entries(value)) typedIn(item, found.add(key));
  return found;
}

const isLetter = (sign: string | undefined): boolean =>
  sign !== undefined && /[\p{L}\d]/u.test(sign);

/** Takes what was typed out of texts, where it stands as words of its own; the longest first. */
export function withoutTyped(typed: ReadonlySet<string>): (text: string) => string {
  const longest = [...typed].sort((a, b) => b.length - a.length);
  return (said) => longest.reduce(without, said);
}

function without(said: string, typed: string): string {
  let rest = said;
  for (let at = rest.indexOf(typed); at >= 0; at = rest.indexOf(typed, at + 1))
    if (!isLetter(rest[at - 1]) && !isLetter(rest[at + typed.length]))
      rest = `${rest.slice(0, at)}·${rest.slice(at + typed.length)}`;
  return rest;
}

/** What a German page says in English, or did not say in any words: where, and the text. */
export function englishIn(page: Node, untyped: (text: string) => string): readonly string[] {
  const found = new Set<string>();
  for (const { where, text: said } of saidIn(page, '')) {
    const isUnsaid = said.includes('[object');
    if (isUnsaid || englishWords.test(untyped(said).replaceAll(names, '')))
      found.add(`${where}: ${said}`);
  }
  return [...found];
}

/** Words that are the same in both languages, and what is no word. */
const sameInBoth = new Set('Plan Name Status min CSV JSON'.split(' '));

/** What a page says, each text once, with the element that says it. */
export const allSaid = (page: Node): ReadonlySet<string> =>
  new Set([...saidIn(page, '')].map(({ where, text: said }) => `${where}: ${said}`));

/** What a page says in the same words in two languages, but for what was typed and what both call the same. */
export function alikeIn(
  german: ReadonlySet<string>,
  english: ReadonlySet<string>,
  untyped: (text: string) => string,
): readonly string[] {
  return [...german].filter((line) => {
    if (!english.has(line)) return false;
    const said = untyped(line.slice(line.indexOf(': ') + 2)).replaceAll(names, '');
    return (said.match(/\p{L}{3,}/gu) ?? []).some((word) => !sameInBoth.has(word));
  });
}

/** All text below a node, through shadow roots. */
export function deepText(node: Node): string {
  if (node instanceof Text) return node.data;
  const children = [...(node instanceof Element ? (node.shadowRoot?.childNodes ?? []) : [])];
  return [...children, ...node.childNodes].map(deepText).join(' ');
}
