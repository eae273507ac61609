// Names of months and days of the week as tables write them: English, German and French, whole or cut short.

const monthWords: readonly string[] = [
  'jan january januar jänner janvier janv',
  'feb february februar février févr fév fev fevrier',
  'mar march märz maerz mär mrz mars',
  'apr april avril avr',
  'may mai',
  'jun june juni juin',
  'jul july juli juillet juil',
  'aug august août aout aoû',
  'sep sept september septembre',
  'oct october okt oktober octobre',
  'nov november novembre',
  'dec december dez dezember déc décembre decembre',
];

const dayWords: readonly string[] = [
  'sun sunday so sonntag dim dimanche',
  'mon monday mo montag lun lundi',
  'tue tues tuesday di dienstag mar mardi',
  'wed wednes wednesday mi mittwoch mer mercredi',
  'thu thur thurs thursday do donnerstag jeu jeudi',
  'fri friday fr freitag ven vendredi',
  'sat satur saturday sa samstag sonnabend sam samedi',
];

const numbered = (lists: readonly string[]): ReadonlyMap<string, number> =>
  new Map(lists.flatMap((words, at) => words.split(' ').map((word) => [word, at] as const)));

const months = numbered(monthWords);
const days = numbered(dayWords);

/** 1 for January; 0 where the word names no month. */
export function monthOf(word: string): number {
  return (months.get(word.normalize('NFC').toLowerCase()) ?? -1) + 1;
}

/** 0 for Sunday; `undefined` where the word names no day of the week. */
export function dayOfWeek(word: string): number | undefined {
  return days.get(word.normalize('NFC').toLowerCase());
}
