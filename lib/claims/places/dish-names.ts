import { ENGLISH } from '#lib/claims/english/english';
import { headOf, isNumber, namesNothing, withoutCounts } from '#lib/claims/words/title-names';
import { words } from '#lib/foods/search-text';

/** A dish as a text may name it: the words of its title, and the one that names it best. */
export interface DishName {
  readonly segmentId: string;
  readonly stems: readonly string[];
  /** Empty where no word of the title could name a dish: it is never named then. */
  readonly head: string;
  /** The number behind its last word, which tells it from others: '2' of “Bowl 2”. */
  readonly number: string | null;
}

/**
 * What a text may call each dish. Numbers, “one” and “it” are no names, nor is what stands in brackets with one of them:
 * of “Flatbread (1 big one)” only the flatbread is.
 */
export function dishNames(
  dishes: readonly { readonly id: string; readonly title: string }[],
): DishName[] {
  return dishes.map(({ id, title }) => {
    const stems = stemsOf(withoutCounts(title, ENGLISH));
    const names = stems.filter((stem) => !namesNothing(stem, ENGLISH));
    const head = headOf(names, ENGLISH);
    return { segmentId: id, stems: names, head, number: numberBehind(title, head) };
  });
}

/** The number that a title ends with, right behind the word that names the dish: not that of “Dinner for 2”. */
function numberBehind(title: string, head: string): string | null {
  const [before = '', last = ''] = (title.toLowerCase().match(/[\p{L}\d]+/gu) ?? []).slice(-2);
  return isNumber(last, ENGLISH) && stemsOf(before)[0] === head ? last : null;
}

const stemsOf = (text: string) => words(text).map(({ stem }) => stem);

/**
 * The one dish whose name stands in some words: all of its title, else the most words of it with the last among them.
 * Null where none does, or two do alike.
 * @example dishNamed('First up, the barley skillet', names) // the skillet, of “Barley skillet” and “Skyr pots”
 */
export function dishNamed(text: string, names: readonly DishName[]): DishName | null {
  const said = stemsOf(text);
  const found = names
    .map((name) => ({ name, words: sharedWords(name, said) }))
    .filter((each) => each.words > 0)
    .sort((a, b) => b.words - a.words);
  const [first, second] = found;
  return first && first.words !== second?.words ? first.name : null;
}

/** All dishes whose name stands in some words. */
export function dishesNamed(text: string, names: readonly DishName[]): DishName[] {
  const said = stemsOf(text);
  return names.filter((name) => sharedWords(name, said) > 0);
}

/** Words of a title that are said, where the one that names it is among them, with its number behind it; else 0. */
function sharedWords({ stems, head, number }: DishName, said: readonly string[]): number {
  const isSaid =
    number === null
      ? said.includes(head)
      : said.some(
          (stem, at) => stem === head && (said[at + 1] === number || said[at + 2] === number),
        );
  if (head === '' || !isSaid) return 0;
  return stems.filter((stem) => said.includes(stem)).length;
}
