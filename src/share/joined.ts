import type { Extension } from '@hocuspocus/server';

/**
 * Joins servers of the same tokens by a Redis: what comes to one goes to all of them.
 *
 * @throws {Error} With `code` `ERR_MODULE_NOT_FOUND`: the package for it is not installed.
 */
export async function joinedBy(address: string): Promise<Extension> {
  const [{ Redis }, { Redis: Client }] = await Promise.all([
    import('@hocuspocus/extension-redis'),
    import('ioredis'),
  ]);
  return new Redis({ prefix: 'possession-fit', createClient: () => new Client(address) });
}
