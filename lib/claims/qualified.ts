import { ENGLISH } from './english/english';
import type { NutrientStatement } from './judge/said-number';
import { stemsOf } from './words/foods';
import type { Topic } from './places/placed-text';
import type { Statement, TextContext } from './statement';

/** UTF-16 units before a number, and behind it, in which words may say of what it is. */
const BEFORE = 110;
const BEHIND = 24;
/** And in which it may be said how many dishes there are. */
const COUNTED = 170;

/**
 * A statement with what the words around it say of it beyond its own: that it is of each of several dishes; or of the
 * dish without one of its foods, or of things that were set beside it, which are no numbers of the dish.
 * @param text the text in which its offsets count
 * @example qualified(under500, 'Three lunches, all under 500 calories', {}, unknown) // { …, every: true }
 */
export function qualified(
  statement: Statement,
  text: string,
  context: TextContext,
  topic: Topic,
): Statement {
  if (statement.kind !== 'nutrient' || statement.scope === 'ingredient') return statement;
  if (statement.scope === 'compared') return statement;
  const total = totalOf(statement, text, context, topic);
  if (total) return { ...statement, scope: total };
  const before = text.slice(Math.max(0, statement.start - BEFORE), statement.start);
  const sentence = before.split(/[.!?](?:\s|$)|\n\s*\n/).at(-1) ?? '';
  if (isWithout(sentence, context.ingredients ?? []) || isOfOthers(sentence)) {
    return { ...statement, scope: 'compared', against: 'itsOwn' };
  }
  if (isOfEvery(statement, text, context, topic)) return { ...statement, every: true };
  // 'all of them are 30 calories': each of the pieces, or all together.
  const all = statement.scope === 'whole' && ENGLISH.qualifying.allOfThem.test(sentence);
  if (!all) return statement;
  return { ...statement, scope: isOneSided(statement) ? 'each' : 'dish' };
}

/** 'TOTAL: 1,795 kcal' below several dishes: of the day, or where that is in doubt of nobody knows what. */
function totalOf(
  { scope, start }: NutrientStatement,
  text: string,
  { form }: TextContext,
  { kind }: Topic,
): 'day' | 'unknown' | null {
  if (form !== 'description' || (scope !== 'whole' && scope !== 'dish')) return null;
  if (kind === 'day') return 'day';
  const line = text.slice(text.lastIndexOf('\n', start - 1) + 1).split('\n')[0] ?? '';
  return kind === 'unknown' && ENGLISH.places.total.test(line) ? 'unknown' : null;
}

const isOneSided = ({ hedge }: Pick<NutrientStatement, 'hedge'>) =>
  hedge === 'under' || hedge === 'atMost' || hedge === 'atLeast';

/** 'with the cheese, without it it's 420': a dish that nobody made, where what is left out is in this one. */
function isWithout(sentence: string, ingredients: readonly string[]): boolean {
  const food = ENGLISH.qualifying.without.exec(sentence)?.[1];
  if (food === undefined) return false;
  if (ENGLISH.qualifying.pronouns.test(food)) return true;
  const said = stemsOf(food, ENGLISH);
  return ingredients.some((name) => {
    const own = stemsOf(name, ENGLISH);
    return said.length > 0 && said.every((word) => own.includes(word));
  });
}

/** 'better than most bars, and a bar is two fifty': of what the dish was set beside. */
function isOfOthers(sentence: string): boolean {
  const [, others = '', rest = ''] = ENGLISH.qualifying.thanOthers.exec(sentence) ?? [];
  if (others === '') return false;
  const one = ENGLISH.singular(others.toLowerCase());
  const named = rest.toLowerCase().match(/\p{L}+/gu) ?? [];
  return named.some((word) => ENGLISH.singular(word) === one);
}

/** 'Three lunches, all under 500 calories', '3 lunches under 500 calories', '40 g protein each' of several. */
function isOfEvery(
  { start, end, scope, ...said }: NutrientStatement,
  text: string,
  { dishes = [] }: TextContext,
  topic: Topic,
): boolean {
  if (dishes.length < 2) return false;
  const words = ENGLISH.qualifying;
  const before = text.slice(Math.max(0, start - COUNTED), start);
  const several = words.countedDishes.test(before);
  if (topic.kind === 'dish' && !several) return false;
  const oneSided = isOneSided(said);
  // '57 grams of protein each at around 635': of those of which the amount before is said.
  if (words.amountEach.test(before)) return several;
  const all = words.allOf.exec(before);
  const verb = all?.[1] !== undefined;
  if (all && (oneSided || verb)) return true;
  const behind = text.slice(end, end + BEHIND).split(/[.!?\n,;\d]/)[0] ?? '';
  if (several && scope === 'each' && words.each.test(behind)) return true;
  return several && oneSided && words.countedRight.test(before);
}
