import { NO_FACTS } from '#lib/claims/edit-facts';
import type { Judged } from '#lib/claims/judged';
import { readEdit, type EditReading } from '#lib/claims/read-edit';
import type { EditText, EpisodeEdit } from '#lib/episode/edit-schema';
import type { EpisodeFile } from '#lib/episode/schema';

/** A text of an edit; captions unless another kind is given. */
export function aText(
  text: string,
  kind: EditText['kind'] = 'captions',
  id: string = kind,
): EditText {
  return { id, kind, name: id, text };
}

/** The file with some texts, and what the person said of them. */
export function edited(
  file: EpisodeFile,
  texts: readonly EditText[],
  more: Partial<EpisodeEdit> = {},
): EpisodeFile {
  return { ...file, edit: { texts: [...texts], mends: [], named: [], ...more } };
}

/** What is read of one text. */
export function readText(
  file: EpisodeFile,
  text: string,
  kind: EditText['kind'] = 'captions',
  more: Partial<EpisodeEdit> = {},
): EditReading {
  return readEdit(edited(file, [aText(text, kind)], more), NO_FACTS);
}

/** The rows of one text, talking points left out. */
export function rowsOf(
  file: EpisodeFile,
  text: string,
  kind: EditText['kind'] = 'captions',
  more: Partial<EpisodeEdit> = {},
): Judged[] {
  return readText(file, text, kind, more).judged.filter(({ place }) => place.textId === kind);
}

/** A caption file in SubRip of lines with their seconds. */
export function subRip(
  cues: readonly (readonly [fromS: number, toS: number, words: string])[],
): string {
  const clock = (s: number) => new Date(s * 1000).toISOString().slice(11, 23).replace('.', ',');
  return cues
    .map(([from, to, words], index) => `${index + 1}\n${clock(from)} --> ${clock(to)}\n${words}\n`)
    .join('\n');
}
