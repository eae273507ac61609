export interface Described {
  readonly name: string;
  readonly description?: string;
  readonly type?: { readonly text: string };
}

export interface Declaration extends Described {
  readonly customElement?: boolean;
  readonly tagName?: string;
  readonly summary?: string;
  readonly members: readonly (Described & { readonly kind: 'field' | 'method' })[];
  readonly events: readonly Described[];
  readonly cssParts: readonly Described[];
  readonly cssProperties: readonly (Described & { readonly default?: string })[];
}

export interface Manifest {
  readonly schemaVersion: string;
  readonly modules: readonly {
    readonly path: string;
    readonly declarations: readonly Declaration[];
    readonly exports: readonly { readonly kind: string; readonly name: string }[];
  }[];
}

export function elementFolders(): string[];
export function tokens(): { readonly name: string; readonly default: string }[];
export function makeManifest(): Manifest;
export function manifestFiles(): Promise<Record<string, string>>;
