import { mendPlace } from '#lib/episode/edit-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Refer, Say } from '#lib/episode/recipe-references';

/**
 * Faults of the edit that a schema cannot see: a text, a reading put right or an answer given twice, a number said to
 * be of a segment or portion that the file does not have. When a dish is taken out of the store its readings go with
 * it, so no file written by the program names one that is gone.
 */
export function editProblems(
  { edit, episode: { segments } }: EpisodeFile,
  say: Say,
  refer: Refer,
): void {
  if (edit === undefined) return;
  const once = (part: string, what: string, keys: readonly string[]) => {
    keys.forEach((key, index) => {
      if (keys.indexOf(key) < index) say(`edit.${part}[${index}]`, 'duplicate', what);
    });
  };
  for (const part of ['texts', 'mends', 'named'] as const) {
    const ids = edit[part].map(({ id }) => id);
    once(part, 'the id is given twice', ids);
  }
  once(
    'mends',
    'the same words between the same words are put right once',
    edit.mends.map(mendPlace),
  );
  once(
    'named',
    'of each food there is one answer',
    edit.named.map(({ food }) => food),
  );
  const known = new Map(
    segments.map(({ id, recipe }) => [id, new Set(recipe?.portions.map((each) => each.id))]),
  );
  const texts = new Set(
    [...edit.texts, ...segments.flatMap((each) => each.talkingPoints)].map(({ id }) => id),
  );
  edit.mends.forEach(({ textId, mend }, index) => {
    refer(`edit.mends[${index}].textId`, 'text or talking point', texts, textId);
    if (mend.kind !== 'about') return;
    const { segmentId, portionId } = mend;
    const at = `edit.mends[${index}].mend`;
    refer(`${at}.segmentId`, 'segment', new Set(known.keys()), segmentId);
    const portions = known.get(segmentId ?? '') ?? new Set<string>();
    refer(`${at}.portionId`, 'portion of that segment', portions, portionId);
  });
}
