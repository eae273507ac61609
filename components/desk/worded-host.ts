import type { ReactiveControllerHost } from 'lit';
import type { DeskStrings } from './strings.js';

/** What has the words of the desk, and is drawn anew when they are others. */
export interface WordedHost extends ReactiveControllerHost {
  readonly words: DeskStrings;
}

/** What could not be done: as it is, or in the desk's own words, whatever language they come in. */
export type Trouble = string | ((words: DeskStrings) => string);
