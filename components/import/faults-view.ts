import { problemWords } from '../shared/problem-words.js';
import { html, nothing, type TemplateResult } from 'lit';
import type { Fault } from '../../src/model/index.js';
import type { ImportStrings } from './strings.js';

/** Causes shown, and lines named of each; the rest are in the sheet. */
const SHOWN = 60;
const LINES = 6;

/** Faults of one cause: one code, in one column. */
interface Cause {
  readonly first: Fault;
  readonly faults: readonly Fault[];
}

function causesOf(faults: readonly Fault[]): readonly Cause[] {
  const causes = new Map<string, Fault[]>();
  for (const fault of faults) {
    const key = JSON.stringify([fault.severity, fault.code, fault.column]);
    const list = causes.get(key);
    if (list) list.push(fault);
    else causes.set(key, [fault]);
  }
  const rank = (cause: Cause): number => (cause.first.severity === 'error' ? 0 : 1);
  return [...causes.values()]
    .map((list) => ({ first: list[0]!, faults: list }))
    .sort((a, b) => rank(a) - rank(b) || b.faults.length - a.faults.length);
}

function placeText({ faults }: Cause, words: ImportStrings): string {
  const lines = [...new Set(faults.flatMap((fault) => fault.line ?? []))];
  if (lines.length === 0) return words.wholeFile;
  if (lines.length === 1) return words.lineAt(lines[0]!);
  const named = lines.slice(0, LINES);
  return words.linesOf(named.join(', '), lines.length - named.length);
}

/** What is wrong with a file, grouped by cause, and how to mend it. */
export function faultsView(
  faults: readonly Fault[],
  file: string,
  words: ImportStrings,
): TemplateResult {
  const causes = causesOf(faults);
  return html`<div
    class="scroll faults"
    tabindex="0"
    role="region"
    aria-label="${words.whatIsWrong}, ${file}"
  >
    <table>
      <thead>
        <tr>
          <th scope="col">${words.where}</th>
          <th scope="col">${words.what}</th>
          <th scope="col">${words.mend}</th>
        </tr>
      </thead>
      <tbody>
        ${causes.slice(0, SHOWN).map((cause) => {
          const { first, faults: all } = cause;
          return html`<tr>
            <td>
              ${placeText(cause, words)}${first.column === undefined ? nothing : html`, ${first.column}`}
            </td>
            <td>
              <span class=${first.severity === 'error' ? 'wrong' : 'note'}
                >${first.severity === 'error' ? `✕ ${words.error}` : `! ${words.note}`}${
                  all.length > 1 ? `, ${words.count.time(all.length)}` : ''
                }</span
              >
              ${problemWords(first)[0]}
            </td>
            <td>${problemWords(first)[1]}</td>
          </tr>`;
        })}
      </tbody>
    </table>
    ${
      causes.length > SHOWN
        ? html`<p class="quiet">${words.andMore(causes.length - SHOWN)}</p>`
        : nothing
    }
  </div>`;
}
