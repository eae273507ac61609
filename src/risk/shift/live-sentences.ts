// What is said during a shift: why to stop or carry on, what is not offered, and what of the record is in doubt.
import { durationText } from '../../calendar/index.js';
import { saysBy, type Worded } from '../../model/index.js';
import { chanceText } from '../chance-text.js';

type Nothing = Readonly<Record<never, never>>;
type Names = readonly string[];
interface Chance {
  /** 0 … 1. */
  readonly share: number;
  /** Of how many runs; absent: so many that it does not matter. */
  readonly runs?: number;
}
interface Late {
  readonly late: Worded;
  /** The time to hand back has passed. */
  readonly passed: boolean;
}
interface Named {
  readonly name: string;
}
const chance = ({ share, runs }: Chance): string => chanceText(share, runs);

export const liveSentences = {
  'all-as-planned': ({ onTime, wanted }: { readonly onTime: Chance; readonly wanted: Chance }) =>
    `All as planned: ${chance(onTime)}; wanted ${chance(wanted)}.`,
  'late-already': (_: Nothing) =>
    'The time to hand back has passed: say now that the line is handed back late.',
  'late-maybe': (_: Nothing) => 'say now that the line may be handed back late.',
  'nothing-may-go': ({ late, passed }: Late) =>
    `Nothing that is left may be left out${passed ? '. ' : ': '}${late.text}`,
  'no-way-reaches': ({ late, passed }: Late) =>
    `No way reaches it${passed ? '. ' : ': '}${late.text}`,
  'ways-compared': ({
    ways,
    wanted,
  }: {
    readonly ways: readonly { readonly way: Worded; readonly onTime: Chance }[];
    readonly wanted: Chance;
  }) =>
    `${ways.map(({ way, onTime }) => `${way.text}: ${chance(onTime)}`).join('; ')}; wanted ${chance(wanted)}.`,
  'way-as-planned': (_: Nothing) => 'all as planned',
  'way-without': ({ names }: { readonly names: Names }) => `without ${names.join(', ')}`,
  'way-none': ({ name }: Named) => `no unit of ${name}`,
  'way-stop-at': ({ units }: { readonly units: number }) => `stop at ${units}`,
  'way-more': ({ units }: { readonly units: number }) => `${units} more`,
  'way-of': ({ units, name }: Named & { readonly units: number }) => `${units} of ${name}`,
  'only-if-not-begun': ({ unit, name }: Named & { readonly unit: number }) =>
    `Only if unit ${unit} of ${name} has not begun: it is taken to be under way since the last was done.`,
  outrun: ({ name }: Named) =>
    `${name} has outrun its longest estimate: rely on no chance until a fresh estimate is written down.`,
  'handed-back': ({
    minutes,
    after,
    agreed,
  }: {
    readonly minutes: number;
    /** Later than the end, not before it. */
    readonly after: boolean;
    /** The end is one that the shift agreed to. */
    readonly agreed: boolean;
  }) =>
    `Handed back ${durationText(minutes)} ${after ? 'after' : 'before'} the ${agreed ? 'agreed' : 'booked'} end.`,

  'all-must-finish': ({ name, binders }: Named & { readonly binders: Names }) =>
    `All of ${name} must be finished in this window: it is among what makes ${binders.join(', ')} good.`,
  'begun-and-unsaid': ({ name, opened }: Named & { readonly opened: Names }) =>
    `${opened.join(', ')} has begun, and nothing says that the line is fit to run without ${name}.`,
  'waits-and-stays': ({ name }: Named) => `${name} waits for it and may not be left out.`,
  'needed-to-make-good': ({ name, opened }: Named & { readonly opened: string }) =>
    `${name} is needed to make good ${opened}.`,

  'record-not-here': ({ name, window }: Named & { readonly window: string }) =>
    `${name} is not planned in ${window}: its record is not used.`,
  'record-no-step': ({ step, window }: { readonly step: string; readonly window: string }) =>
    `${window} has no step "${step}" for the work planned in it: its record is not used.`,
  'record-not-yet': ({ name }: Named) =>
    `${name}: a time after the moment of the forecast is recorded. It is not counted yet.`,
  'record-before-window': ({ name, window }: Named & { readonly window: string }) =>
    `${name}: a time before ${window} opens is recorded. It is counted as it stands: check it.`,
  'record-not-repeated': ({ name, units }: Named & { readonly units: number }) =>
    `${name} is not repeated work: the ${units} units recorded of it are not used.`,
  'record-more-units': ({
    name,
    units,
    planned,
    window,
  }: Named & { readonly units: number; readonly planned: number; readonly window: string }) =>
    `${name}: ${units} units are recorded and ${planned} are planned in ${window}. It is counted as all done: check the count.`,
  'asked-too-late': (_: Nothing) =>
    'The line was asked for no earlier than the end that counts: that changes nothing.',
  'agreed-too-late': (_: Nothing) =>
    'The end that was agreed is no earlier than the booked end: that changes nothing.',
  'handed-back-open': ({ names }: { readonly names: Names }) =>
    `The line is recorded as handed back, and nothing says that ${names.join(', ')} ${names.length === 1 ? 'is' : 'are'} over. Every worksite must be given up first: ask at once.`,
  'grant-not-recorded': (_: Nothing) =>
    'No grant of the possession is recorded: it is counted as granted at this moment.',
  'line-grant-not-recorded': ({ name }: Named) =>
    `${name}: not recorded, and nobody said when. It is counted as granted at this moment.`,
};

export const sayLive = saysBy(liveSentences);
