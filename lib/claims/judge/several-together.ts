import { ENGLISH } from '#lib/claims/english/english';
import { dishesNamed, type DishName } from '#lib/claims/places/dish-names';
import type { Statement } from '#lib/claims/statement';
import { words as stemsIn } from '#lib/foods/search-text';

/** UTF-16 units before a number in which it may be said that several dishes are added. */
const BEFORE = 190;

/** Parts that do not say of one dish, or of how much of it, a number is. */
const SCOPES: ReadonlySet<string> = new Set(['dish', 'whole', 'unknown', 'day']);
const PARTS: ReadonlySet<string> = new Set(['portion', 'each', 'slice']);

/** Several dishes of which a number is said together. */
export interface Together {
  /** Empty where nobody knows which. */
  readonly segmentIds: readonly string[];
  /** One portion of each is named: 'one chili mac, one fajita bowl'. */
  readonly oneOfEach: boolean;
}

/**
 * The dishes that a number is the sum of, by the words of its sentence before it: 'eat all three, one pot of each'.
 * Null where nothing says that dishes are added.
 * @example severalTogether('If you have both of them today, a stew and a flan, that is 900 calories', said900, names)
 */
export function severalTogether(
  text: string,
  statement: Statement,
  names: readonly DishName[],
): Together | null {
  if (statement.kind !== 'nutrient' || statement.every || names.length < 2) return null;
  const { scope, start, food } = statement;
  if (food !== undefined || (!SCOPES.has(scope) && !PARTS.has(scope))) return null;
  const words = ENGLISH.qualifying;
  const before = text.slice(Math.max(0, start - BEFORE), start);
  const sentence = before.split(/[.!?](?:\s|$)|\n\s*\n/).at(-1) ?? '';
  const said = words.together.exec(sentence);
  if (!said || !words.added.test(sentence)) return null;
  const named = bestNamed(sentence.slice(said.index), names);
  const count = countOf(words.ofAll.exec(sentence)?.[0] ?? '');
  // 'It all adds up to 1400 for the day' is of the day.
  if (scope === 'day' && count === null) return null;
  const which =
    named.length > 1 ? named : count === names.length && named.length === 0 ? names : null;
  if (which === null || (count !== null && count !== which.length)) {
    // 'I ate all of it' is of one dish.
    return count === null ? null : { segmentIds: [], oneOfEach: false };
  }
  const ones = [...sentence.slice(said.index).replace(words.aDay, '').matchAll(words.oneOf)];
  const oneOfEach = named.length > 1 && ones.length >= which.length;
  // 'one stew, one flan, that is': the part is what was listed, and the number is of all of them.
  const listed = oneOfEach && count !== null && words.soThat.test(sentence);
  if (PARTS.has(scope) && !listed) return null;
  return {
    segmentIds: which.map(({ segmentId }) => segmentId),
    oneOfEach,
  };
}

/** The dishes that are named; of those with the same last word only the one that has most of the words. */
function bestNamed(text: string, names: readonly DishName[]): readonly DishName[] {
  const said = new Set(stemsIn(text).map(({ stem }) => stem));
  const shared = ({ stems }: DishName) => stems.filter((stem) => said.has(stem)).length;
  const named = dishesNamed(text, names);
  return named.filter((one) =>
    named.every((other) => other.head !== one.head || shared(other) <= shared(one)),
  );
}

/** 'all three of them' → 3, 'both' → 2; null where no number is said. */
function countOf(words: string): number | null {
  if (/\bboth\b/i.test(words)) return 2;
  const last = words.toLowerCase().trim().split(/\s+/).at(-1) ?? '';
  const number = ENGLISH.numbers.cardinals.get(last) ?? Number(last);
  return Number.isInteger(number) && number > 1 ? number : null;
}
