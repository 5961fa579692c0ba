import type { EditPage, Row } from './view';

/** What a form sends of the place of a statement. */
export function placeValues({ episodeId }: EditPage, { textId, start, end, words }: Row) {
  return { episodeId, textId, start, end, words };
}
