import 'server-only';
import { PrismaClient } from '#db/generated/sqlite/client';
import { queueingAdapter } from '#lib/store/adapter';
import { databaseFile } from '#lib/store/database-file';

/** What a read or a write works on: the client, or the transaction it is in. */
export type Tx = Omit<
  PrismaClient,
  '$connect' | '$disconnect' | '$on' | '$transaction' | '$extends'
>;

interface Held {
  readonly file: string;
  readonly client: PrismaClient;
}

/** Survives the reloading of modules while developing; a second client would be a second queue. */
const held = globalThis as typeof globalThis & { slateDatabase?: Held };

/** The one client of this process, on the file that `SLATE_DATABASE` names now. */
export function database(): PrismaClient {
  const file = databaseFile(process.env);
  if (held.slateDatabase?.file !== file) {
    void held.slateDatabase?.client.$disconnect();
    held.slateDatabase = { file, client: new PrismaClient({ adapter: queueingAdapter(file) }) };
  }
  return held.slateDatabase.client;
}

/** Closes the file, so that it may be moved or deleted; the next `database()` opens it again. */
export async function closeDatabase(): Promise<void> {
  const { slateDatabase } = held;
  delete held.slateDatabase;
  await slateDatabase?.client.$disconnect();
}

/**
 * Runs work in one transaction, alone on the database: reads see one state, writes are all kept or none.
 * Inside it only `tx` may be used; the outer client would wait for itself.
 */
export function inTransaction<T>(work: (tx: Tx) => Promise<T>): Promise<T> {
  return database().$transaction(work, {
    isolationLevel: 'Serializable',
    maxWait: 60_000,
    timeout: 120_000,
  });
}
