import { html, type TemplateResult } from 'lit';
import { spreadShapes } from '../../src/model/index.js';
import { changeTold, choiceField, textField, type Form } from './form.js';
import { readPercent, readText, readThree, threeText } from './read-field.js';
import { riskOf, withRisk } from './risk-edits.js';
import { withField } from './rule-edits.js';
import { applied } from './row-parts.js';

/** A share as it is typed: `95`, `97.5`. */
export const percent = (share: number): string => String(Number((100 * share).toFixed(4)));

/** What a handback must reach to be called held, and how lengths with three points are spread. */
export function riskFields(form: Form): TemplateResult {
  const { words, rules } = form;
  const { handback } = rules;
  const risk = riskOf(rules);
  return html`<section class="plain-fields" part="risk">
    <h3>${words.risk}</h3>
    <div class="fields">
      ${textField(form, {
        key: 'handback.chance',
        label: words.chanceWanted,
        value: handback === undefined ? '' : percent(handback.chance),
        size: 'short',
        hint: words.chanceHint,
        edit: (text) => {
          const read = readPercent(text, words.wrong);
          if (!('value' in read)) return read;
          const chance = read.value;
          // Nobody wants less than one in a hundred: a share of 1 was meant.
          if (chance !== undefined && !(chance >= 0.01 && chance < 1))
            return { trouble: words.wrong.wanted };
          return {
            value: {
              rules: withField(
                rules,
                'handback',
                chance === undefined ? undefined : { ...handback, chance },
              ),
              label: changeTold(
                words,
                words.chanceWanted,
                handback && percent(handback.chance),
                chance === undefined ? undefined : percent(chance),
              ),
            },
          };
        },
      })}
      ${choiceField(form, {
        key: 'risk.shape',
        label: words.shape,
        value: risk.shape,
        choices: spreadShapes.map((shape) => [shape, words.shapeText[shape]] as const),
        edit: (shape) => ({
          value: {
            rules: withRisk(rules, { ...risk, shape }),
            label: changeTold(
              words,
              words.shape,
              words.shapeText[risk.shape],
              words.shapeText[shape],
            ),
          },
        }),
      })}
      ${textField(form, {
        key: 'risk.commonFactor',
        label: words.commonCause,
        value: risk.commonFactor ? threeText(risk.commonFactor) : '',
        size: 'long',
        hint: words.commonHint,
        edit: (text) => {
          const read = readThree(text, words.wrong);
          if ('value' in read && read.value && !(read.value.low > 0))
            return { trouble: words.wrong.factor };
          return applied(read, (factor) => ({
            rules: withRisk(rules, withField(risk, 'commonFactor', factor)),
            label: changeTold(
              words,
              words.commonCause,
              risk.commonFactor && threeText(risk.commonFactor),
              factor && threeText(factor),
            ),
          }));
        },
      })}
      ${textField(form, {
        key: 'handback.source',
        label: words.source,
        value: handback?.source ?? '',
        size: 'source',
        edit: (text) =>
          handback === undefined
            ? { trouble: words.wrong.noChance }
            : applied(readText(text), (source) => ({
                rules: { ...rules, handback: withField(handback, 'source', source) },
                label: changeTold(
                  words,
                  `${words.source}, ${words.chanceWanted}`,
                  handback.source,
                  source,
                ),
              })),
      })}
    </div>
  </section>`;
}
