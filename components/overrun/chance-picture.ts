import { html, svg, type TemplateResult } from 'lit';
import type { ExpectedCost } from '../../src/engine/index.js';
import { shortMoney, sumText } from './money-text.js';
import { moneyTicks, stepLine } from './step-line.js';
import type { OverrunStrings } from './strings.js';

const LEFT = 48;
const RIGHT = 20;
const TOP = 34;
const PLOT = 150;
const FOOT = 36;

/** The chance of costing more than each sum, as a falling line of steps. */
export function chancePicture(
  expected: ExpectedCost,
  width: number,
  strings: OverrunStrings,
): TemplateResult {
  const points = expected.exceedance.map((one) => ({
    cost: Number(one.cost),
    chance: one.chanceOfMore,
  }));
  const most = Math.max(0, points.at(-1)?.cost ?? 0);
  const wide = width - LEFT - RIGHT;
  const x = (cost: number): number => LEFT + (most === 0 ? 0 : (cost / most) * wide);
  const y = (chance: number): number => TOP + (1 - chance) * PLOT;
  const line = stepLine([
    { x: x(Math.min(0, points[0]?.cost ?? 0)), y: y(1) },
    ...points.map((one) => ({ x: x(one.cost), y: y(one.chance) })),
  ]);
  const worst = sumText(expected.exceedance.at(-1)?.cost ?? '0', expected.currency);
  const marks = [
    { name: 'P80', cost: Number(expected.p80), chance: 0.2, row: 0 },
    { name: 'P95', cost: Number(expected.p95), chance: 0.05, row: 1 },
  ];
  return html`<svg
    class="chances"
    role="img"
    width=${width}
    height=${TOP + PLOT + FOOT}
    aria-label="${strings.exceedance}. ${strings.exceedanceTold(worst)}"
  >
    ${[0, 0.25, 0.5, 0.75, 1].map(
      (
        tick,
      ) => svg`<line class="grid" x1=${LEFT} x2=${width - RIGHT} y1=${y(tick)} y2=${y(tick)}></line>
        <text class="soft" x=${LEFT - 6} y=${y(tick) + 4} text-anchor="end">${100 * tick} %</text>`,
    )}
    ${moneyTicks(most, Math.max(2, Math.floor(wide / 70))).map(
      (tick) => svg`<line class="tick" x1=${x(tick)} x2=${x(tick)} y1=${y(0)} y2=${y(0) + 4}></line>
        <text class="soft" x=${x(tick)} y=${y(0) + 17} text-anchor="middle">${shortMoney(tick)}</text>`,
    )}
    <text class="soft" x=${width - RIGHT} y=${y(0) + 32} text-anchor="end">
      ${strings.cost(expected.currency)}
    </text>
    <path class="line" d=${line}></path>
    ${marks.map(({ name, cost, chance, row }) => {
      const right = x(cost) > width - 60;
      return svg`<line class="quantile" x1=${x(cost)} x2=${x(cost)} y1=${8 + row * 14} y2=${y(chance)}></line>
        <text class="halo" x=${x(cost) + (right ? -4 : 4)} y=${14 + row * 14} text-anchor=${right ? 'end' : 'start'}>${name}</text>`;
    })}
  </svg>`;
}
