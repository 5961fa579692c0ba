import type { Tx } from '#lib/store/client';
import { databaseFile, isPostgresUrl } from '#lib/store/database-file';

/** A statement with its values, its places in the way of the database at hand. */
export class RawSql {
  readonly #postgres = isPostgresUrl(databaseFile(process.env));
  readonly #values: (string | number)[] = [];

  /** The place of one more value: `?` or `$3`. */
  value(value: string | number): string {
    this.#values.push(value);
    return this.#postgres ? `$${this.#values.length}` : '?';
  }

  /** Places of several values, for `IN`. */
  values(values: readonly (string | number)[]): string {
    return values.map((each) => this.value(each)).join(', ');
  }

  async rows<Row>(on: Pick<Tx, '$queryRawUnsafe'>, sql: string): Promise<readonly Row[]> {
    return on.$queryRawUnsafe<Row[]>(sql, ...this.#values);
  }
}
