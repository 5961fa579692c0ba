import Database from 'better-sqlite3';
import { DEFAULT_CREATOR_ID, SHARED_CREATOR_ID } from '#lib/store/creators';

/** What a migrated database holds, asked without the client, which takes longer to load than to ask. */
export interface Contents {
  /** Whether the creator, the reference foods, an episode (perhaps removed) and a kitchen are there. */
  readonly filled: boolean;
  readonly referenceFoods: number;
  readonly episodes: number;
}

export function contentsOf(file: string): Contents {
  // Not opened as read-only: such a connection leaves the files of its write-ahead log behind.
  const db = new Database(file, { fileMustExist: true });
  try {
    db.pragma('query_only = ON');
    const count = (from: string, ...given: string[]) =>
      db.prepare<string[], { n: number }>(`SELECT count(*) AS n FROM ${from}`).get(...given)?.n ??
      0;
    const parts = ['"ReferenceRelease"', '"Episode"', '"Kitchen"'].map((table) => count(table));
    return {
      filled:
        count('"Creator" WHERE "id" = ?', DEFAULT_CREATOR_ID) > 0 && parts.every((n) => n > 0),
      referenceFoods: count('"Food" WHERE "creatorId" = ?', SHARED_CREATOR_ID),
      episodes: count('"Episode" WHERE "deletedAt" IS NULL'),
    };
  } finally {
    db.close();
  }
}

/** `contentsText({ referenceFoods: 8789, episodes: 1 })` → `'8,789 reference foods, 1 episode'`. */
export function contentsText({
  referenceFoods,
  episodes,
}: Pick<Contents, 'referenceFoods' | 'episodes'>): string {
  const thousands = String(referenceFoods).replace(/\B(?=(\d{3})+$)/g, ',');
  return `${thousands} reference foods, ${episodes} ${episodes === 1 ? 'episode' : 'episodes'}`;
}
