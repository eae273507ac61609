import { html, nothing, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import type { HandbackResult } from '../../src/engine/index.js';
import { titleOf, type DropOption } from './result-parts.js';
import type { HandbackStrings } from './strings.js';
import { aimText, errorText, percentText } from './times.js';

/** What to leave for another window: the first is what is advised, the others are folded. */
export function dropList(
  [first, ...others]: readonly DropOption[],
  result: HandbackResult,
  strings: HandbackStrings,
): TemplateResult | typeof nothing {
  if (!first) return nothing;
  const aim = aimText(result.confidence);
  const name = (activity: string): string => titleOf(result, activity);
  const line = (one: DropOption): TemplateResult =>
    html`<li>
      <strong
        >${
          one.keepUnits === undefined
            ? strings.dropAll(name(one.activity))
            : strings.dropTo(name(one.activity), one.keepUnits)
        }</strong
      >
      <span
        >${percentText(one.onTime.probability)} &plusmn;${errorText(one.onTime)}
        ${strings.handedBackOnTime}, ${strings.margin.toLowerCase()}
        ${durationText(one.marginMinutes)},
        ${one.reachesConfidence ? strings.reaches(aim) : strings.missesAim(aim)}</span
      >
      ${
        one.alsoDrops.length > 0
          ? html`<span class="quiet"
              >${strings.alsoDrops(one.alsoDrops.map(name).join(', '))}</span
            >`
          : nothing
      }
    </li>`;
  return html`<div class="drops">
    <h3>${strings.toDrop}</h3>
    <ol>
      ${line(first)}
    </ol>
    ${
      others.length > 0
        ? html`<details>
            <summary>${strings.otherDrops(others.length)}</summary>
            <ol>
              ${others.map(line)}
            </ol>
          </details>`
        : nothing
    }
  </div>`;
}
