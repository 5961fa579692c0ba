import Database from 'better-sqlite3';
import { onPostgres } from '#db/on-postgres';
import { DEFAULT_CREATOR_ID, SHARED_CREATOR_ID } from '#lib/store/creators';
import { isPostgresUrl } from '#lib/store/database-file';

/** What a migrated database holds, asked without the client, which takes longer to load than to ask. */
export interface Contents {
  /** Whether the creator, the reference foods, an episode (perhaps removed) and a kitchen are there. */
  readonly filled: boolean;
  readonly referenceFoods: number;
  readonly episodes: number;
}

const COUNTS = {
  creators: `"Creator" WHERE "id" = '${DEFAULT_CREATOR_ID}'`,
  releases: '"ReferenceRelease"',
  everEpisodes: '"Episode"',
  kitchens: '"Kitchen"',
  referenceFoods: `"Food" WHERE "creatorId" = '${SHARED_CREATOR_ID}'`,
  episodes: '"Episode" WHERE "deletedAt" IS NULL',
} as const;

type Counts = Readonly<Record<keyof typeof COUNTS, number | string>>;

const SQL = `SELECT ${Object.entries(COUNTS)
  .map(([name, from]) => `(SELECT count(*) FROM ${from}) AS "${name}"`)
  .join(', ')}`;

/** What the database at a path or URL holds. */
export async function contentsOf(database: string): Promise<Contents> {
  const counts = isPostgresUrl(database) ? await countedAt(database) : countedIn(database);
  const parts = [counts.creators, counts.releases, counts.everEpisodes, counts.kitchens];
  return {
    filled: parts.every((n) => Number(n) > 0),
    referenceFoods: Number(counts.referenceFoods),
    episodes: Number(counts.episodes),
  };
}

function countedIn(file: string): Counts {
  // Not opened as read-only: such a connection leaves the files of its write-ahead log behind.
  const db = new Database(file, { fileMustExist: true });
  try {
    db.pragma('query_only = ON');
    return oneRow(db.prepare<[], Counts>(SQL).get());
  } finally {
    db.close();
  }
}

/** Counts of PostgreSQL are wider than a number of JavaScript and come as text. */
async function countedAt(url: string): Promise<Counts> {
  return oneRow(
    await onPostgres(url, async (connection) => (await connection.query<Counts>(SQL)).rows[0]),
  );
}

function oneRow(row: Counts | undefined): Counts {
  if (!row) throw new Error('A count of rows had no answer');
  return row;
}

/** `contentsText({ referenceFoods: 8789, episodes: 1 })` → `'8,789 reference foods, 1 episode'`. */
export function contentsText({
  referenceFoods,
  episodes,
}: Pick<Contents, 'referenceFoods' | 'episodes'>): string {
  const thousands = String(referenceFoods).replace(/\B(?=(\d{3})+$)/g, ',');
  return `${thousands} reference foods, ${episodes} ${episodes === 1 ? 'episode' : 'episodes'}`;
}
