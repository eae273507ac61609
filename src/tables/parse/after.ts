import type { Link } from '../../model/index.js';
import { parseDuration } from './duration.js';
import { partsOf, withItem } from './list.js';
import { plain, refuse, type Parsed } from './parsed.js';
const curedWords = /(?<!\s)\s+(?:when|once)\s+cured(?=\s*(?:\+|$))/i;
const prefix = /^(start|finish|end)\s+of\s+/i;

/**
 * Reads what an activity waits for: `A20`, `A20 + 48 h`, `start of A20 + 30 min`, `finish of A20`, `;`-separated.
 * The gap is clock time and never negative. `A20 when cured` waits until the concrete of A20 has the maturity asked for
 * in the temperatures given; `A20 when cured + 4 h` four hours longer.
 *
 * @param isActivity Whether a text is the name of an activity as it stands, so that `B+2` can be a name.
 */
export function parseAfter(text: string, isActivity: (id: string) => boolean): Parsed<Link[]> {
  let links: Link[] = [];
  for (const part of partsOf(text)) {
    const read = parseLink(part, isActivity);
    if ('problem' in read) return read;
    links = withItem(links, read.value);
  }
  return { value: links };
}

function parseLink(part: string, isActivity: (id: string) => boolean): Parsed<Link> {
  if (isActivity(part)) return { value: { activity: part, from: 'finish', gapMinutes: 0 } };
  const cured = curedWords.exec(part);
  if (cured) {
    const bare = part.slice(0, cured.index) + part.slice(cured.index + cured[0].length);
    const read = parseLink(bare, isActivity);
    if ('problem' in read) return read;
    if (read.value.from === 'start') return refuse('curing-from-start', { part });
    return { value: { ...read.value, cured: true } };
  }
  const word = prefix.exec(part);
  const from = word?.[1]?.toLowerCase() === 'start' ? 'start' : 'finish';
  const rest = word ? part.slice(word[0].length).trim() : part;
  if (isActivity(rest)) return { value: { activity: rest, from, gapMinutes: 0 } };
  const plus = rest.lastIndexOf('+');
  if (plus >= 0)
    return withGap(part, rest.slice(0, plus).trim(), rest.slice(plus + 1).trim(), from);
  // `A20 - 30 min`: a lead, which clock time cannot give. `A-20` is a name.
  const minus = rest.replace(/[\u2010-\u2015\u2212]/g, '-').lastIndexOf(' -');
  if (minus > 0 && !('problem' in parseDuration(plain(rest.slice(minus + 2))))) {
    return refuse('gap-negative/lead', { part });
  }
  return { value: { activity: rest, from, gapMinutes: 0 } };
}

function withGap(part: string, activity: string, gap: string, from: Link['from']): Parsed<Link> {
  if (activity === '') return refuse('after-not-read', { part });
  const minutes = parseDuration(gap);
  if ('value' in minutes) return { value: { activity, from, gapMinutes: minutes.value } };
  if (minutes.problem.code === 'duration-negative') {
    return refuse('gap-negative/gap', { part });
  }
  return refuse('after-not-read/gap', { part, gap: minutes.problem });
}
