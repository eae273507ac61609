/** Why a plan is not saved. */
export type SaveTrouble =
  | 'full'
  | 'refused'
  | 'no-storage'
  | 'newer'
  | 'no-answer'
  | 'damaged'
  | 'not-loaded';

/**
 * How far what is on the screen is from being safe.
 *
 * - `saved`: every change is in the browser's store. `at`: when it was written, epoch ms; absent for a plan just opened.
 * - `saving`: `changes` are on their way, for less than a second in the ordinary case.
 * - `not-saved`: the last attempt failed. It is tried again at once in a while; a file can be saved meanwhile.
 * - `read-only`: the store is of a newer version than this page.
 */
export type SaveState =
  | { readonly kind: 'saved'; readonly at?: number }
  | { readonly kind: 'saving'; readonly changes: number }
  | {
      readonly kind: 'not-saved';
      readonly trouble: SaveTrouble;
      readonly changes: number;
      /** The browser's own words, for whoever looks into it. */
      readonly detail: string;
    }
  | { readonly kind: 'read-only'; readonly changes: number };

/** What a failed write means to a person. */
export function troubleOf(error: unknown): SaveTrouble {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError') return 'full';
  if (name === 'VersionError') return 'newer';
  if (name === 'NotSupportedError' || name === 'SecurityError') return 'no-storage';
  return 'refused';
}

export const defaultSaveStrings = {
  saved: (time: string | undefined): string => (time === undefined ? 'Saved' : `Saved ${time}`),
  saving: 'Saving',
  full: 'Not saved: the disk is full, or this browser gives the page no more room. Save a file now.',
  refused: 'Not saved: the browser could not write it. It is being tried again. Save a file now.',
  'no-storage':
    'Not saved: this browser keeps nothing for this page (a private window, or a setting). Save a file before you leave.',
  newer:
    'Not saved: a newer version of this page is open and has changed the store. Save a file, then reload this page.',
  'no-answer':
    'Not saved yet: the browser’s storage does not answer. Save a file if you have to leave.',
  damaged:
    'Not saved: what is stored of this plan cannot be read any more. Save a file, then open the plan again.',
  'not-loaded':
    'Not saved: what keeps plans on this device could not be loaded. Save a file before you leave, and reload the page to try again.',
  readOnly:
    'Not saved: the store was written by a newer version of this page. You can look and save a file. Reload the page to get the newer version.',
};
export type SaveStrings = typeof defaultSaveStrings;

/** The state in words. `time` writes a moment (epoch ms) the way the page writes times: "02:14". */
export function saveText(
  state: SaveState,
  time: (at: number) => string,
  strings: SaveStrings = defaultSaveStrings,
): string {
  switch (state.kind) {
    case 'saved':
      return strings.saved(state.at === undefined ? undefined : time(state.at));
    case 'saving':
      return strings.saving;
    case 'not-saved':
      return strings[state.trouble];
    case 'read-only':
      return strings.readOnly;
  }
}
