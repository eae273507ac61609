// docs/elements.md from the manifest of the elements.

const cell = (text) => text.replaceAll('|', '\\|').replace(/\s+/g, ' ').trim();
const code = (text) => `\`${text.replace(/\s+/g, ' ').trim()}\``;

function table(head, rows) {
  if (rows.length === 0) return [];
  const line = (cells) => `| ${cells.map(cell).join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line), ''];
}

function typeText(type) {
  if (!type?.text) return '';
  const from = (type.references ?? []).map((one) => one.module);
  return (
    code(type.text) + (from.length > 0 ? ` from ${[...new Set(from)].map(code).join(', ')}` : '')
  );
}

function fieldText(field) {
  const type = field.type?.text ? `: ${field.type.text}` : '';
  return code(`${field.name}${type}`) + (field.description ? ` (${field.description})` : '');
}

function section(module, element, eventClasses, shared) {
  const own = element.cssProperties.filter((one) => !shared.has(one.name));
  const properties = element.members.filter((one) => one.kind === 'field');
  const methods = element.members.filter((one) => one.kind === 'method');
  return [
    `## \`<${element.tagName}>\``,
    '',
    `${element.summary ?? ''}`,
    '',
    element.description ?? '',
    '',
    `Defined by ${code(module.path.replace(/[^/]+$/, 'define.js'))}; class ${code(element.name)} of ${code(module.path)}.`,
    '',
    ...table(
      ['Property', 'Type', 'Meaning'],
      properties.map((one) => [
        code(one.name) + (one.readonly ? ' (read only)' : ''),
        typeText(one.type),
        one.description ?? '',
      ]),
    ),
    ...table(
      ['Method', 'Meaning'],
      methods.map((one) => [
        code(
          `${one.name}(${(one.parameters ?? []).map((p) => (p.type ? `${p.name}: ${p.type.text}` : p.name)).join(', ')})`,
        ),
        one.description ?? '',
      ]),
    ),
    ...table(
      ['Event', 'Fields', 'Sent when'],
      element.events.map((one) => [
        code(one.name),
        (eventClasses.get(one.type?.text)?.members ?? []).map(fieldText).join('; '),
        one.description ?? '',
      ]),
    ),
    ...table(
      ['Part', 'What it is'],
      element.cssParts.map((one) => [code(one.name), one.description ?? '']),
    ),
    ...table(
      ['Custom property', 'Default', 'Meaning'],
      own.map((one) => [code(one.name), code(one.default ?? ''), one.description]),
    ),
  ];
}

/** The page about the elements: one section each, and the tokens that all of them read. */
export function elementDocs(manifest, tokens, german) {
  const found = manifest.modules.flatMap((module) =>
    module.declarations.map((declared) => ({ module, declared })),
  );
  const eventClasses = new Map(
    found
      .filter(({ declared }) => !declared.customElement)
      .map(({ declared }) => [declared.name, declared]),
  );
  const elements = found
    .filter(({ declared }) => declared.customElement)
    .sort((one, other) => (one.declared.tagName < other.declared.tagName ? -1 : 1));
  const shared = new Set(tokens.map((one) => one.name));
  const lines = [
    '# Elements',
    '',
    'Made by `npm run manifest` from the doc comments of the elements; change those, not this page.',
    '',
    'Every element takes its data by properties, never by attributes unless a property says so, and tells what a person',
    'did by events that bubble and cross shadow roots. Importing a `define.js` registers the tag; importing the class',
    'module does nothing else. Set a property to a new value: an object changed in place is not seen.',
    '',
    ...elements.map(
      ({ declared }) =>
        `- [\`<${declared.tagName}>\`](#${declared.tagName}): ${declared.summary ?? ''}`,
    ),
    '',
    ...elements.flatMap(({ module, declared }) => section(module, declared, eventClasses, shared)),
    '## Language',
    '',
    'Days, numbers and money are written as the nearest `lang` attribute says (the element, what it stands in, the page;',
    'British English without one). Words are English; a page can give others by `strings`. German words come with',
    `${german.map((one) => code(`<${one}>`)).join(', ')}; they are from memory, to be read by a native speaker of the`,
    'trade. Reasons, notes, faults and explanations that the engine makes stay English on a German page.',
    '',
    '## Tokens',
    '',
    'Custom properties that every element reads, set on the element or on anything around it. Light and dark follow the',
    '`color-scheme` in force where the element stands, and type is that of the page, unless a token says otherwise.',
    'Colours of text are checked in this package on their own grounds: set the text with its ground.',
    '',
    ...table(
      ['Token', 'Default', 'What it is for'],
      tokens.map((one) => [code(one.name), code(one.default), one.description]),
    ),
  ];
  return `${lines
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim()}\n`;
}
