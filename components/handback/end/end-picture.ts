import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { durationText, MINUTE, type Instant } from '../../../src/calendar/index.js';
import type { HandbackResult } from '../../../src/engine/index.js';
import type { Figure } from '../../shared/figure-ask-event.js';
import { clockText, numberText } from '../../shared/format.js';
import { askButton } from '../ask-button.js';
import { kindFill, kindPatterns } from '../../shared/kinds.js';
import { momentTicks, momentTickText } from '../../shared/moment-ticks.js';
import { BARS } from './end-chart.js';
import { endScale, planScale } from './end-scale.js';
import { endName, type Setting } from '../result-parts.js';
import type { HandbackStrings } from '../strings.js';
import { clockBeside } from '../times.js';
import { percentText } from '../../shared/chance.js';

/** Room for the booked end over the strip, and for the hours under it. */
const HEAD = 18;
const STRIP = 22;
const FOOT = 44;
const LETTER = 7;

/** The strip of the plan: work, lead-out, then margin or what runs past the booked end. */
function planStrip(
  result: HandbackResult,
  x: (at: Instant) => number,
  top: number,
  strings: HandbackStrings,
): SVGTemplateResult {
  const { plannedClear, plannedHandback, bookedEnd, requiredMinutes } = result;
  const piece = (
    from: Instant,
    to: Instant,
    kind: 'usable' | 'lead-out' | 'margin',
    word: string,
  ): SVGTemplateResult | typeof nothing => {
    const width = x(to) - x(from);
    if (!(width > 0)) return nothing;
    return svg`<rect class="edge ${kind}" x=${x(from)} y=${top} width=${width} height=${STRIP} fill=${kindFill(kind)}><title>${word}</title></rect>
      ${
        width > word.length * LETTER + 10
          ? svg`<text class="piece ${kind}" x=${x(from) + width / 2} y=${top + 15} text-anchor="middle">${word}</text>`
          : nothing
      }`;
  };
  const margin = durationText(result.marginMinutes);
  const needed = bookedEnd - requiredMinutes * MINUTE;
  const below = top + STRIP + 6;
  return svg`${piece(plannedClear - 1e9, plannedClear, 'usable', strings.work)}
    ${piece(plannedClear, plannedHandback, 'lead-out', `${strings.leadOut} ${durationText(result.leadOutMinutes)}`)}
    ${piece(plannedHandback, bookedEnd, 'margin', `${strings.margin} ${margin}`)}
    ${
      plannedHandback > bookedEnd
        ? svg`<rect class="beyond" x=${x(bookedEnd)} y=${top} width=${x(plannedHandback) - x(bookedEnd)} height=${STRIP}><title>${strings.beyond} ${durationText(-result.marginMinutes)}</title></rect>`
        : nothing
    }
    ${
      requiredMinutes > 0
        ? svg`<path class="needed" d="M${x(needed)} ${below} v5 H${x(bookedEnd)} v-5"></path>
      <text class="soft" x=${x(bookedEnd) - 4} y=${below + 18} text-anchor="end">${strings.requiredMargin} ${durationText(requiredMinutes)}</text>`
        : nothing
    }`;
}

/** The plan's own arithmetic at the end of a window, along time: work, lead-out and what is left to the booked end. */
export function endPicture(
  result: HandbackResult,
  { zone, strings }: Setting<HandbackStrings>,
  width: number,
): TemplateResult {
  const { bookedEnd } = result;
  const scale = planScale(result);
  const x = (at: Instant): number => {
    const share = (at - scale.from) / (scale.to - scale.from);
    return Math.round(Math.min(1, Math.max(0, share)) * width * 10) / 10;
  };
  const height = HEAD + STRIP + FOOT;
  const end = x(bookedEnd);
  const endLabel = `${strings.bookedEnd} ${clockText(bookedEnd, zone)}`;
  const isLeft = end + endLabel.length * LETTER + 8 > width;
  const ticks = momentTicks(scale.from, scale.to, Math.max(2, Math.floor(width / 64)), zone).filter(
    (tick) => x(tick) >= 16 && x(tick) <= width - 16,
  );
  const label = [
    `${strings.plannedClear} ${clockText(result.plannedClear, zone)}`,
    `${strings.plannedHandback} ${clockText(result.plannedHandback, zone)}`,
    endLabel,
  ].join(', ');
  return html`<svg
    class="end-drawing"
    width=${width}
    height=${height}
    role="img"
    aria-label="${strings.end}: ${label}"
  >
    ${kindPatterns}
    ${ticks.map(
      (
        tick,
      ) => svg`<line class="tick" x1=${x(tick)} x2=${x(tick)} y1=${HEAD} y2=${height - 16}></line>
        <text class="soft halo" x=${x(tick)} y=${height - 3} text-anchor="middle">${momentTickText(tick, zone)}</text>`,
    )}
    ${planStrip(result, x, HEAD, strings)}
    <path class="booked" d="M${end} 2 V${HEAD + STRIP + 6}"></path>
    <text
      class="halo booked-text"
      x=${isLeft ? end - 6 : end + 6}
      y="12"
      text-anchor=${isLeft ? 'end' : 'start'}
    >
      ${endLabel}
    </text>
  </svg>`;
}

/** The picture's figures. */
export function endTables(
  result: HandbackResult,
  { zone, strings }: Setting<HandbackStrings>,
  ask: (figure: Figure) => void,
): TemplateResult {
  const { simulation: run, bookedEnd, window } = result;
  const { histogram } = endScale(result, BARS);
  const time = (at: Instant): string => clockBeside(at, bookedEnd, zone);
  const rows: readonly (readonly [name: string, value: string, figure?: Figure])[] = [
    [strings.plannedClear, time(result.plannedClear)],
    [strings.leadOut, durationText(result.leadOutMinutes)],
    [strings.plannedHandback, time(result.plannedHandback)],
    [endName(result, strings), time(bookedEnd)],
    [strings.margin, durationText(result.marginMinutes), { of: 'handback-margin', window }],
    [strings.requiredMargin, durationText(result.requiredMinutes)],
    [
      strings.onTime,
      percentText(run.outlook.onTime.probability, run.runs),
      { of: 'on-time', window },
    ],
    ...([50, 80, 90, 95] as const).map(
      (percent) =>
        [`P${percent}`, time(run[`p${percent}`]), { of: 'p-value', window, percent }] as const,
    ),
    [
      strings.meanLate,
      `${numberText(run.outlook.expectedOverrunMinutes, 1)} min`,
      { of: 'expected-overrun', window },
    ],
    ...run.outlook.laterThan.map(
      (item) =>
        [
          strings.moreThan(time(bookedEnd + item.minutes * MINUTE)),
          item.probability === 0
            ? strings.noRunOf(numberText(run.runs))
            : percentText(item.probability),
          { of: 'later-than', window, minutes: item.minutes },
        ] as const,
    ),
  ];
  return html`<div class="figures">
      <table>
        <thead class="unseen">
          <tr>
            <th scope="col">${strings.item}</th>
            <th scope="col">${strings.value}</th>
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            ([name, value, figure]) =>
              html`<tr>
                <th scope="row">${name}</th>
                <td class="figure">
                  ${figure ? askButton(value, strings.explain, () => ask(figure)) : value}
                </td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
    ${
      histogram.outside > 0
        ? html`<p class="quiet">${strings.outside(numberText(histogram.outside))}</p>`
        : nothing
    }`;
}

/** The bars of the chart as rows, in its place. */
export function barTable(
  result: HandbackResult,
  { zone, strings }: Setting<HandbackStrings>,
): TemplateResult {
  const { simulation: run, bookedEnd } = result;
  const { windowStart, histogram } = endScale(result, BARS);
  const clock = (minutes: number): string =>
    clockBeside(windowStart + minutes * MINUTE, bookedEnd, zone);
  let sum = 0;
  return html`<div
    slot="table"
    class="scroll bars-table"
    tabindex="0"
    role="region"
    aria-label=${strings.handedBack}
  >
    <table>
      <thead>
        <tr>
          <th scope="col">${strings.between}</th>
          <th scope="col" class="figure">${strings.runs}</th>
          <th scope="col" class="figure">${strings.share}</th>
          <th scope="col" class="figure">${strings.handedBackBy}</th>
        </tr>
      </thead>
      <tbody>
        ${histogram.bars.map((bar) => {
          sum += bar.runs;
          return html`<tr>
            <td>
              ${clock(bar.from)}&ndash;${clock(bar.to)}
              ${bar.late ? html`<span class="quiet">${strings.handedBackLate}</span>` : nothing}
            </td>
            <td class="figure">${numberText(bar.runs)}</td>
            <td class="figure">${percentText(bar.runs / Math.max(1, run.runs), run.runs)}</td>
            <td class="figure">${percentText(sum / Math.max(1, run.runs), run.runs)}</td>
          </tr>`;
        })}
      </tbody>
    </table>
  </div>`;
}
