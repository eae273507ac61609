import { html, nothing, svg, type TemplateResult } from 'lit';
import { durationText } from '../../../src/calendar/index.js';
import type { HandbackResult } from '../../../src/engine/index.js';
import { titleOf } from '../result-parts.js';
import type { HandbackStrings } from '../strings.js';
import { aimText, errorText } from '../times.js';
import { numberText } from '../../shared/format.js';
import { percentText } from '../../shared/chance.js';
import { subjectName } from '../subject-name.js';

const BAR = 120;

/** A share of 1 as a bar; `mark` draws the aim into it. */
function shareBar(share: number, mark?: number): TemplateResult {
  const place = (value: number): number => Math.round(Math.min(1, Math.max(0, value)) * BAR);
  return html`<svg
    class="share"
    viewBox="0 0 ${BAR} 12"
    preserveAspectRatio="none"
    width=${BAR}
    height="12"
    aria-hidden="true"
  >
    <line class="track" x1="0" x2=${BAR} y1="6" y2="6"></line>
    <rect class="filled" width=${place(share)} y="1" height="10"></rect>
    ${
      mark === undefined
        ? nothing
        : svg`<line class="aim" x1=${place(mark)} x2=${place(mark)} y1="0" y2="12"></line>`
    }
  </svg>`;
}

/** A change of a chance in points of a percentage: `+3.7`. */
const pointsText = (change: number): string =>
  `${change < 0 ? '\u2212' : '+'}${numberText(100 * Math.abs(change), 1)}`;

/** Chance of being on time by the number of units done, for each repeated piece of work. */
export function unitTables(result: HandbackResult, strings: HandbackStrings): TemplateResult[] {
  const aim = aimText(result.confidence);
  return result.units.map(
    (outlook) =>
      html`<section class="units">
        <h3>${strings.units}: ${titleOf(result, outlook.activity)}</h3>
        <p><strong>${strings.unitsWithin(outlook.unitsWithinConfidence, aim)}</strong></p>
        <table>
          <thead>
            <tr>
              <th scope="col" class="figure">${strings.unitsHead}</th>
              <th scope="col" class="figure">${strings.chanceHead}</th>
              <th scope="col" class="bars"><span class="unseen">${strings.aim} </span>${aim}</th>
            </tr>
          </thead>
          <tbody>
            ${outlook.chances.map(
              ({ units, onTime }) =>
                html`<tr class=${units === outlook.unitsWithinConfidence ? 'best' : ''}>
                  <th scope="row" class="figure">${units}</th>
                  <td class="figure">
                    ${percentText(onTime.probability, result.simulation.runs)}
                    <span class="quiet">&plusmn;${errorText(onTime)}</span>
                  </td>
                  <td class="bars">${shareBar(onTime.probability, result.confidence)}</td>
                </tr>`,
            )}
          </tbody>
        </table>
      </section>`,
  );
}

/** What it would bring to hold one length at its least: all units of a repeated piece of work together. */
export function helpsTable(result: HandbackResult, strings: HandbackStrings): TemplateResult {
  const repeated = new Set(result.units.map((outlook) => outlook.activity));
  const { helpsMost: rows, outlook } = result.simulation;
  const most = Math.max(0.001, ...rows.map((row) => row.probabilityGain));
  return html`<section class="helps">
    <h3>${strings.helps}</h3>
    ${
      rows.length === 0
        ? html`<p class="quiet">
            ${outlook.onTime.probability === 1 ? strings.allOnTime : strings.noHelp}
          </p>`
        : html`<p class="quiet">${strings.helpsNote}</p>
            <table>
              <thead>
                <tr>
                  <th scope="col">${strings.step}</th>
                  <th scope="col" class="figure">${strings.gain}</th>
                  <th scope="col" class="figure">${strings.earlier}</th>
                  <td class="bars"></td>
                </tr>
              </thead>
              <tbody>
                ${rows.map(
                  (row) =>
                    html`<tr>
                      <th scope="row">
                        ${
                          row.activity !== undefined && repeated.has(row.activity)
                            ? strings.allUnits(row.name)
                            : subjectName(row, strings)
                        }
                      </th>
                      <td class="figure">${pointsText(row.probabilityGain)}</td>
                      <td class="figure">${durationText(row.meanGainMinutes)}</td>
                      <td class="bars">${shareBar(row.probabilityGain / most)}</td>
                    </tr>`,
                )}
              </tbody>
            </table>`
    }
  </section>`;
}

/** How often each length decided the handback, most often first. */
export function criticalityTable(
  { simulation }: HandbackResult,
  strings: HandbackStrings,
): TemplateResult {
  const rows = [...simulation.criticality].sort((a, b) => b.share - a.share);
  return html`<section class="criticality">
    <h3>${strings.criticality}</h3>
    <p class="quiet">${strings.criticalityNote}</p>
    <table>
      <thead>
        <tr>
          <th scope="col">${strings.step}</th>
          <th scope="col" class="figure">${strings.share}</th>
          <td class="bars"></td>
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          (row) =>
            html`<tr>
              <th scope="row">${subjectName(row, strings)}</th>
              <td class="figure">${percentText(row.share, simulation.runs)}</td>
              <td class="bars">${shareBar(row.share)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
  </section>`;
}
