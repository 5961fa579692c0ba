import 'server-only';
import { recipesOf } from '#lib/episode/context';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { DayEvent } from '#lib/shoot/day-log';
import { foldScale } from '#lib/shoot/day-weighings';
import type { Display } from '#lib/shoot/scale-entries';
import type { Tx } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { filedEntries } from '#lib/store/filed-entries';
import { instantText } from '#lib/store/from-rows';
import type { ImportIds } from '#lib/store/import-ids';
import { ALIVE } from '#lib/store/load';
import { eventFrom } from '#lib/store/read-day-events';

const KINDS = ['display', 'weighed', 'struckOut'];

/** The entries of filming days at the scale; none where no display was photographed, since nothing waits then. */
export async function loadScaleEntries(
  tx: Tx,
  dayIds: readonly string[],
  creatorId: string,
): Promise<DayEvent[]> {
  if (dayIds.length === 0) return [];
  const own = { ...ALIVE, creatorId, dayId: { in: [...dayIds] } };
  const photo = await tx.dayEvent.findFirst({
    where: { ...own, kind: 'display' },
    select: { id: true },
  });
  if (photo === null) return [];
  const rows = await tx.dayEvent.findMany({ where: { ...own, kind: { in: KINDS } } });
  return rows.map(eventFrom);
}

type Photographed = NonNullable<RecipeLine['photographed']>;

/** The ingredients whose last photographed display waits for its number. */
export function photographedLines(events: readonly DayEvent[]): ReadonlyMap<string, Photographed> {
  return new Map(
    foldScale(events).displays.flatMap(({ lineId, at, sha256 }) =>
      lineId === null ? [] : [[lineId, { at: instantText(new Date(at)), sha256 }] as const],
    ),
  );
}

/**
 * What a file says was photographed, as entries of its day on the kitchen's first scale, made by a device of their own.
 * The bytes of the photos are not in a file.
 */
export function importPhotographed(file: EpisodeFile, dayId: string, ids: ImportIds): Edit[] {
  const [scale] = file.kitchen.scales;
  const lines = recipesOf(file).flatMap(({ id: recipeId, lines: all }) =>
    all.flatMap(({ id, photographed }) => (photographed ? [{ recipeId, id, photographed }] : [])),
  );
  if (scale === undefined || lines.length === 0) return [];
  const scaleId = ids.of('scale', scale.id, 'kitchen.scales[0].id');
  const entries = lines.map(({ recipeId, id, photographed }) => {
    const payload: Display = {
      recipeId: ids.of('recipe', recipeId, 'episode.segments[].recipe.id'),
      lineId: ids.of('line', id, 'episode.segments[].recipe.lines[].id'),
      of: 'raw',
      way: 'direct',
      scaleId,
      containerMg: 0,
      beforeId: null,
      sha256: photographed.sha256,
    };
    return { at: photographed.at, kind: 'display', payload: { ...payload } };
  });
  return filedEntries(dayId, entries);
}
