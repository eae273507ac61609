/** What the manifest of the elements tells of one custom property. */
export interface Token {
  readonly name: string;
  readonly default: string;
  readonly description: string;
  readonly syntax?: string;
}

/** One element as the manifest tells of it. */
export interface ElementFacts {
  readonly tag: keyof HTMLElementTagNameMap;
  readonly summary: string;
  readonly description: string;
  /** Names of the properties that a page sets. */
  readonly fields: readonly string[];
  readonly events: readonly { readonly name: string; readonly description?: string }[];
  readonly parts: readonly { readonly name: string; readonly description?: string }[];
  /** Custom properties that this element alone reads. */
  readonly own: readonly Token[];
}

export interface Gallery {
  readonly elements: readonly ElementFacts[];
  /** Custom properties that every element reads. */
  readonly tokens: readonly Token[];
}

interface Declared {
  readonly tagName?: keyof HTMLElementTagNameMap;
  readonly summary?: string;
  readonly description?: string;
  readonly members: readonly {
    readonly kind: string;
    readonly name: string;
    readonly readonly?: boolean;
  }[];
  readonly events: ElementFacts['events'];
  readonly cssParts: ElementFacts['parts'];
  readonly cssProperties: readonly Token[];
}

/** Reads `custom-elements.json` as it is published. */
export async function readManifest(): Promise<Gallery> {
  const answer = await fetch(new URL('../../custom-elements.json', import.meta.url));
  if (!answer.ok)
    throw new Error(`The manifest of the elements cannot be read (${answer.status}).`);
  const { modules } = (await answer.json()) as {
    modules: readonly { declarations: readonly Declared[] }[];
  };
  const found = modules
    .flatMap((module) => module.declarations)
    .filter((declared) => declared.tagName);
  const inAll = (token: Token): boolean =>
    found.every((declared) => declared.cssProperties.some((other) => other.name === token.name));
  const tokens = found[0]?.cssProperties.filter(inAll) ?? [];
  const elements = found.map((declared): ElementFacts => ({
    tag: declared.tagName!,
    summary: declared.summary ?? '',
    description: declared.description ?? '',
    fields: declared.members
      .filter((member) => member.kind === 'field' && !member.readonly)
      .map((member) => member.name),
    events: declared.events,
    parts: declared.cssParts,
    own: declared.cssProperties.filter((token) => !inAll(token)),
  }));
  return { elements: elements.sort((a, b) => (a.tag < b.tag ? -1 : 1)), tokens };
}
