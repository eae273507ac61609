import { planFile, type PlanDocument } from '../../src/model/index.js';
import { fileNameOf } from './file-name.js';
import type { PlanStore } from './plan-store.js';

/** The part of the browser's file access that is used; not every browser has it. */
interface FileAccess {
  showSaveFilePicker?(options: {
    suggestedName: string;
    types: { description: string; accept: Record<string, string[]> }[];
  }): Promise<FileSystemFileHandle>;
}

/**
 * - `written`: into the file named. - `handed-over`: the browser saves it where it saves what it fetches.
 * - `given-up`: the person chose no file. - `changed`: the file was changed by something else since we last wrote it;
 *   ask, then save with `overwrite`.
 */
export type SavedFile =
  | { readonly kind: 'written'; readonly name: string }
  | { readonly kind: 'handed-over'; readonly name: string }
  | { readonly kind: 'given-up' }
  | { readonly kind: 'changed'; readonly name: string };

export interface SavePlanOptions {
  readonly document: PlanDocument;
  /** With both, the file of the last time is written again without asking. */
  readonly store?: PlanStore;
  readonly plan?: string;
  /** Ask for a file even where one is remembered. */
  readonly asNew?: boolean;
  readonly overwrite?: boolean;
}

/** Saves a plan as a file. Call it from a click: browsers refuse it otherwise. Rejects where the file cannot be written. */
export async function savePlan(options: SavePlanOptions): Promise<SavedFile> {
  const { document, store, plan, asNew = false, overwrite = false } = options;
  const text = planFile(document);
  const name = fileNameOf(document);
  const access = globalThis as FileAccess;
  if (access.showSaveFilePicker === undefined) return handOver(name, text);
  // The store may be the very thing that fails: a file must then still be saved.
  const kept =
    store && plan !== undefined && !asNew
      ? await store.fileOf(plan).catch(() => undefined)
      : undefined;
  let handle = kept?.handle;
  if (kept !== undefined && !overwrite) {
    const file = await kept.handle.getFile().catch(() => undefined);
    if (file === undefined) handle = undefined;
    else if (file.lastModified !== kept.modified) return { kind: 'changed', name: file.name };
  }
  try {
    const types = [{ description: 'Plan', accept: { 'application/json': ['.json'] } }];
    handle ??= await access.showSaveFilePicker({ suggestedName: name, types });
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return { kind: 'given-up' };
    return handOver(name, text);
  }
  const writable = await handle.createWritable();
  await writable.write(text);
  await writable.close();
  if (store && plan !== undefined) {
    const modified = (await handle.getFile()).lastModified;
    await store.rememberFile({ plan, handle, modified }).catch(() => undefined);
  }
  return { kind: 'written', name: handle.name };
}

function handOver(name: string, text: string): SavedFile {
  const link = document.createElement('a');
  const url = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.href = url;
  link.download = name;
  link.click();
  // Taken back only once the browser has surely begun to read it.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
  return { kind: 'handed-over', name };
}
