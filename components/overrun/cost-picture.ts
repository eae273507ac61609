import { html, nothing, svg, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import type { CostCurve } from '../../src/engine/index.js';
import { shortMoney, sumText } from './money-text.js';
import type { StepGroup } from './numbered-steps.js';
import { minuteTicks, moneyTicks, rowsFor, stepLine } from './step-line.js';
import type { OverrunStrings } from './strings.js';

const LEFT = 48;
const RIGHT = 14;
const PLOT = 190;
const FOOT = 36;
const MARK = 17;

/** The minute of the curve that lies under a place of the picture. */
export function minuteAt(x: number, width: number, curve: CostCurve): number {
  const share = (x - LEFT) / Math.max(1, width - LEFT - RIGHT);
  return Math.round(Math.min(1, Math.max(0, share)) * curve.maxMinutes);
}

/** The cost of each minute of overrun as a line of steps, the steps marked with their numbers and the asked minute shown. */
export function costPicture(
  curve: CostCurve,
  groups: readonly StepGroup[],
  asked: number,
  width: number,
  strings: OverrunStrings,
): TemplateResult {
  const coin = 10 ** curve.decimals;
  const most = curve.minor.reduce((top, one) => Math.max(top, one), 0) / coin;
  const wide = Math.max(1, width - LEFT - RIGHT);
  const x = (minute: number): number =>
    LEFT + (curve.maxMinutes === 0 ? 0 : (minute / curve.maxMinutes) * wide);
  const marked = groups.filter((one) => one.mark !== undefined);
  const rows = rowsFor(
    marked.map((one) => x(one.atMinute)),
    MARK,
    3,
  );
  const lanes = Math.max(1, ...rows.map((row) => (row ?? 0) + 1));
  const top = lanes * MARK + 8;
  const y = (cost: number): number => top + PLOT - (most === 0 ? 0 : (cost / most) * PLOT);
  const cost = (minute: number): number => (curve.minor[minute] ?? 0) / coin;
  const line = stepLine(curve.minor.map((one, minute) => ({ x: x(minute), y: y(one / coin) })));
  const onCurve = asked <= curve.maxMinutes;
  const last = curve.amounts[curve.maxMinutes] ?? '0';
  return html`<svg
    class="curve"
    role="img"
    width=${width}
    height=${top + PLOT + FOOT}
    aria-label="${strings.curve}. ${
      onCurve
        ? strings.curveTold(
            durationText(asked),
            sumText(curve.amounts[asked] ?? '0', curve.currency),
            durationText(curve.maxMinutes),
            sumText(last, curve.currency),
          )
        : ''
    }"
  >
    ${moneyTicks(most, 4).map(
      (
        tick,
      ) => svg`<line class="grid" x1=${LEFT} x2=${width - RIGHT} y1=${y(tick)} y2=${y(tick)}></line>
        <text class="soft" x=${LEFT - 6} y=${y(tick) + 4} text-anchor="end">${shortMoney(tick)}</text>`,
    )}
    ${minuteTicks(curve.maxMinutes, wide / 52).map(
      (
        tick,
      ) => svg`<line class="tick" x1=${x(tick)} x2=${x(tick)} y1=${top + PLOT} y2=${top + PLOT + 4}></line>
        <text class="soft" x=${x(tick)} y=${top + PLOT + 17} text-anchor="middle">${tick}</text>`,
    )}
    <text class="soft" x=${width - RIGHT} y=${top + PLOT + 32} text-anchor="end">
      ${strings.minute}
    </text>
    <text class="soft" x="0" y=${top + PLOT + 32}>${curve.currency}</text>
    <path class="under" d="${line}V${top + PLOT}H${LEFT}Z"></path>
    ${marked.map(
      (one, index) => svg`<line
        class=${rows[index] === undefined ? 'leader hidden' : 'leader'}
        x1=${x(one.atMinute)} x2=${x(one.atMinute)}
        y1=${(rows[index] ?? 0) * MARK + MARK} y2=${y(cost(one.atMinute))}></line>`,
    )}
    <path class="line" d=${line}></path>
    ${marked.map(
      (
        one,
        index,
      ) => svg`<circle class="dot" cx=${x(one.atMinute)} cy=${y(cost(one.atMinute))} r="2.5"></circle>
      ${
        rows[index] === undefined
          ? nothing
          : svg`<circle class="mark" cx=${x(one.atMinute)} cy=${rows[index] * MARK + 9} r="8"></circle>
        <text class="number" x=${x(one.atMinute)} y=${rows[index] * MARK + 12.5} text-anchor="middle">${one.mark}</text>`
      }`,
    )}
    ${
      onCurve
        ? svg`<line class="asked" x1=${x(asked)} x2=${x(asked)} y1=${top} y2=${top + PLOT + 4}></line>
        <circle class="asked" cx=${x(asked)} cy=${y(cost(asked))} r="5"></circle>`
        : nothing
    }
  </svg>`;
}
