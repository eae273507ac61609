import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { pageHeaders } from '../../scripts/page-headers.mjs';

const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
};

/**
 * Serves a folder as `npm start` does, with its headers. `close` also ends the connections that a browser keeps open.
 *
 * @param rewrite What a host does to the page before it sends it.
 * @param has Whether the host has a file: a broken or half-published folder lacks some, and a slow host takes its time.
 */
export async function serveFolder(
  folder: string,
  rewrite: (page: string) => string = (page) => page,
  has: (path: string) => boolean | Promise<boolean> = () => true,
): Promise<{ address: string; close: () => Promise<void> }> {
  const server: Server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://localhost').pathname;
    const file = join(folder, normalize(path === '/' ? '/index.html' : path));
    const read = async (): Promise<Buffer> => {
      if (!(await has(path))) throw new Error(`no ${path}`);
      return readFile(file);
    };
    read().then(
      (bytes) => {
        response.writeHead(200, {
          'content-type': types[extname(file)] ?? 'application/octet-stream',
          'cache-control': 'no-store',
          ...pageHeaders(),
        });
        response.end(extname(file) === '.html' ? rewrite(bytes.toString()) : bytes);
      },
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
