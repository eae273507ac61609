// Types of the tags for React and Vue, and data for editors, made from the manifest of the elements.
const byTag = (one, other) => (one.tagName < other.tagName ? -1 : 1);

/** Elements with the paths of their classes and of the events they send, as seen from `components/frameworks`. */
function tags(manifest) {
  const declared = manifest.modules.flatMap(({ path, declarations }) =>
    declarations.map((one) => ({ ...one, path })),
  );
  const from = (name) => {
    const { path } = declared.find((one) => one.name === name);
    return path.replace('dist/components/', '../');
  };
  return declared
    .filter((one) => one.tagName)
    .sort(byTag)
    .map(({ tagName, name, members, events, summary, description, cssParts }) => ({
      tagName,
      name,
      summary,
      description,
      cssParts,
      from: from(name),
      fields: members.filter((one) => one.kind === 'field' && !one.readonly),
      events: events.map((one) => ({ ...one, class: one.type.text, from: from(one.type.text) })),
    }));
}

const imports = (all) => {
  const lines = new Set();
  for (const one of all) {
    lines.add(`import type { ${one.name} } from '${one.from}';`);
    for (const event of one.events)
      lines.add(`import type { ${event.class} } from '${event.from}';`);
  }
  return [...lines].sort().join('\n');
};
const owned = (one) => one.fields.map(({ name }) => `'${name}'`).join(' | ');
const camel = (name) => name.replace(/(^|-)([a-z])/g, (_, _dash, letter) => letter.toUpperCase());
/** The type of what hears an element's events, each under the name that a framework gives it. */
const hearing = ({ events }, named) =>
  events.length === 0
    ? 'Record<never, never>'
    : `{ ${events.map((event) => `${named(event.name)}: (event: ${event.class}) => void;`).join(' ')} }`;
const head = '// Made by `npm run manifest` from the elements; change those, not this file.\n';

/** Tags for JSX of React 19, which sets properties and hears events of elements by itself. */
export function reactTypes(manifest) {
  const all = tags(manifest);
  const tag = (one) =>
    `'${one.tagName}': Tag<${one.name}, ${owned(one)}, ${hearing(one, (name) => `'on${name}'`)}>;`;
  return `${head}import type { DetailedHTMLProps, HTMLAttributes } from 'react';
${imports(all)}

type Tag<E extends HTMLElement, Own extends keyof E, Events> = Omit<
  DetailedHTMLProps<HTMLAttributes<E>, E>,
  Own
> &
  Partial<Pick<E, Own>> &
  Partial<Events>;

declare module 'react' {
  // oxlint-disable-next-line typescript/no-namespace -- React's own place for the tags it knows
  namespace JSX {
    interface IntrinsicElements {
      ${all.map(tag).join('\n      ')}
    }
  }
}
`;
}

/** Tags for templates of Vue 3. */
export function vueTypes(manifest) {
  const all = tags(manifest);
  const tag = (one) =>
    `'${one.tagName}': Tag<${one.name}, ${owned(one)}, ${hearing(one, (name) => `on${camel(name)}`)}>;`;
  return `${head}import type { HTMLAttributes, PublicProps } from 'vue';
${imports(all)}

type Tag<E extends HTMLElement, Own extends keyof E, Events> = new () => {
  $props: Omit<HTMLAttributes, Own> & PublicProps & Partial<Pick<E, Own>> & Partial<Events>;
};

declare module 'vue' {
  interface GlobalComponents {
    ${all.map(tag).join('\n    ')}
  }
}
`;
}

/** HTML custom data, the format of Visual Studio Code. */
export function editorData(manifest) {
  return {
    version: 1.1,
    tags: tags(manifest).map((one) => ({
      name: one.tagName,
      description: `${one.summary}\n\n${one.description ?? ''}`.trim(),
      attributes: attributesOf(one).map(({ attribute, description }) => ({
        name: attribute,
        ...(description && { description }),
      })),
    })),
  };
}

/** The open format web-types, read by several editors. */
export function webTypes(manifest, { name, version }) {
  return {
    $schema: 'https://json.schemastore.org/web-types',
    name,
    version,
    'description-markup': 'markdown',
    contributions: {
      html: {
        elements: tags(manifest).map((one) => ({
          name: one.tagName,
          description: one.summary,
          attributes: attributesOf(one).map(({ attribute, description, type }) => ({
            name: attribute,
            ...(description && { description }),
            value: { type: type?.text ?? 'string' },
          })),
          js: {
            properties: one.fields.map((field) => ({
              name: field.name,
              ...(field.description && { description: field.description }),
              value: { type: field.type?.text ?? 'unknown' },
            })),
            events: one.events.map((event) => ({
              name: event.name,
              ...(event.description && { description: event.description }),
            })),
          },
          css: {
            parts: (one.cssParts ?? []).map((part) => ({
              name: part.name,
              ...(part.description && { description: part.description }),
            })),
          },
        })),
      },
    },
  };
}

const attributesOf = (one) => one.fields.filter((field) => field.attribute);
