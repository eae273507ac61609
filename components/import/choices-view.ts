import { html, nothing, type TemplateResult } from 'lit';
import type { DateOrder, Encoding, ImportChoices, ImportPreview } from '../../src/engine/types.js';
import type { TableKind } from '../../src/model/index.js';
import { numberText } from '../shared/format.js';
import type { ImportStrings } from './strings.js';

export type Choose = (choices: ImportChoices) => void;

type Option = readonly [value: string, label: string];

function choice(
  label: string,
  options: readonly Option[],
  chosen: string,
  pick: (value: string) => void,
  note: string | typeof nothing = nothing,
): TemplateResult {
  return html`<div class="choice">
    <label
      >${label}
      <select
        @change=${(event: Event) => {
          pick((event.target as HTMLSelectElement).value);
        }}
      >
        ${options.map(
          ([value, text]) =>
            html`<option value=${value} ?selected=${value === chosen} .selected=${value === chosen}>
              ${text}
            </option>`,
        )}
      </select>
    </label>
    ${note === nothing ? nothing : html`<p class="quiet">${note}</p>`}
  </div>`;
}

/** How the file is read: everything found in it that could be otherwise, each with what would change. */
export function choicesView(
  preview: ImportPreview,
  words: ImportStrings,
  choose: Choose,
): TemplateResult {
  const { chosen, kinds, sheets, encodings, delimiters, firstLines, above } = preview;
  const kindOptions: Option[] = [
    ...(chosen.kind === null ? [['', words.choose] as const] : []),
    ...kinds.map(({ kind }) => [kind, words.kinds[kind]] as const),
  ];
  return html`<fieldset class="choices">
    <legend>${words.how}</legend>
    ${choice(words.kind, kindOptions, chosen.kind ?? '', (kind) => {
      if (kind !== '') choose({ kind: kind as TableKind, map: {}, unread: [] });
    })}
    ${
      sheets.length > 1
        ? choice(
            words.sheet,
            sheets.map((sheet) => [
              sheet.name,
              `${sheet.name}, ${words.count.row(sheet.rows)}${sheet.hidden ? `, ${words.hidden}` : ''}`,
            ]),
            chosen.sheet ?? '',
            (sheet) => choose({ sheet }),
          )
        : nothing
    }
    ${
      encodings.length > 0
        ? choice(
            words.encoding,
            encodings.map(({ encoding, lines }) => [
              encoding,
              `${words.encodings[encoding]}${lines > 0 ? `: ${words.linesDiffer(words.count.line(lines))}` : ''}`,
            ]),
            chosen.encoding === 'utf-8-bom' ? 'utf-8' : (chosen.encoding ?? ''),
            (encoding) => choose({ encoding: encoding as Encoding }),
          )
        : nothing
    }
    ${
      delimiters.length > 0
        ? choice(
            words.delimiter,
            delimiters.map((delimiter) => [
              delimiter.delimiter,
              `${words.delimiters[delimiter.delimiter] ?? delimiter.delimiter}: ${words.columnsEven(
                words.count.column(delimiter.columns),
                numberText(delimiter.even),
                numberText(delimiter.lines),
              )}`,
            ]),
            chosen.delimiter,
            (delimiter) => choose({ delimiter }),
          )
        : nothing
    }
    ${choice(
      words.headings,
      firstLines.map(({ line, cells }) => [
        String(line),
        words.line(String(line), cells.join(' | ').slice(0, 60)),
      ]),
      String(chosen.headingLine),
      (line) => choose({ headingLine: Number(line) }),
      above > 0 ? words.above(words.count.line(above)) : nothing,
    )}
    ${datesChoice(preview, words, choose)}
  </fieldset>`;
}

function datesChoice(
  { dates, chosen }: ImportPreview,
  words: ImportStrings,
  choose: Choose,
): TemplateResult | typeof nothing {
  if (!dates || dates.eitherWay + dates.dayFirstOnly + dates.monthFirstOnly === 0) return nothing;
  const dayFirst = chosen.dateOrder === 'day-first';
  const [agree, against] = dayFirst
    ? [dates.dayFirstOnly, dates.monthFirstOnly]
    : [dates.monthFirstOnly, dates.dayFirstOnly];
  const note = [
    agree > 0 ? words.datesSettled(words.count.row(agree)) : dates.settled ? '' : words.datesUsual,
    dates.eitherWay > 0 ? words.datesTurn(words.count.row(dates.eitherWay)) : words.datesPlain,
    against > 0 ? words.datesAgainst(words.count.row(against)) : '',
  ];
  return choice(
    words.dates,
    [
      ['day-first', words.dayFirst],
      ['month-first', words.monthFirst],
    ],
    chosen.dateOrder,
    (order) => choose({ dateOrder: order as DateOrder }),
    note.filter((text) => text !== '').join(' '),
  );
}
