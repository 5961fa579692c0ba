import 'server-only';
import { isDriverAdapterError } from '@prisma/driver-adapter-utils';
import { getPrismaClientClass } from '#db/generated/postgresql/internal/class';
import { Prisma, PrismaClient } from '#db/generated/sqlite/client';
import { queueingAdapter } from '#lib/store/adapter';
import { databaseFile, isPostgresUrl } from '#lib/store/database-file';
import { postgresAdapter } from '#lib/store/postgres-adapter';

/** What a read or a write works on: the client, or the transaction it is in. */
export type Tx = Omit<
  PrismaClient,
  '$connect' | '$disconnect' | '$on' | '$transaction' | '$extends'
>;

interface Held {
  readonly database: string;
  readonly client: PrismaClient;
}

/** Survives the reloading of modules while developing; a second client would be a second queue. */
const held = globalThis as typeof globalThis & { slateDatabase?: Held };

/** The one client of this process, on the database that `SLATE_DATABASE` names now. */
export function database(): PrismaClient {
  const named = databaseFile(process.env);
  if (held.slateDatabase?.database !== named) {
    void held.slateDatabase?.client.$disconnect();
    const client = isPostgresUrl(named) ? onPostgres(named) : onFile(named);
    held.slateDatabase = { database: named, client };
  }
  return held.slateDatabase.client;
}

function onFile(file: string): PrismaClient {
  return new PrismaClient({ adapter: queueingAdapter(file) });
}

/** Both clients come from the same models, so the rest of the program sees the types of one. */
function onPostgres(url: string): PrismaClient {
  const Client = getPrismaClientClass();
  return new Client({ adapter: postgresAdapter(url) }) as unknown as PrismaClient;
}

/** Closes the database, so that it may be moved or deleted; the next `database()` opens it again. */
export async function closeDatabase(): Promise<void> {
  const { slateDatabase } = held;
  delete held.slateDatabase;
  await slateDatabase?.client.$disconnect();
}

/** Beginnings of one transaction at most; between them less than two seconds pass in all. */
const ATTEMPTS = 10;

/**
 * Runs work in one transaction: reads see one state, writes are all kept or none. SQLite runs one at a time;
 * PostgreSQL runs several as if one at a time, and where it cannot it asks to begin again, so the work must
 * change nothing outside. Inside it only `tx` may be used; the outer client would wait for itself.
 */
export async function inTransaction<T>(work: (tx: Tx) => Promise<T>): Promise<T> {
  for (let attempt = 1; ; attempt++) {
    try {
      return await database().$transaction(work, {
        isolationLevel: 'Serializable',
        maxWait: 60_000,
        timeout: 120_000,
      });
    } catch (error) {
      if (!asksToBeginAgain(error) || attempt === ATTEMPTS) throw error;
      // By chance, so that those who were in each other's way do not meet again.
      const pause = Math.random() * Math.min(2 ** attempt * 5, 250);
      await new Promise((resolve) => setTimeout(resolve, pause));
    }
  }
}

/**
 * "Transaction failed due to a write conflict or a deadlock. Please retry your transaction" (Prisma, P2034).
 * Where a raw statement or the commit itself is refused, the client passes the driver's error on.
 */
function asksToBeginAgain(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  if (isDriverAdapterError(error)) return error.cause.kind === 'TransactionWriteConflict';
  if (!(error instanceof Prisma.PrismaClientKnownRequestError)) return false;
  return error.code === 'P2034' || asksToBeginAgain(error.meta?.driverAdapterError);
}
