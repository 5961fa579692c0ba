import { shownDatabase } from '#lib/store/database-file';
import { postgresDriver } from '#lib/store/postgres-adapter';

/** One connection, for what the client cannot say: locks and scripts. */
export interface PostgresConnection {
  query<R extends object = Record<string, unknown>>(
    sql: string,
    values?: unknown[],
  ): Promise<{ rows: R[] }>;
}

/**
 * Works on one connection to PostgreSQL, closed afterwards whatever happened. A server or database that does
 * not answer is told by a sentence that says what to do.
 */
export async function onPostgres<T>(
  url: string,
  work: (connection: PostgresConnection) => Promise<T>,
): Promise<T> {
  const driver = await postgresDriver(url);
  const adapter = await driver.connect();
  try {
    const connection = await adapter
      .underlyingDriver()
      .connect()
      .catch((error: unknown) => {
        throw unreachable(url, error);
      });
    try {
      return await work(connection);
    } finally {
      // Closed, not handed back: a lock or an open transaction ends with it.
      connection.release(true);
    }
  } finally {
    await adapter.dispose();
  }
}

function unreachable(url: string, error: unknown): Error {
  // A server with several addresses answers with an error for each, and no words of its own.
  const first = error instanceof AggregateError ? (error.errors[0] as unknown) : error;
  const reason = first instanceof Error ? first.message : String(first);
  return new Error(
    `The database ${shownDatabase(url)} could not be reached (${reason}). Check that the server runs and ` +
      `that SLATE_DATABASE names its address, a database that was made there, and a user who may open it; ` +
      `or unset SLATE_DATABASE to use a file on this machine.`,
    { cause: error },
  );
}
