import { dishesOf } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import type { NumberScope } from '#lib/figures/published-numbers';
import { numberWords, type CorrectedNumber } from '#lib/publish/correction/correction-of';
import { readComment } from '#lib/publish/viewer-comment';

/** A number that stands in a text and was corrected since. */
export interface OldNumber {
  /** "846 kcal". */
  readonly was: string;
  /** "870 kcal"; null where nothing is published of it any more. */
  readonly is: string | null;
}

/** A text of the person's own that answers somebody about a dish. */
export interface AnsweringText {
  readonly text: string;
  /** Null where it is of no one dish. */
  readonly segmentId: string | null;
}

/**
 * Numbers in a text that a correction put another one in the place of. A text that has the new one too is not old: it
 * tells both. What is written without what it counts is not read, since nobody knows of what it is.
 * @param corrections the numbers of an episode's corrections, the last made first
 * @example oldNumbersIn({ text: 'it comes to 846 calories', segmentId }, file, [numbers])[0]?.is // '870 kcal'
 */
export function oldNumbersIn(
  { text, segmentId }: AnsweringText,
  { episode }: EpisodeFile,
  corrections: readonly (readonly CorrectedNumber[])[],
): readonly OldNumber[] {
  const said = readComment(text, []).filter(({ named }) => named);
  const says = ({ nutrient }: CorrectedNumber, words: string) =>
    said.some((each) => each.nutrient === nutrient && each.amount === amountOf(words));
  const dish = dishesOf(episode.segments).find(({ id }) => id === segmentId);
  const portions = dish?.recipe.portions.map(({ id }) => id) ?? [];
  const isOf = ({ scope }: CorrectedNumber) =>
    scope.kind === 'day' ||
    (scope.kind === 'portion' ? portions.includes(scope.portionId) : scope.segmentId === segmentId);
  const old = corrections.flat().filter(isOf);
  const found = old.flatMap((each): OldNumber[] => {
    // The first one is of the last correction: what it came to is what goes out now.
    const { to } = old.find(isSameAs(each)) ?? each;
    const isNow = to?.text === each.from.text;
    if (isNow || !says(each, each.from.text) || (to && says(each, to.text))) return [];
    return [{ was: numberWords(each, each.from.text), is: to && numberWords(each, to.text) }];
  });
  return [...new Map(found.map((each) => [`${each.was} ${String(each.is)}`, each])).values()];
}

/** `'846'` and `'at least 846'` are 846; `'open'` is no number. */
const amountOf = (words: string) => Number(/\d+(?:\.\d+)?/.exec(words)?.[0] ?? Number.NaN);

interface OfNumber {
  readonly nutrient: CorrectedNumber['nutrient'];
  readonly scope: NumberScope;
}

const isSameAs = (one: OfNumber) => (other: OfNumber) =>
  one.nutrient === other.nutrient && JSON.stringify(one.scope) === JSON.stringify(other.scope);

/**
 * Old numbers in one sentence's middle.
 * @example oldNumberWords([{ was: '846 kcal', is: '870 kcal' }]) // '846 kcal, which is 870 kcal now'
 */
export function oldNumberWords(old: readonly OldNumber[]): string {
  return old
    .map(({ was, is }) =>
      is === null ? `${was}, which no longer holds` : `${was}, which is ${is} now`,
    )
    .join('; ');
}
