import { countText } from '../../shared/format.js';

/** Every word that the sharing panel shows; replace any of them for another language. */
export const defaultStrings = {
  heading: 'Shared with others',
  others: 'Others who have the plan open',
  shared: 'Shared',
  readOnly: ', read only',
  othersHere: (count: number) => `${countText(count, 'other')} here`,
  isAway: 'Away from the others',
  isRefused: 'Sharing refused',
  joining: 'Joining the others',
  about:
    'Several people work on one plan by a server that one of them runs: possession-fit share. It prints an address and two tokens, one to read and one to write. The token is kept on this device until you leave, and is sent to that server alone.',
  yourName: 'Your name',
  address: 'Address',
  token: 'Token',
  share: 'Share this plan there',
  keepFirst: 'Keep the plan on this device first.',
  look: 'Open a plan from there',
  asked: 'The server is asked.',
  noneThere: 'Nobody has shared a plan there yet.',
  noName: 'a plan without a name',
  open: 'Open',
  reads: 'Your token lets you read the plan, not change it.',
  at: (address: string, name: string) =>
    `${address}, as ${name || 'somebody without a name'}. A name is what a person wrote; it proves nothing.`,
  somebody: 'somebody without a name',
  togetherReads: 'What the others change comes here as it is made.',
  together: 'What is changed here goes to the others as it is made, and theirs comes here.',
  awayReads: 'What the others change comes when the server answers again.',
  away: 'Work goes on here; it is joined with that of the others when the server answers again.',
  refused: 'The plan on this device stays as it is, and goes to nobody.',
  cell: (table: string, row: number) => `${table}, row ${row}`,
  mayRead: 'may only read',
  left: 'The plan is no longer shared from here. This device keeps a copy.',
  noToken: 'A token is needed: the server prints two.',
};

export type SharingStrings = typeof defaultStrings;
