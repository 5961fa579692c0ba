import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import type {
  SqlDriverAdapter,
  SqlDriverAdapterFactory,
  SqlQuery,
  Transaction,
} from '@prisma/driver-adapter-utils';

/**
 * The database's one connection, handed out first in, first out. While a transaction is open everything
 * else waits: with the stock adapter it would run inside that transaction, see its rows, and vanish with it
 * when it rolls back, although the caller was told that it is written.
 */
export function queueingAdapter(
  file: string,
  { busyMs = BUSY_MS }: { readonly busyMs?: number } = {},
): SqlDriverAdapterFactory {
  const stock = new PrismaBetterSqlite3({ url: file, timeout: busyMs });
  return {
    provider: 'sqlite',
    adapterName: stock.adapterName,
    async connect() {
      const connection = await open(stock, file);
      await setPragmas(connection, file, busyMs);
      return new QueueingAdapter(connection);
    },
  };
}

async function open(stock: PrismaBetterSqlite3, file: string): Promise<SqlDriverAdapter> {
  try {
    return await stock.connect();
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new Error(
      `The database ${file} could not be opened (${reason}). "npm start" makes it ready; ` +
        `SLATE_DATABASE names another file.`,
      { cause: error },
    );
  }
}

/** How long another process may hold the file before a write gives up. */
const BUSY_MS = 10_000;

/**
 * WAL lets others read while one writes; FULL keeps what was acknowledged through a power cut
 * (SQLite documentation, "PRAGMA synchronous").
 */
async function setPragmas(
  connection: SqlDriverAdapter,
  file: string,
  busyMs: number,
): Promise<void> {
  const mode = await connection.queryRaw(statement('PRAGMA journal_mode = WAL')).then(
    (answer) => String(answer.rows[0]?.[0]),
    (error: unknown) => (error instanceof Error ? error.message : String(error)),
  );
  if (mode !== 'wal' && file !== ':memory:') {
    await connection.dispose();
    throw new Error(
      `The database ${file} cannot be put into a write-ahead log (answer: "${mode}"). Close other ` +
        `programs that have it open; network and mounted folders often cannot hold one: then set ` +
        `SLATE_DATABASE to a path on a local disk.`,
    );
  }
  await connection.executeScript(
    `PRAGMA busy_timeout = ${busyMs}; PRAGMA foreign_keys = ON; PRAGMA synchronous = FULL;`,
  );
}

function statement(sql: string): SqlQuery {
  return { sql, args: [], argTypes: [] };
}

/** A place in the line; calling it lets the next one in. */
type Leave = () => void;

class QueueingAdapter implements SqlDriverAdapter {
  readonly provider = 'sqlite';
  readonly adapterName: string;
  readonly #inner: SqlDriverAdapter;
  #lastInLine: Promise<void> = Promise.resolve();

  constructor(inner: SqlDriverAdapter) {
    this.#inner = inner;
    this.adapterName = inner.adapterName;
  }

  async #enter(): Promise<Leave> {
    const before = this.#lastInLine;
    let leave: Leave = () => undefined;
    this.#lastInLine = new Promise<void>((resolve) => {
      leave = resolve;
    });
    await before;
    return leave;
  }

  async #alone<T>(work: () => Promise<T>): Promise<T> {
    const leave = await this.#enter();
    try {
      return await work();
    } finally {
      leave();
    }
  }

  queryRaw(query: SqlQuery) {
    return this.#alone(() => this.#inner.queryRaw(query));
  }

  executeRaw(query: SqlQuery) {
    return this.#alone(() => this.#inner.executeRaw(query));
  }

  executeScript(script: string) {
    return this.#alone(() => this.#inner.executeScript(script));
  }

  async startTransaction(): Promise<Transaction> {
    const leave = await this.#enter();
    try {
      // IMMEDIATE: a transaction that reads first and writes later cannot be overtaken by another process.
      await this.#inner.executeRaw(statement('BEGIN IMMEDIATE'));
    } catch (error) {
      leave();
      throw error;
    }
    return new QueueingTransaction(this.#inner, leave);
  }

  dispose() {
    return this.#alone(() => this.#inner.dispose());
  }
}

/** The client sends COMMIT or ROLLBACK as a statement, then tells us that it is over. */
class QueueingTransaction implements Transaction {
  readonly provider = 'sqlite';
  readonly adapterName: string;
  readonly options = { usePhantomQuery: false };
  readonly #inner: SqlDriverAdapter;
  readonly #leave: Leave;
  #open = true;

  constructor(inner: SqlDriverAdapter, leave: Leave) {
    this.#inner = inner;
    this.#leave = leave;
    this.adapterName = inner.adapterName;
  }

  queryRaw(query: SqlQuery) {
    return this.#inner.queryRaw(query);
  }

  async executeRaw(query: SqlQuery) {
    const changed = await this.#inner.executeRaw(query);
    if (query.sql === 'COMMIT' || query.sql === 'ROLLBACK') this.#open = false;
    return changed;
  }

  commit() {
    return this.#end();
  }

  rollback() {
    return this.#end();
  }

  /** A COMMIT that failed leaves the transaction open; the next one in line must not inherit it. */
  async #end(): Promise<void> {
    try {
      if (this.#open) {
        this.#open = false;
        await this.#inner.executeRaw(statement('ROLLBACK')).catch(() => undefined);
      }
    } finally {
      this.#leave();
    }
  }

  async createSavepoint(name: string) {
    await this.#inner.executeRaw(statement(`SAVEPOINT ${name}`));
  }

  async rollbackToSavepoint(name: string) {
    await this.#inner.executeRaw(statement(`ROLLBACK TO ${name}`));
  }

  async releaseSavepoint(name: string) {
    await this.#inner.executeRaw(statement(`RELEASE SAVEPOINT ${name}`));
  }
}
