import type { PrismaPg } from '@prisma/adapter-pg';
import type {
  SqlDriverAdapter,
  SqlDriverAdapterFactory,
  SqlQuery,
  Transaction,
} from '@prisma/driver-adapter-utils';

/** Connections of one process where the URL does not say `connection_limit`. */
const CONNECTIONS = 10;

/**
 * PostgreSQL at a URL. The driver is loaded when the first connection is made, so that an installation on
 * SQLite never loads it. The URL may say `connection_limit`: how many connections this process holds.
 */
export function postgresAdapter(url: string): SqlDriverAdapterFactory {
  return {
    provider: 'postgres',
    adapterName: '@prisma/adapter-pg',
    connect: async () => oneAtATime(await (await postgresDriver(url)).connect()),
  };
}

/** The loaded driver of a URL, for the programs that ask for a connection of their own. */
export async function postgresDriver(url: string): Promise<PrismaPg> {
  const { PrismaPg: Driver } = await import('@prisma/adapter-pg');
  return new Driver({ connectionString: url, max: connectionsOf(url) });
}

/** `connectionsOf('postgresql://db/slate?connection_limit=3')` → `3`. */
export function connectionsOf(url: string): number {
  const named = URL.canParse(url) ? new URL(url).searchParams.get('connection_limit') : null;
  const limit = Number(named ?? CONNECTIONS);
  if (Number.isInteger(limit) && limit >= 1) return limit;
  throw new Error(
    `The connection_limit of the database is "${named}": give a whole number from 1 up, or leave it away.`,
  );
}

/**
 * The client asks several questions at once inside a transaction, which has one connection. The driver lines
 * them up still, but warns that its next version will not; so they wait here.
 */
function oneAtATime<A extends SqlDriverAdapter>(adapter: A): A {
  const start = adapter.startTransaction.bind(adapter);
  adapter.startTransaction = async (isolationLevel) => inOrder(await start(isolationLevel));
  return adapter;
}

function inOrder(transaction: Transaction): Transaction {
  let last: Promise<unknown> = Promise.resolve();
  const after = <T>(work: (query: SqlQuery) => Promise<T>) => {
    return (query: SqlQuery): Promise<T> => {
      const turn = last.then(() => work(query));
      last = turn.catch(() => undefined);
      return turn;
    };
  };
  transaction.queryRaw = after(transaction.queryRaw.bind(transaction));
  transaction.executeRaw = after(transaction.executeRaw.bind(transaction));
  return transaction;
}
