import { v7 as uuid } from 'uuid';
import type { EpisodeEdit, Mend } from '#lib/episode/edit-schema';
import type { Edit } from '#lib/store/command';
import { mendColumns } from '#lib/store/episode-columns';
import { create } from '#lib/store/new-row';
import type { ImportIds } from '#lib/store/import-ids';

/** The edit of a file as new rows; its segments, their portions and talking points have their ids by now. */
export function importEdit(
  { texts, mends, named }: EpisodeEdit,
  episodeId: string,
  ids: ImportIds,
): Edit[] {
  return [
    ...texts.map((text, position) =>
      create('EditText', { ...text, id: ids.mint('text', text.id), episodeId, position }),
    ),
    ...mends.map(({ textId, words, before, after, mend }, index) => {
      const at = `edit.mends[${index}]`;
      const columns = mendColumns(ofRows(mend, `${at}.mend`, ids));
      const text = textId === null ? null : textOf(textId, `${at}.textId`, ids);
      const place = { textId: text, words, before, after };
      return create('ReadingMend', { id: uuid(), episodeId, ...place, ...columns });
    }),
    ...named.map(({ food, answer }) =>
      create('NamedFood', { id: uuid(), episodeId, food, answer }),
    ),
  ];
}

/** A text of the edit, or a talking point of a segment. */
function textOf(textId: string, path: string, ids: ImportIds): string {
  return ids.known('text', textId) ?? ids.of('talkingPoint', textId, path);
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
