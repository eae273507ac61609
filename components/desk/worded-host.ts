import type { ReactiveControllerHost } from 'lit';
import type { DeskStrings } from './strings.js';

/** What has the words of the desk, and is drawn anew when they are others. */
export interface WordedHost extends ReactiveControllerHost {
  readonly words: DeskStrings;
}
