import { PGlite } from '@electric-sql/pglite';
import { PGLiteSocketServer } from '@electric-sql/pglite-socket';

/** A PostgreSQL of one test file. */
export interface OwnPostgres {
  readonly url: string;
  readonly stop: () => Promise<void>;
}

/**
 * PostgreSQL as WebAssembly in this process, in memory, behind a port of its own. It is the server's own code
 * with one connection at a time: others wait until it ends. What needs several is tested on a server.
 */
export async function startPostgres(): Promise<OwnPostgres> {
  const db = await PGlite.create();
  const server = new PGLiteSocketServer({ db, host: '127.0.0.1', port: 0 });
  await server.start();
  return {
    url: `postgresql://postgres:none@${server.getServerConn()}/postgres?connection_limit=1`,
    stop: async () => {
      await server.stop();
      await db.close();
    },
  };
}
