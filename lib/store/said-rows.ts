import 'server-only';
import type { SaidLine, SaidScope } from '#lib/episode/said-line';
import type { EpisodeFile } from '#lib/episode/schema';
import { foldSaid } from '#lib/shoot/fold-said';
import type { Tx } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { filedEntries } from '#lib/store/filed-entries';
import { instantText } from '#lib/store/from-rows';
import type { ImportIds } from '#lib/store/import-ids';
import { ALIVE } from '#lib/store/load';
import { eventFrom } from '#lib/store/read-day-events';

/**
 * The entries of an episode's filming days by which lines were said, or not said after all. Another episode may be
 * filmed on a day too: a line of a dish is told by its segment, and one of the whole day is of the episode that the day
 * was made for, since none is said any more once there are two.
 */
export async function loadSaid(
  tx: Tx,
  episodeId: string,
  dayIds: readonly string[],
  creatorId: string,
): Promise<SaidRow[]> {
  if (dayIds.length === 0) return [];
  const own = { ...ALIVE, creatorId, dayId: { in: [...dayIds] } };
  const kinds = { in: ['said', 'unsaid'] };
  const rows = await tx.dayEvent.findMany({ where: { ...own, kind: kinds } });
  if (rows.length === 0) return [];
  // One that was taken off the day, or removed, was there all the same.
  const ofDays = await tx.dayEpisode.findMany({
    where: { creatorId, dayId: { in: [...dayIds] } },
    orderBy: { id: 'asc' },
    select: { dayId: true, episodeId: true },
  });
  const firstOf = new Map<string, string>();
  for (const each of ofDays) {
    if (!firstOf.has(each.dayId)) firstOf.set(each.dayId, each.episodeId);
  }
  return rows.filter((row) => {
    const event = eventFrom(row);
    const ofDay = event.kind === 'said' && event.payload.scope.kind === 'day';
    return !ofDay || firstOf.get(row.dayId) === episodeId;
  });
}

type SaidRow = Awaited<ReturnType<Tx['dayEvent']['findMany']>>[number];

/** What those entries leave standing of the segments that are there. */
export function saidOf(rows: readonly SaidRow[], segments: ReadonlySet<string>): SaidLine[] {
  return foldSaid(rows.map(eventFrom))
    .filter(({ scope }) => scope.kind === 'day' || segments.has(scope.segmentId))
    .map((line) => ({ ...line, at: instantText(new Date(line.at)) }));
}

/** What a file says was said, as entries of its day, made by a device of their own. */
export function importSaid(said: EpisodeFile['said'], dayId: string, ids: ImportIds): Edit[] {
  const entries = said.map(({ id, at, scope, text, numbers }, index) => {
    const about = scopeOf(scope, `said[${index}].scope`, ids);
    return {
      id: ids.fresh(id),
      at,
      kind: 'said',
      payload: { scope: about, text, numbers: [...numbers] },
    };
  });
  return filedEntries(dayId, entries);
}

function scopeOf(scope: SaidScope, path: string, ids: ImportIds): SaidScope {
  if (scope.kind === 'day') return scope;
  const segmentId = ids.of('segment', scope.segmentId, `${path}.segmentId`);
  if (scope.kind !== 'portion') return { ...scope, segmentId };
  // It may have been taken out since: then the line is about a portion that nothing has.
  return { ...scope, segmentId, portionId: ids.mint('portion', scope.portionId) };
}
