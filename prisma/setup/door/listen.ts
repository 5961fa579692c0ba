import { createServer, type Server } from 'node:https';
import type { AddressInfo } from 'node:net';
import { forwarder, type Way } from './forward';
import type { ServerCertificate } from './leaf';

export interface Door {
  readonly port: number;
  readonly close: () => Promise<void>;
}

const TRIES = 20;

/** Limits that one phone and one laptop never meet. */
function limited(server: Server): Server {
  server.maxConnections = 100;
  server.headersTimeout = 15_000;
  server.requestTimeout = 120_000;
  server.keepAliveTimeout = 30_000;
  // A request to change the protocol is refused; nothing here speaks another.
  server.on('upgrade', (_request, socket) => {
    socket.end('HTTP/1.1 501 Not Implemented\r\nConnection: close\r\nContent-Length: 0\r\n\r\n');
  });
  server.on('tlsClientError', (_error, socket) => socket.destroy());
  return server;
}

function listenOn(server: Server, host: string, port: number): Promise<number | 'taken'> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') resolve('taken');
      else reject(error);
    });
    server.listen({ host, port, exclusive: true }, () => {
      server.removeAllListeners('error');
      resolve((server.address() as AddressInfo).port);
    });
  });
}

const closeAll = (servers: readonly Server[]): Promise<void> =>
  Promise.all(
    servers.map((server) => {
      server.closeAllConnections();
      return new Promise<void>((resolve) => server.close(() => resolve()));
    }),
  ).then(() => undefined);

/**
 * Opens the door on each address, all on one port: the wanted one, or the next that is free on all of them.
 * Other addresses of the machine, and those it gets later in another network, are not listened on.
 */
export async function openDoor(
  addresses: readonly string[],
  wanted: number,
  certificate: ServerCertificate,
  way: Omit<Way, 'port'>,
): Promise<Door> {
  let open = 0;
  const handle = forwarder({ ...way, port: () => open });
  for (let port = wanted; port < wanted + TRIES && port <= 65_535; port += 1) {
    const servers: Server[] = [];
    const ports: (number | 'taken')[] = [];
    for (const address of addresses) {
      const options = { ...certificate, minVersion: 'TLSv1.2', handshakeTimeout: 10_000 } as const;
      const server = limited(createServer({ ...options, maxHeaderSize: 16_384 }, handle));
      servers.push(server);
      ports.push(await listenOn(server, address, port));
      if (ports.at(-1) === 'taken') break;
    }
    if (!ports.includes('taken')) {
      open = port;
      return { port, close: () => closeAll(servers) };
    }
    await closeAll(servers.slice(0, -1));
  }
  throw new Error(
    `The ports ${wanted} to ${wanted + TRIES - 1} are taken on ${addresses.join(', ')}.`,
  );
}
