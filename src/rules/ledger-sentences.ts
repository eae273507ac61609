// Reasons for the rows of a ledger, and names for rows that no rule set names. `at`, `from`, `to`: local times of the
// window.
import { durationText } from '../calendar/index.js';
import { saysBy, type Curfew, type Step, type Worded } from '../model/index.js';

type Nothing = Readonly<Record<never, never>>;
interface Given {
  readonly sections: string;
  readonly at: string;
}
interface Beside {
  readonly step: string;
  readonly from: string;
  readonly to: string;
}

const conditions: Readonly<Record<Step['when'], string>> = {
  always: 'Every window',
  isolation: 'The work needs an isolation',
  loud: 'The work is loud',
};

export const ledgerSentences = {
  source: ({ source }: { readonly source: string }) => `Source: ${source}.`,
  'counted-forward': (_: Nothing) => 'forward from the start of the window',
  'counted-back': (_: Nothing) => 'back from the required margin',
  'counted-again': ({ sections, at }: Given) => `once ${sections} may be isolated again at ${at}`,
  'counted-from-given-up': ({ sections, at }: Given) =>
    `back from ${at}, when ${sections} must be given back`,
  'step-applies': ({
    when,
    minutes,
    counted,
  }: {
    readonly when: Step['when'];
    readonly minutes: number;
    readonly counted: Worded;
  }) => `${conditions[when]}: ${durationText(minutes)}, counted ${counted.text}.`,
  'step-alongside': ({ step, from, to }: Beside) => `Alongside “${step}”, ${from} to ${to}.`,
  'step-where-not-again': ({ step, from, to }: Beside) =>
    `Where “${step}” would start, which is not done again: ${from} to ${to}.`,
  'step-follows': ({ step }: { readonly step: string }) =>
    `“${step}” does not apply here, so it follows the steps before it.`,
  'step-takes-no-time': (_: Nothing) => 'It takes no time.',
  'step-all-beside': (_: Nothing) => 'All of it runs beside other steps: nothing more is deducted.',
  'step-part-beside': ({ minutes }: { readonly minutes: number }) =>
    `${durationText(minutes)} of it runs beside other steps and is deducted once.`,
  'window-short-of-step': ({ needed, has }: { readonly needed: number; readonly has: number }) =>
    `Needs ${durationText(needed)}, has ${durationText(has)}: the window is too short for its deductions.`,
  'given-up': ({ sections }: { readonly sections: string }) => `Isolation of ${sections} given up`,
  'over-before-given-up': ({ sections, at }: Given) =>
    `${sections} must be given back by ${at}, so this work is over before the margin begins.`,
  'wait-for-isolation': ({ sections, at }: Given) => `Wait for isolation of ${sections} from ${at}`,
  'isolated-from': ({ sections, at }: Given) =>
    `${sections} may be isolated from ${at} at the earliest.`,
  'dead-too-short': ({ sections, at }: Given) =>
    `Before ${at} ${sections} may not be dead for long enough to isolate, work and give up.`,
  margin: (_: Nothing) => 'Required handback margin',
  'margin-kept': ({ minutes }: { readonly minutes: number }) =>
    `Kept free before the booked end: ${durationText(minutes)}.`,
  'window-withdrawn': (_: Nothing) => 'The window is withdrawn.',
  'window-does-not-isolate': ({ section }: { readonly section: string }) =>
    `The window does not isolate ${section}.`,
  'not-booked': (_: Nothing) => 'Isolation not booked',
  'cannot-begin': ({ sections }: { readonly sections: readonly string[] }) =>
    `The window does not isolate ${sections.join(', ')}: this work cannot begin.`,
  usable: (_: Nothing) => 'Usable',
  'left-for-work': (_: Nothing) => 'Left for work, with the required margin held.',
  curfew: ({ bars, from, to, days }: Omit<Curfew, 'name' | 'source'>) => {
    const nights = days ? `, when the day it starts on is ${days.join(', ')}` : '';
    return `${bars === 'all' ? 'All work' : 'Loud work'} stops from ${from} to ${to}${nights}.`;
  },
  'shift-changeover': (_: Nothing) => 'Shift changeover',
  'shift-lasts': ({
    longest,
    changeover,
  }: {
    readonly longest: number;
    readonly changeover: number;
  }) =>
    `A shift lasts ${durationText(longest)} at the longest; handing over takes its last ${durationText(changeover)}.`,
  'lifting-stopped': (_: Nothing) => 'Lifting stopped by the forecast',
  'gusts-over': ({
    gust,
    height,
    limit,
  }: {
    readonly gust: number;
    readonly height: number;
    readonly limit: number;
  }) =>
    `Gusts to ${gust.toFixed(1)} m/s at ${height} m by the forecast; the limit is ${limit.toFixed(1)}.`,
  lightning: (_: Nothing) => 'Lightning is forecast.',
  'too-cold': ({ coldest, limit }: { readonly coldest: number; readonly limit: number }) =>
    `${coldest.toFixed(0)} °C by the forecast; the crane works from ${limit} °C.`,
  'wind-decides': ({ source }: { readonly source: string }) =>
    `Source of the limit: ${source}. Wind at the hook, not a forecast, decides.`,
  'too-loud-for': ({ dwelling, period }: { readonly dwelling: string; readonly period: string }) =>
    `Too loud for ${dwelling}: ${period}`,
  'noise-over': ({
    level,
    limit,
    over,
  }: {
    readonly level: number;
    readonly limit: number;
    readonly over: number;
  }) => `${level.toFixed(1)} dB predicted, ${limit.toFixed(1)} allowed: ${over.toFixed(1)} over.`,
  'noise-screening': (_: Nothing) =>
    'Screening only: a prior consent or a decision about neighbours needs a competent acoustician.',
};

export const sayOfLedger = saysBy(ledgerSentences);

/** The source of a figure, where the rule set names one. */
export const sourceOf = (source: string | undefined): readonly Worded[] =>
  source === undefined ? [] : [sayOfLedger('source', { source })];
