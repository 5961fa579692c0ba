import { ENGLISH } from '#lib/claims/english/english';
import { judgeAmount } from '#lib/claims/judge-beyond/amounts';
import type {
  BeyondContext,
  BeyondDish,
  BeyondPlace,
} from '#lib/claims/judge-beyond/beyond-context';
import { judgeInside } from '#lib/claims/judge-beyond/inside';
import { judgeMinutes } from '#lib/claims/judge-beyond/minutes';
import { judgeOven } from '#lib/claims/judge-beyond/oven';
import { judgePortions } from '#lib/claims/judge-beyond/portions';
import { judgePrice } from '#lib/claims/judge-beyond/price';
import { isOfAction, judgeReadyIn } from '#lib/claims/judge-beyond/ready-in';
import { wordsAround } from '#lib/claims/judge-beyond/words-around';
import { cannotSay, plainly, worded, type Verdicted } from '#lib/claims/judge/verdicted';
import type { Statement } from '#lib/claims/statement';
import { amountContext, type AmountContext } from '#lib/episode/context';

/** Kinds of statements that are held against ingredients, steps, portions, prices or the log. */
const BEYOND: readonly Statement['kind'][] = [
  'amount',
  'ovenTemperature',
  'insideTemperature',
  'minutes',
  'readyIn',
  'portions',
  'price',
];
export type BeyondStatement = Exclude<
  Statement,
  { readonly kind: 'nutrient' | 'claimWord' | 'freeFrom' | 'foodNamed' }
>;

/** Whether a statement is one of these. */
export function isBeyond(statement: Statement): statement is BeyondStatement {
  return BEYOND.includes(statement.kind);
}

/**
 * A statement beyond nutrition held against what the episode has of it. It agrees only where its meaning is certain;
 * where it could be of several steps, portions or dishes, it is off only if it is off for each (MODEL D.1, D.2).
 * @param place the dishes that it may be about and the text in which the statement stands
 * @example judgeBeyond('I used 220 grams of chicken', …) // off: '248 g on your scale', '28 g less than on your scale'
 */
export function judgeBeyond(
  statement: BeyondStatement,
  place: BeyondPlace,
  context: BeyondContext,
): Verdicted {
  const dishes = dishesAt(place, context);
  const [only, ...others] = dishes;
  if (isOfDay(statement)) return plainly(judgeOn(statement, null, place, context));
  if (!only) return cannotSay('which dish?');
  if (others.length === 0) return plainly(judgeOn(statement, only, place, context));
  const all: Verdicted[] = [];
  for (const dish of dishes) {
    const verdicted = judgeOn(statement, dish, place, context);
    if (verdicted.verdict !== 'off') return cannotSay('which dish?');
    all.push(verdicted);
  }
  const whys = all.map(({ why }, at) => `${dishes[at]?.dish.title ?? ''}: ${why}`).join('; ');
  const [first] = all;
  return first
    ? { ...plainly(first), why: whys, difference: null, sayInstead: null }
    : cannotSay('which dish?');
}

const dishesAt = ({ dish, among }: BeyondPlace, { dishes }: BeyondContext) =>
  dish ? [dish] : (among ?? dishes);

/** Whether any number in the place of a statement’s could agree: of one of several dishes none does. */
export function mayAgreeBeyond(
  statement: BeyondStatement,
  place: BeyondPlace,
  context: BeyondContext,
): boolean {
  return isOfDay(statement) || dishesAt(place, context).length === 1;
}

/** Whether a statement agrees, without any words: to try other numbers in its place. */
export function agreesBeyond(
  statement: BeyondStatement,
  place: BeyondPlace,
  context: BeyondContext,
): boolean {
  if (!mayAgreeBeyond(statement, place, context)) return false;
  const [only = null] = dishesAt(place, context);
  const dish = isOfDay(statement) ? null : only;
  return judgeOn(statement, dish, place, context).verdict === 'agrees';
}

const isOfDay = (statement: BeyondStatement) =>
  statement.kind === 'price' && statement.scope === 'day';

function judgeOn(
  statement: BeyondStatement,
  dish: BeyondDish | null,
  place: BeyondPlace,
  context: BeyondContext,
): Verdicted {
  const held = heldOn(statement, dish, place, context);
  if (!statement.unsure || held.verdict === 'unknown') return held;
  // Another reading was possible: nobody knows how that would fare.
  return worded('unknown', () =>
    cannotSay(`it could be read in two ways. As it was read: ${held.why}`, {
      remark: 'toConfirm',
      against: held.against,
    }),
  );
}

function heldOn(
  statement: BeyondStatement,
  dish: BeyondDish | null,
  place: BeyondPlace,
  context: BeyondContext,
): Verdicted {
  if (statement.kind === 'price') return judgePrice(statement, dish, context, amountsOf(context));
  if (!dish) return cannotSay('which dish?');
  switch (statement.kind) {
    case 'amount':
      return judgeAmount(statement, dish, place, amountsOf(context));
    case 'ovenTemperature':
      return judgeOven(statement, dish, wordsAround(place, statement).stems, context);
    case 'insideTemperature':
      return judgeInside(statement, dish, wordsAround(place, statement), context);
    case 'minutes':
      return judgeMinutes(statement, dish, wordsAround(place, statement), place.inAll);
    case 'readyIn': {
      const around = wordsAround(place, statement);
      return isOfAction(statement, around)
        ? judgeMinutes(statement, dish, around, place.inAll)
        : judgeReadyIn(statement, dish);
    }
    case 'portions': {
      const held = judgePortions(statement, dish, amountsOf(context));
      return held.verdict === 'off' && isOfDishes(statement, context)
        ? cannotSay(`portions of ${dish.dish.title}, or the dishes of this episode?`)
        : held;
    }
  }
}

/** Whether as many meals are said as the episode has dishes: 'I have three meals for you'. */
function isOfDishes({ words, low, high }: BeyondStatement, { dishes }: BeyondContext): boolean {
  const all = dishes.length;
  return all > 1 && low === all && high === all && ENGLISH.patterns.meals.test(words);
}

const kept = new WeakMap<BeyondContext, AmountContext>();

/** What amounts are read against, looked up once for all statements of a file. */
function amountsOf(context: BeyondContext): AmountContext {
  const known = kept.get(context);
  if (known) return known;
  const made = amountContext(context.file);
  kept.set(context, made);
  return made;
}
