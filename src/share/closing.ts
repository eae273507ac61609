// Why a connection is shut. Codes 4000 to 4999 are for applications (RFC 6455, 7.4.2); the reason may have 123 bytes (5.5).

export interface Closing {
  readonly code: number;
  /** For the person at the other end. */
  readonly reason: string;
}

/**
 * Below 4500 trying again is of no use until a person changes something. None of them is a code of the engine's own, which
 * are 4205, 4401, 4403 and 4408.
 */
export const closings = {
  token: { code: 4411, reason: 'The token is not one of this server.' },
  late: { code: 4412, reason: 'No token was given.' },
  origin: { code: 4413, reason: 'A page of this address may not share here.' },
  noPlan: { code: 4414, reason: 'There is no such plan here.' },
  plans: { code: 4415, reason: 'The server holds as many plans as it may.' },
  broken: { code: 4416, reason: 'A message could not be read. Nothing of it was taken.' },
  notPlan: {
    code: 4417,
    reason: 'A change would have left no plan that can be read. It was not taken.',
  },
  reader: {
    code: 4418,
    reason: 'The token lets you read. A change was not taken.',
  },
  large: { code: 1009, reason: 'The message is larger than any plan. Nothing of it was taken.' },
  full: { code: 4513, reason: 'As many people as the server takes are here already.' },
  flood: { code: 4514, reason: 'Too much came at once. What was not taken is asked for again.' },
  store: { code: 4516, reason: 'The server cannot store changes now.' },
  end: { code: 4517, reason: 'The server is being stopped.' },
} as const satisfies Readonly<Record<string, Closing>>;

/** Thrown to shut the connection that a message came by. No `message`: the engine would print it. */
export class Refused {
  readonly code: number;
  readonly reason: string;

  constructor({ code, reason }: Closing) {
    this.code = code;
    this.reason = reason;
  }
}
