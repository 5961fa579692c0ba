import { v7 as uuid } from 'uuid';
import type { EpisodeEdit, Mend } from '#lib/episode/edit-schema';
import type { Edit } from '#lib/store/command';
import { mendColumns } from '#lib/store/episode-columns';
import { create } from '#lib/store/import-episode';
import type { ImportIds } from '#lib/store/import-ids';

/** The edit of a file as new rows; its segments and their portions have their ids by now. */
export function importEdit(
  { texts, mends, named }: EpisodeEdit,
  episodeId: string,
  ids: ImportIds,
): Edit[] {
  return [
    ...texts.map((text, position) =>
      create('EditText', { ...text, id: uuid(), episodeId, position }),
    ),
    ...mends.map(({ words, before, after, mend }, index) => {
      const columns = mendColumns(ofRows(mend, `edit.mends[${index}].mend`, ids));
      return create('ReadingMend', { id: uuid(), episodeId, words, before, after, ...columns });
    }),
    ...named.map(({ food, answer }) =>
      create('NamedFood', { id: uuid(), episodeId, food, answer }),
    ),
  ];
}

/** With the ids of the rows that its segment and portion have become. */
function ofRows(mend: Mend, path: string, ids: ImportIds): Mend {
  if (mend.kind !== 'about' || mend.segmentId === null) return mend;
  const segmentId = ids.of('segment', mend.segmentId, `${path}.segmentId`);
  const { portionId } = mend;
  return {
    ...mend,
    segmentId,
    portionId: portionId === null ? null : ids.of('portion', portionId, `${path}.portionId`),
  };
}
