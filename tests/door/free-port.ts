import { createServer, type AddressInfo } from 'node:net';

/** A port of loopback on which nothing listens. */
export function anyFreePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });
}
