import { waitUntil as wait } from '@open-wc/testing';

/** Waits until something is so. Only a test that hangs comes to an end here: how fast the machine is must not decide. */
export const waitUntil = (isSo: () => unknown, what?: string): Promise<void> =>
  wait(isSo, what, { timeout: 3_000_000, interval: 25 });
