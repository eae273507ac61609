// Edits of the entries for a late handback. Claims are kept when a time is added or removed.
import type { Instant } from '../../src/calendar/index.js';
import type { AccountRequest, AccountRow, Claim, StandingActual } from '../../src/engine/index.js';

export const trainCode = (train: string): string => `train-${train}`;
export const standingCode = (resource: string): string => `standing-${resource}`;

const unclaimed: Claim = { claimedBy: '' };

/** The editable fields of a claim. */
export type ClaimWords = Partial<Pick<Claim, 'claimedBy' | 'evidence' | 'share'>>;

function claimOnly({ claimedBy, evidence, share }: Claim): Claim {
  return {
    claimedBy,
    ...(evidence !== undefined && { evidence }),
    ...(share !== undefined && { share }),
  };
}

function without(claims: AccountRequest['claims'], code: string): AccountRequest['claims'] {
  return Object.fromEntries(Object.entries(claims ?? {}).filter(([name]) => name !== code));
}

/** Sets when trains passed; null: cancelled; undefined: not recorded. */
export function withTrains(
  request: AccountRequest,
  passed: ReadonlyMap<string, Instant | null | undefined>,
): AccountRequest {
  const old = request.trainActuals ?? [];
  const kept = old.filter((actual) => !passed.has(actual.train));
  let claims = request.claims ?? {};
  const added = [];
  for (const [train, passedAt] of passed) {
    const code = trainCode(train);
    const claim = old.find((actual) => actual.train === train) ?? claims[code] ?? unclaimed;
    claims = without(claims, code) ?? {};
    if (passedAt !== undefined) added.push({ ...claimOnly(claim), train, passedAt });
    else if (claim !== unclaimed) claims = { ...claims, [code]: claimOnly(claim) };
  }
  return { ...request, claims, trainActuals: [...kept, ...added] };
}

/** Sets or removes the plant or labour entry at an index; adds one at the end if there is none. */
export function withStanding(
  request: AccountRequest,
  place: number,
  actual: Omit<StandingActual, keyof Claim> | null,
): AccountRequest {
  const list = [...(request.standingActuals ?? [])];
  const old = list[place];
  if (actual === null) list.splice(place, 1);
  else {
    const claim = old ?? request.claims?.[standingCode(actual.resource)] ?? unclaimed;
    list[place] = { ...claimOnly(claim), ...actual };
  }
  return { ...request, standingActuals: list };
}

/** Replaces a calculated row by an invoice, or removes the invoice. */
export function withInvoice(
  request: AccountRequest,
  row: Pick<AccountRow, 'head' | 'code'> & { readonly what: string },
  amount: string | null,
): AccountRequest {
  const charges = request.chargeActuals ?? [];
  const old = charges.find((actual) => actual.code === row.code);
  const claim = claimOnly(old ?? request.claims?.[row.code] ?? unclaimed);
  const rest = charges.filter((actual) => actual.code !== row.code);
  if (amount === null)
    return {
      ...request,
      chargeActuals: rest,
      claims: { ...request.claims, [row.code]: claim },
    };
  const charge = { ...claim, head: row.head, code: row.code, title: row.what, amount };
  return { ...request, chargeActuals: [...rest, charge] };
}

/**
 * Says who claims a row and what shows it.
 * @param nth Place among the rows of the same code, from 0: plant may have stood more than once.
 */
export function withClaim(
  request: AccountRequest,
  row: Pick<AccountRow, 'code'>,
  nth: number,
  words: ClaimWords,
): AccountRequest {
  const { code } = row;
  const trains = request.trainActuals ?? [];
  if (trains.some((train) => trainCode(train.train) === code))
    return {
      ...request,
      trainActuals: trains.map((train) =>
        trainCode(train.train) === code ? { ...train, ...words } : train,
      ),
    };
  const standing = request.standingActuals ?? [];
  const meant = standing.filter((actual) => standingCode(actual.resource) === code)[nth];
  if (meant)
    return {
      ...request,
      standingActuals: standing.map((actual) =>
        actual === meant ? { ...actual, ...words } : actual,
      ),
    };
  const charges = request.chargeActuals ?? [];
  if (charges.some((charge) => charge.code === code))
    return {
      ...request,
      chargeActuals: charges.map((charge) =>
        charge.code === code ? { ...charge, ...words } : charge,
      ),
    };
  const old = request.claims?.[code] ?? unclaimed;
  return { ...request, claims: { ...request.claims, [code]: { ...old, ...words } } };
}
