import { html, nothing, type TemplateResult } from 'lit';
import type { Progress } from '../../src/engine/index.js';
import type { HandbackStrings } from './strings.js';

/** How far the working out has come, said aloud; empty when nothing is worked out. */
export function busyLine(
  busy: boolean,
  progress: Progress | null,
  words: HandbackStrings,
): TemplateResult {
  const far = progress && progress.total > 0;
  return html`<div class="busy" role="status">
    ${
      busy
        ? html`<progress
              aria-label=${words.working}
              max=${far ? progress.total : nothing}
              value=${far ? progress.done : nothing}
            ></progress>
            <span
              >${words.working}${far ? `, ${words.progressOf(progress.done, progress.total)}` : nothing}</span
            >`
        : nothing
    }
  </div>`;
}
