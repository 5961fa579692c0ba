import { foodPhrases, isCut, singular, type FoodPhrase } from '#lib/method/raw-words';
import type { AnimalFood } from '#lib/shoot/may-go-in-raw';

/** Animal food that words name: one of the dish's own, or one that only the words know. */
export interface NamedFood {
  /** As it is told: "chicken". */
  readonly words: string;
  /** What it is, for whoever follows it through the steps; several where the words may mean each of them. */
  readonly keys: readonly string[];
  /** Whether it is raw as long as no heat has reached it. */
  readonly mayBeRaw: boolean;
}

interface OwnFood {
  readonly id: string;
  readonly raw: boolean;
  readonly words: ReadonlySet<string>;
}

/** Words of an ingredient that name no food. */
const NO_NAME = new Set(
  (
    'boneless skinless skin bone large small medium whole fresh frozen chopped diced sliced minced ground lean about ' +
    'approx each pack packs packet piece pieces thick thin good quality free range with and the for from into cut ' +
    'tbsp tsp cup cups pound pounds ounce ounces gram grams half halves drained trimmed cubed room temperature other'
  ).split(' '),
);

/**
 * Reads the animal foods that words name, by the ingredients of the dish where they name one of them: the ingredient
 * that most of the words are of. What is no ingredient's is taken by the word alone, a cut without an animal for the
 * one that it was named with before.
 */
export function foodsInWords(foods: readonly AnimalFood[]) {
  const own = foods.flatMap((food) => ownFood(food) ?? []);
  const vocabulary = [...new Set(own.flatMap(({ words }) => [...words]))];
  const animalsOf = new Map<string, Set<string>>();

  const byIngredients = ({ words }: FoodPhrase): readonly OwnFood[] => {
    const score = (food: OwnFood) => words.filter((word) => food.words.has(word)).length;
    const best = Math.max(0, ...own.map(score));
    return best === 0 ? [] : own.filter((food) => score(food) === best);
  };
  const byWords = ({ words }: FoodPhrase): readonly string[] => {
    const animal = words.find((word) => !isCut(word));
    const cuts = words.filter(isCut);
    if (animal === undefined) {
      const with_ = [...(animalsOf.get(cuts[0] ?? '') ?? [])];
      return with_.length > 0 ? with_ : cuts.slice(0, 1);
    }
    for (const cut of cuts) animalsOf.set(cut, (animalsOf.get(cut) ?? new Set()).add(animal));
    return [animal];
  };

  const named = (phrase: FoodPhrase): NamedFood => {
    const words = phrase.words.find((word) => !isCut(word)) ?? phrase.words[0] ?? '';
    const meant = byIngredients(phrase);
    if (meant.length === 0) {
      return { words, keys: byWords(phrase), mayBeRaw: true };
    }
    const raw = meant.filter((food) => food.raw);
    const keys = (raw.length > 0 ? raw : meant).map(({ id }) => `ingredient ${id}`);
    return { words, keys, mayBeRaw: raw.length > 0 };
  };

  return {
    /** Whether an ingredient of the dish may be raw. */
    anyRaw: own.some(({ raw }) => raw),
    /** @param words folded */
    namedIn: (words: string): NamedFood[] =>
      foodPhrases(words, vocabulary)
        .filter(({ as }) => as === 'raw')
        .map(named),
  };
}

/** An ingredient with the words that may name it in a method; null where it is no animal food. */
function ownFood({ id, text, foods, raw }: AnimalFood): OwnFood | null {
  const line = text.toLowerCase();
  const inText = foodPhrases(line, []).filter(({ as }) => as !== 'other');
  if (raw === null && inText.length === 0) return null;
  const inFoods = foods.flatMap((food) => foodPhrases(food.toLowerCase(), []));
  // What the person calls it, where no list has the word: "rump cap", say.
  const [head = ''] = line.split(/[,(]| (?:with|in|and|for|of)(?= )/);
  const called = inText.length > 0 ? [] : (head.match(/[a-z]{4,}/g) ?? []).map(singular);
  const words = new Set([
    ...(raw === null ? inText : [...inText, ...inFoods]).flatMap((phrase) => phrase.words),
    ...called.filter((word) => !NO_NAME.has(word)),
  ]);
  return { id, raw: raw !== false && !isSaidReady(line), words };
}

/** Whether an ingredient's own words say that it was cooked or tinned before: "200 g rotisserie chicken". */
function isSaidReady(line: string): boolean {
  // A roast is also a joint that is bought raw.
  const found = foodPhrases(line.replaceAll(/\broast\b/g, ' '), []);
  const animal = found.filter(({ as }) => as !== 'other');
  return animal.length > 0 && animal.every(({ as }) => as === 'ready');
}
