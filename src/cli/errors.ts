// How a command ends without an answer.

/** A command line that cannot be run. The message says what is wrong. */
export class UsageError extends Error {
  override name = 'UsageError';
}

/** Unusable input. Its faults are already on standard error. */
export class BadInput extends Error {
  override name = 'BadInput';
}
