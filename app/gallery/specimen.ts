import { attributes, fed, type State } from './states.js';
import type { ElementFacts } from './manifest.js';
import { sample, troubled, type Show, type Shown } from './shown.js';

type AnyShow = Show<keyof HTMLElementTagNameMap>;
const modules = import.meta.glob<{ readonly show: AnyShow }>('./specimens/*.ts', { eager: true });
const sources = import.meta.glob<string>('./specimens/*.ts', {
  query: '?raw',
  import: 'default',
  eager: true,
});

const fileOf = (tag: string): string => `./specimens/${tag.replace('possession-', '')}.ts`;

type Fields = Readonly<Record<string, unknown>>;
const given = new Map<string, Promise<Fields>>();

/** An element with its data in it; it may be put into the page at once, the data follows. */
export function specimen(
  told: ElementFacts,
  state: State,
): { element: HTMLElement; ready: Promise<void> } {
  const { tag } = told;
  const shown = state.data === 'nothing' ? null : state.data === 'sample' ? sample() : troubled();
  const element = made(tag);
  if (fed.has(tag) || tag === 'possession-document') {
    const around = tag === 'possession-document' ? element : document.createElement(docTag);
    around.append(tag === 'possession-document' ? made('possession-ribbon') : element);
    return {
      element: around,
      ready: feed(around as Provider, shown).then(() => set(element, state)),
    };
  }
  if (!shown) return { element, ready: Promise.resolve() };
  const show = modules[fileOf(tag)]?.show;
  if (!show) throw new Error(`no specimen of ${tag}`);
  if (tag === 'possession-desk')
    return { element, ready: shown.then((item) => show(element as never, item)) };
  const name = `${tag} ${state.data}`;
  let fields = given.get(name);
  if (!fields) given.set(name, (fields = shown.then((item) => fieldsOf(told, show, item))));
  return {
    element,
    ready: fields.then((values) => {
      Object.assign(element, values);
      set(element, state);
    }),
  };
}

const docTag = 'possession-document';
type Provider = HTMLElementTagNameMap['possession-document'];

function made(tag: ElementFacts['tag']): HTMLElement {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes[tag] ?? {}))
    element.setAttribute(name, value);
  return element;
}

async function feed(provider: Provider, shown: Promise<Shown> | null): Promise<void> {
  if (!shown) return;
  const { engine, planDocument } = await shown;
  provider.engine = engine;
  provider.document = planDocument;
}

const set = (element: HTMLElement, state: State): void => void Object.assign(element, state.set);

/** What the code of a specimen sets, so that each state need not work it out anew. */
async function fieldsOf(told: ElementFacts, show: AnyShow, shown: Shown): Promise<Fields> {
  const element = document.createElement(told.tag);
  await show(element, shown);
  const values = element as unknown as Fields;
  return Object.fromEntries(told.fields.map((name) => [name, values[name]]));
}

/** What a page writes to have the element as it is shown here. */
export function codeOf(tag: ElementFacts['tag']): string {
  const text = Object.entries(attributes[tag] ?? {})
    .map(([name, value]) => (value === '' ? ` ${name}` : ` ${name}="${value}"`))
    .join('');
  const own = `<${tag}${text}></${tag}>`;
  const files = 'src="windows.csv work.csv rules.json" zone="Europe/London"';
  if (tag === docTag)
    return `<${docTag} ${files}>\n  <possession-ribbon></possession-ribbon>\n</${docTag}>`;
  if (fed.has(tag)) return `<${docTag} ${files}>\n  ${own}\n</${docTag}>`;
  return `${own}\n\n<script type="module">\n${indented(scriptOf(tag))}\n</script>`;
}

const indented = (text: string): string =>
  text
    .split('\n')
    .map((line) => (line === '' ? '' : `  ${line}`))
    .join('\n');

/** The body of the specimen's own function, with the imports that a page needs for it. */
function scriptOf(tag: ElementFacts['tag']): string {
  const source = sources[fileOf(tag)] ?? '';
  const begin = source.indexOf('=> {\n') + 5;
  const body = source
    .slice(begin, source.lastIndexOf('};'))
    .split('\n')
    .filter((line) => !line.endsWith('= shown;'))
    .map((line) => line.replace(/^ {2}/, ''))
    .join('\n')
    .trimEnd();
  const more = source.includes('src/index.js')
    ? source.slice(0, source.indexOf('\n')).replace(/'[^']*src\/index\.js'/, "'possession-fit'")
    : '';
  return [
    ...(more ? [more] : []),
    `import 'possession-fit/${tag.replace('possession-', '')}';`,
    '',
    `const element = document.querySelector('${tag}');`,
    body,
  ].join('\n');
}
