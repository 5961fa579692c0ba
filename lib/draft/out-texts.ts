import type { EditText } from '#lib/episode/edit-schema';
import type { OutTexts } from './draft';

/** The texts of an episode that a draft is read from: of each kind the first. Cards and thumbnails say no dish. */
export function outTextsOf(texts: readonly Pick<EditText, 'kind' | 'text'>[]): OutTexts {
  const first = (kind: EditText['kind']) => texts.find((text) => text.kind === kind)?.text;
  return { captions: first('captions'), description: first('description'), title: first('title') };
}
