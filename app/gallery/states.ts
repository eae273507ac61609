import type { ElementFacts } from './manifest.js';

/** One way in which an element is shown. */
export interface State {
  readonly name: string;
  /** What it is given: the sample plan, one with cells gone wrong, or nothing. */
  readonly data: 'sample' | 'troubled' | 'nothing';
  /** What is set on it after its data. */
  readonly set?: Readonly<Record<string, unknown>>;
  /** How the ground that it stands on differs from the page. */
  readonly ground?: {
    readonly narrow?: true;
    readonly dark?: true;
    readonly rightToLeft?: true;
    readonly german?: true;
  };
}

type Tag = ElementFacts['tag'];

/** Elements that a `<possession-document>` around them gives its plan to. */
export const fed: ReadonlySet<Tag> = new Set<Tag>([
  'possession-fit',
  'possession-handback',
  'possession-ledger',
  'possession-plan',
  'possession-ribbon',
  'possession-sheet',
]);

/** What makes an element one that is only read. */
const readOnly: { readonly [tag in Tag]?: Readonly<Record<string, unknown>> } = {
  'possession-overrun': { editable: false },
  'possession-people': { mendable: false },
  'possession-plan': { movable: false },
  'possession-sheet': { readonly: true },
};

/** The attributes that an element needs to show what it is for. */
export const attributes: { readonly [tag in Tag]?: Readonly<Record<string, string>> } = {
  'possession-sheet': { of: 'windows', label: 'Windows', results: '' },
};

const everyWhere: readonly State[] = [
  { name: 'With a plan', data: 'sample' },
  { name: 'With nothing yet', data: 'nothing' },
  { name: 'With cells gone wrong', data: 'troubled' },
];
const grounds: readonly State[] = [
  { name: 'In 320 pixels', data: 'sample', ground: { narrow: true } },
  { name: 'On a dark page', data: 'sample', ground: { dark: true } },
  { name: 'On a page from right to left', data: 'sample', ground: { rightToLeft: true } },
];

/** Elements that have German words. */
const german: ReadonlySet<Tag> = new Set<Tag>([
  'possession-ledger',
  'possession-ribbon',
  'possession-sheet',
  'possession-why',
]);

/** In which states an element is shown. The desk fills a page of its own: it is shown at work only. */
export function statesOf(tag: Tag): readonly State[] {
  if (tag === 'possession-desk') return [everyWhere[0]!];
  const only = readOnly[tag];
  return [
    ...everyWhere,
    ...(only ? [{ name: 'To be read only', data: 'sample', set: only } as const] : []),
    ...grounds,
    ...(german.has(tag)
      ? [{ name: 'On a German page', data: 'sample', ground: { german: true } } as const]
      : []),
  ];
}
