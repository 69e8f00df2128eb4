import { createServer } from 'node:net';

/** A TCP port of this machine that nobody listens on just now: `wanted` if it is free, else any. */
export async function freePort(wanted = 0): Promise<number> {
  for (const port of [wanted, 0]) {
    const got = await tryPort(port);
    if (got !== null) return got;
  }
  throw new Error('no free port on this machine');
}

function tryPort(port: number): Promise<number | null> {
  return new Promise((resolve) => {
    const server = createServer();
    server.once('error', () => resolve(null));
    server.listen(port, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(address !== null && typeof address === 'object' ? address.port : null));
    });
  });
}
