import { words } from '#lib/foods/search-text';

/** A dish as a text may name it: the words of its title, and the one that names it best. */
export interface DishName {
  readonly segmentId: string;
  readonly stems: readonly string[];
  readonly head: string;
}

/** What a text may call each dish. */
export function dishNames(
  dishes: readonly { readonly id: string; readonly title: string }[],
): DishName[] {
  return dishes.map(({ id, title }) => {
    const stems = words(title).map(({ stem }) => stem);
    return { segmentId: id, stems, head: stems.at(-1) ?? '' };
  });
}

/**
 * The one dish whose name stands in some words: all of its title, else the most words of it with the last among them.
 * Null where none does, or two do alike.
 * @example dishNamed('First up, the barley skillet', names) // the skillet, of “Barley skillet” and “Skyr pots”
 */
export function dishNamed(text: string, names: readonly DishName[]): DishName | null {
  const said = new Set(words(text).map(({ stem }) => stem));
  const found = names
    .map((name) => ({ name, words: sharedWords(name, said) }))
    .filter((each) => each.words > 0)
    .sort((a, b) => b.words - a.words);
  const [first, second] = found;
  return first && first.words !== second?.words ? first.name : null;
}

/** All dishes whose name stands in some words. */
export function dishesNamed(text: string, names: readonly DishName[]): DishName[] {
  const said = new Set(words(text).map(({ stem }) => stem));
  return names.filter((name) => sharedWords(name, said) > 0);
}

/** Words of a title that are said, where its last one is among them; else 0. */
function sharedWords({ stems, head }: DishName, said: ReadonlySet<string>): number {
  if (head === '' || !said.has(head)) return 0;
  return stems.filter((stem) => said.has(stem)).length;
}
