import type { PlacedStatement } from '#lib/claims/contradict/contradiction';
import { groupedBy } from '#lib/claims/contradict/grouped-by';
import { ENGLISH } from '#lib/claims/english/english';
import { onceFor } from '#lib/claims/once-for';
import { stemsOf } from '#lib/claims/words/foods';
import { unitText } from '#lib/claims/judge-beyond/amount-words';
import { matchingLines } from '#lib/claims/judge-beyond/matching-lines';
import { plain } from '#lib/claims/judge-beyond/number-words';
import { placeOf, type PlacedText } from '#lib/claims/places/placed-text';
import type { StatementPlace } from '#lib/claims/judged';
import type { Statement } from '#lib/claims/statement';
import { amountContext, dishesOf, type AmountContext, type Dish } from '#lib/episode/context';
import type { NamedFood } from '#lib/episode/edit-schema';
import { readIngredient } from '#lib/episode/read-ingredient';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { fold } from '#lib/units/plain-words';

/** A place at which a food is named. */
interface FoodPlace {
  readonly place: StatementPlace;
  /** As it stands there, in UTF-16 units of its text. */
  readonly start: number;
  readonly end: number;
  readonly words: string;
}

/** A food that is named or used and is in no ingredient. */
export interface NotCounted {
  /** Its name, folded: by it an answer is kept. */
  readonly food: string;
  /** As it is named first. */
  readonly words: string;
  /** Every place at which it is named, text by text. */
  readonly places: readonly FoodPlace[];
  /** The dishes that are talked about there. */
  readonly segmentIds: readonly string[];
  /** What the person said of it; null while nobody has. */
  readonly answer: NamedFood['answer'] | null;
  /** The row in which it was said, maybe by another spelling of the food; null while there is none. */
  readonly answerId: string | null;
  /** What an ingredient of it would begin with: its words, with the amount where one is said, and the dish. */
  readonly add: { readonly text: string; readonly segmentId: string | null };
}

/** What was read of an episode’s texts, as far as foods go. */
export interface FoodReading {
  readonly texts: readonly PlacedText[];
  readonly foods: readonly PlacedStatement[];
  /** Of these the amounts of foods. */
  readonly judged: readonly PlacedStatement[];
}

type File = Pick<EpisodeFile, 'episode' | 'foods' | 'recipes' | 'packs' | 'kitchen' | 'edit'>;

/**
 * Foods that are named, or used in an amount, and are in no ingredient of the dish in force, each once with all its
 * places, in the order in which they are first named, with what the person said of them.
 * @example namedNotCounted(readEdit(file, facts), file)[0] // { food: 'sour cream', places: […], answer: null, … }
 */
export function namedNotCounted({ texts, foods, judged }: FoodReading, file: File): NotCounted[] {
  const used = usedNotCounted(judged, file);
  const order = new Map(texts.map(({ said }, index) => [said.id, index]));
  const mentions = [...foods.flatMap(named), ...used].sort(
    (a, b) =>
      (order.get(a.row.place.textId) ?? 0) - (order.get(b.row.place.textId) ?? 0) ||
      a.row.statement.start - b.row.statement.start,
  );
  const groups = groupedBy(mentions, ({ food }) => stemsOf(food, ENGLISH).join(' '));
  const answers = new Map(file.edit?.named.map((named) => [named.food, named]));
  const searched = new Map(texts.map((text) => [text.said.id, searchedIn(text)]));
  const dishes = dishesOf(file.episode.segments);
  const context = amountContext(file);
  const isCountedIn = (food: string, segmentId: string | null) =>
    dishes.some((dish) => dish.id === segmentId && isIn(food, dish, context));
  return [...groups.values()].flatMap(
    (all) => notCounted(all, searched, answers, isCountedIn) ?? [],
  );
}

interface Mention {
  readonly row: PlacedStatement;
  readonly food: string;
  /** “30 g butter”. */
  readonly text: string;
}

function named(row: PlacedStatement): Mention[] {
  const { statement } = row;
  return statement.kind === 'foodNamed'
    ? [{ row, food: statement.food, text: statement.food }]
    : [];
}

/** Amounts of foods that fit no ingredient of the dish in force; of any dish where nobody knows which. */
function usedNotCounted(judged: readonly PlacedStatement[], file: File): Mention[] {
  const dishes = dishesOf(file.episode.segments);
  if (dishes.length === 0) return [];
  const context = amountContext(file);
  return judged.flatMap((row) => {
    const { statement, place } = row;
    if (statement.kind !== 'amount' || statement.food === undefined) return [];
    const own = dishes.filter(({ id }) => place.segmentId === null || id === place.segmentId);
    const { food } = statement;
    if (isUncounted(food) || own.some((dish) => isIn(food, dish, context))) return [];
    return [{ row, food, text: amountOf(statement, food) }];
  });
}

/** Water and the like, which no ingredient counts. */
const isUncounted = (food: string) => {
  const [only, ...others] = stemsOf(food, ENGLISH);
  return only !== undefined && others.length === 0 && ENGLISH.foods.uncounted.has(only);
};

/** Recipes that ingredients are made from are looked into so deep. */
const DEEPEST = 4;

const isFoodWord = (word: string) => {
  const { heads, modifiers } = ENGLISH.foods;
  const one = ENGLISH.singular(fold(word));
  return heads.has(one) || modifiers.has(one);
};

function isIn(food: string, dish: Dish, context: AmountContext, depth = 0): boolean {
  if (matchingLines(food, dish, context).length > 0) return true;
  // 'browned turkey left' is turkey.
  const known = food.split(' ').filter(isFoodWord).join(' ');
  if (known !== '' && known !== food && matchingLines(known, dish, context).length > 0) return true;
  const said = stemsOf(food, ENGLISH);
  const whole = said.join(' ');
  if (dish.recipe.lines.some((line) => whole !== '' && gotOf(line, context) === whole)) return true;
  // What is left of the stew is no ingredient of the stew.
  const title = stemsOf(dish.title, ENGLISH);
  if (depth === 0 && said.every((word) => title.includes(word))) return true;
  if (depth === DEEPEST) return false;
  return dish.recipe.lines.some(({ madeFrom }) => {
    const recipe = context.recipes.get(madeFrom?.recipeId ?? '');
    return recipe !== undefined && isIn(food, { ...dish, recipe }, context, depth + 1);
  });
}

/** The food that an ingredient is got of and names, as its words are compared: 'lemon' of 'juice of 1/2 lemon'. */
const gotOf = onceFor(({ text }: RecipeLine, _: AmountContext): string => {
  const [read] = readIngredient(text);
  const words = stemsOf(read?.food ?? '', ENGLISH);
  const isGot = / of /i.test(text) && ENGLISH.foods.gotOf.has(words.at(-1) ?? '');
  return isGot ? words.slice(0, -1).join(' ') : '';
});

function amountOf(
  statement: Extract<Statement, { readonly kind: 'amount' }>,
  food: string,
): string {
  const { low, high, unit, scope, words } = statement;
  if (scope !== 'dish' && scope !== 'whole') return food;
  const number = low === high ? plain(low) : `${plain(low)}–${plain(high)}`;
  if (unit !== 'piece') return `${number} ${unitText(unit, high)} ${food}`;
  // 'a spoon of chili oil' is no piece of it.
  return / of /i.test(words) ? food : `${number} ${food}`;
}

function notCounted(
  mentions: readonly Mention[],
  texts: SearchedTexts,
  answers: ReadonlyMap<string, NamedFood>,
  isCountedIn: IsCountedIn,
): NotCounted | null {
  const [first] = mentions;
  if (!first) return null;
  const names = [...new Set(mentions.map(({ food }) => keyOf(food)))];
  const places = placesOf(mentions, texts, isCountedIn);
  const answered = names.flatMap((name) => answers.get(name) ?? [])[0];
  const amount = mentions.find(({ food, text }) => text !== food) ?? first;
  return {
    food: keyOf(first.food),
    words: first.food,
    places,
    segmentIds: [...new Set(places.flatMap(({ place }) => place.segmentId ?? []))],
    answer: answered?.answer ?? null,
    answerId: answered?.id ?? null,
    add: { text: amount.text, segmentId: amount.row.place.segmentId },
  };
}

/** Whether a dish has a food among its ingredients. */
type IsCountedIn = (food: string, segmentId: string | null) => boolean;

/** A food’s name as an answer keeps it. */
export const keyOf = (food: string): string => fold(food).trim().slice(0, 120);

/**
 * Every place of a food: those that were read, and the same words wherever else they stand in a text in which it was
 * read, since it is told at its first mention alone; not where they are said of a dish that has it.
 */
function placesOf(
  mentions: readonly Mention[],
  texts: SearchedTexts,
  isCountedIn: IsCountedIn,
): FoodPlace[] {
  const byText = groupedBy(mentions, ({ row }) => row.place.textId);
  return [...texts].flatMap(([textId, text]) => {
    const own = byText.get(textId) ?? [];
    if (own.length === 0) return [];
    const read = own.map(({ row: { place, statement } }): FoodPlace => {
      const { start, end, words } = statement;
      return { place, start, end, words };
    });
    const again = [...new Set(own.map(({ food }) => food))].flatMap((food) =>
      text.occurrences(food).flatMap(({ start, end }): FoodPlace[] => {
        const words = text.of.text.slice(start, end);
        const place = placeOf(text.of, start, end);
        return isCountedIn(food, place.segmentId) ? [] : [{ place, start, end, words }];
      }),
    );
    return [...read, ...apartFrom(read, again)].sort((a, b) => a.start - b.start);
  });
}

/** Those of some places that share nothing with any of others. */
function apartFrom(others: readonly FoodPlace[], places: readonly FoodPlace[]): FoodPlace[] {
  const sorted = [...others].sort((a, b) => a.start - b.start);
  let last = -Infinity;
  const ends = sorted.map(({ end }) => (last = Math.max(last, end)));
  return places.filter(({ start, end }) => {
    // Of those that begin before its end none may end behind its start.
    const before = countBefore(sorted, end);
    return before === 0 || (ends[before - 1] ?? -Infinity) <= start;
  });
}

/** How many of a row begin before a place. */
function countBefore(sorted: readonly { readonly start: number }[], place: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle]?.start ?? 0) < place) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Texts by their ids, in which the words of foods are looked for. */
type SearchedTexts = ReadonlyMap<string, ReturnType<typeof searchedIn>>;

/** A text with the places of its words, gathered when the first food is looked for. */
function searchedIn(of: PlacedText) {
  let places: ReadonlyMap<string, readonly number[]> | null = null;
  return {
    of,
    occurrences: (food: string) => occurrences(of.text, food, (places ??= wordPlaces(of.text))),
  };
}

/** Where each word begins, in lower case. */
function wordPlaces(text: string): ReadonlyMap<string, readonly number[]> {
  const places = new Map<string, number[]>();
  for (const { index, 0: word } of text.matchAll(/[\p{L}\p{N}]+/gu)) {
    const key = word.toLowerCase();
    const known = places.get(key);
    if (known) known.push(index);
    else places.set(key, [index]);
  }
  return places;
}

/** Where the words of a food stand, whole, in the singular or with an ‘s’; only where its first word does. */
function occurrences(
  text: string,
  food: string,
  places: ReadonlyMap<string, readonly number[]>,
): { readonly start: number; readonly end: number }[] {
  const first = (/^[\p{L}\p{N}]+/u.exec(food)?.[0] ?? '').toLowerCase();
  if (first === '') return [];
  const words = food.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/[\s-]+/g, '[\\s-]+');
  const pattern = new RegExp(`${words}(?:e?s)?(?![\\p{L}\\p{N}])`, 'iuy');
  const starts = [first, `${first}s`, `${first}es`].flatMap((word) => places.get(word) ?? []);
  let behind = 0;
  return starts
    .sort((a, b) => a - b)
    .flatMap((start) => {
      pattern.lastIndex = start;
      if (start < behind || !pattern.test(text)) return [];
      behind = pattern.lastIndex;
      return [{ start, end: behind }];
    });
}
