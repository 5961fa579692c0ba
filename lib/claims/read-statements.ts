import { keepAims } from './kinds/aims';
import { amountOf } from './kinds/amounts';
import { attachNouns } from './nutrients/attach-nouns';
import { sayBareEnergy, sayColumns } from './nutrients/bare-energy';
import { sayBareMeasures } from './kinds/bare-measures';
import { sayByCounts } from './scopes/by-counts';
import { claimsOf } from './kinds/claims';
import { compareDays } from './nutrients/compare-days';
import { sayDailyValues } from './nutrients/comparisons';
import { correctNouns } from './traps/corrected-nouns';
import { withdraw } from './traps/corrections';
import { settleDifferences } from './nutrients/differences';
import { dishMentions, dishOf } from './scopes/dishes';
import { isNamedBy } from './scopes/dish-kinds';
import { emit, emitClaim, emitFood, emitFreeFrom } from './emit';
import { ENGLISH } from './english/english';
import { sayShares } from './nutrients/energy-shares';
import { sayShared } from './kinds/shared-amounts';
import { finishedOf } from './kinds/finished-weight';
import { freeFromOf } from './kinds/free-from';
import type { Language } from './language';
import { attachLate } from './nutrients/late-nouns';
import { markLists } from './nutrients/lists';
import { namedFoods } from './kinds/named-foods';
import { nutrientOf } from './nutrients/nutrient-statements';
import { sayPacks } from './kinds/packs-used';
import { portionsOf } from './kinds/portions';
import { sayPriceRows } from './kinds/price-rows';
import { priceOf } from './kinds/prices';
import type { Quantity, Said } from './numbers/quantity';
import { readQuantities } from './numbers/read-quantities';
import { sameAgain } from './kinds/same-again';
import { sayPrepared } from './kinds/same-food';
import { sayRunningSums } from './scopes/running-sums';
import { giveScopes } from './scopes/scopes';
import type { Statement, TextContext } from './statement';
import { sayFoodsNotNutrients } from './kinds/sugar-and-salt';
import { sayParts } from './nutrients/sums';
import { temperatureOf } from './kinds/temperature';
import { prepare, type Text } from './words/text';
import { timeOf } from './kinds/times';
import { sayBothScales } from './kinds/two-scales';
import { softenAll, softenParts } from './numbers/soften-all';
import { followTopics } from './nutrients/topics';
import { correctTurns } from './traps/turns';
import { sayRowsOfDay } from './nutrients/rows-of-day';
import { killTraps } from './traps/traps';
import { sayWrittenLists } from './kinds/written-lists';

/**
 * All that a text states of a dish, its parts, its making or the day, in the order of the text: numbers of nutrients,
 * amounts, temperatures, times, portions and prices, claim words, and foods that are in no ingredient. Each has its
 * place, and how it was read, step by step. Whether a number is true is not asked here; where a number could be read
 * in two ways it is left out, or marked `unsure`.
 * @param text any text, of any length; the work is in proportion to it
 * @param context where the text stands, and the dishes and ingredients that are known
 * @example readStatements('just over 35 grams of protein', { form: 'captions' })[0]
 *   // { kind: 'nutrient', nutrient: 'protein', low: 35, high: 35, unit: 'g', hedge: 'justOver', scope: 'unknown', … }
 */
export function readStatements(
  text: string,
  context: TextContext,
  language: Language = ENGLISH,
): Statement[] {
  const prepared = prepare(text, context, language);
  const claims = claimsOf(prepared);
  const attached = attachNouns(prepared, readQuantities(prepared), claims.taken);
  const quantities = attached.quantities.filter(({ from }) => !claims.taken.has(from));
  const free = [...attachLate(prepared, quantities, attached.free), ...claims.nouns];
  // Who says what they get counts and compares, which elsewhere says nothing of the dish.
  if (context.form !== 'comment') {
    killTraps(prepared, quantities);
    compareDays(prepared, quantities);
  }
  sayKinds(prepared, quantities);
  sayBothScales(prepared, quantities);
  sayShares(prepared, quantities);
  keepAims(quantities);
  const dishes = dishMentions(prepared, quantities);
  sayPriceRows(prepared, quantities);
  sayColumns(prepared, quantities, dishes);
  sayPacks(prepared, quantities);
  sayParts(prepared, quantities);
  sayWrittenLists(prepared, quantities);
  sayBareMeasures(prepared, quantities);
  sayFoodsNotNutrients(prepared, quantities);
  sayShared(prepared, quantities);
  sayPrepared(prepared, quantities);
  sayBareEnergy(prepared, quantities);
  correctNouns(prepared, quantities);
  withdraw(prepared, quantities);
  correctTurns(prepared, quantities);
  const all = [
    ...quantities,
    ...followTopics(prepared, quantities, free, dishes),
    ...sameAgain(prepared, quantities),
  ].sort((a, b) => a.begin - b.begin);
  sayBareEnergy(prepared, all);
  // What they come to may have been told by the dish alone.
  sayParts(prepared, all);
  sayByCounts(prepared, all);
  sayDailyValues(all);
  settleDifferences(prepared, all);
  sayRowsOfDay(prepared, all);
  killRunOn(prepared, all);
  softenParts(prepared, all);
  softenAll(prepared, all);
  nameDishes(prepared, all, dishes);
  sayRunningSums(prepared, all);
  giveScopes(prepared, all, dishes);
  const kept = all.filter(({ killed, said }) => killed === null && said !== null);
  const without = freeFromOf(prepared);
  const foods = namedFoods(
    prepared,
    takenBy(prepared, all, new Set([...claims.taken, ...without.taken])),
  );
  markLists(prepared, kept);
  return [
    ...kept.map((quantity) => emit(prepared, quantity)),
    ...claims.said.map((claim) => emitClaim(prepared, claim)),
    ...without.said.map((said) => emitFreeFrom(prepared, said)),
    ...foods.map((food) => emitFood(prepared, food)),
  ].sort((a, b) => a.start - b.start || a.end - b.end);
}

/** Tokens that belong to numbers and claims. */
function takenBy(
  text: Text,
  quantities: readonly Quantity[],
  claims: ReadonlySet<number>,
): Set<number> {
  const taken = new Set(claims);
  for (const { begin, end, killed, said, noun } of quantities) {
    if (killed !== null || said === null) continue;
    for (let at = begin; at < end; at += 1) taken.add(at);
    if (noun) for (let at = noun.from; at < noun.to; at += 1) taken.add(at);
    const food = said.kind === 'amount' ? text.food(end) : null;
    if (food && said.food === food.name) for (let at = end; at < food.to; at += 1) taken.add(at);
  }
  return taken;
}

/**
 * A number right behind another one that says nothing may be one number with it, cut in the wrong place: which of them,
 * nobody can say, so that neither is told.
 */
function killRunOn({ spoken, tokens }: Text, quantities: readonly Quantity[]): void {
  if (!spoken) return;
  quantities.forEach((quantity, index) => {
    const before = quantities[index - 1];
    if (!before) return;
    if (isCutOff(tokens, before, quantity)) quantity.killed ??= 'cut in two ways';
    if (before.end !== quantity.from || quantity.list) return;
    if (before.low === quantity.low) return;
    if (before.said === null && before.unit === null && before.killed === null) {
      quantity.killed ??= 'cut in two ways';
    }
  });
}

/** 'that's thirty. Six grams of protein': captions that end a sentence within a number. */
function isCutOff(
  tokens: Text['tokens'],
  before: Quantity,
  { from, low, words }: Quantity,
): boolean {
  const tens = before.words && before.low >= 20 && before.low % 10 === 0 && before.unit === null;
  const ones = words && low < 10 && Number.isInteger(low);
  const stop = before.end === from - 1 && tokens[from - 1]?.text === '.';
  return tens && ones && stop && before.said === null;
}

/** What each number says by its own unit, noun and the words around it; the first kind that fits. */
function sayKinds(text: Text, quantities: readonly Quantity[]): void {
  const before: Quantity[] = [];
  for (const quantity of quantities) {
    const last = before.at(-1);
    quantity.said = kindOf(text, quantity, before, last);
    if (quantity.said) before.push(quantity);
  }
}

function kindOf(
  text: Text,
  quantity: Quantity,
  before: readonly Quantity[],
  last: Quantity | undefined,
): Said | null {
  return (
    temperatureOf(text, quantity, last) ??
    timeOf(text, quantity, last) ??
    priceOf(text, quantity, last) ??
    nutrientOf(text, quantity, before) ??
    portionsOf(text, quantity, last) ??
    amountOf(text, quantity, last) ??
    finishedOf(text, quantity, last)
  );
}

/** Dishes other than the one that is talked about, which a number is said of. */
function nameDishes(
  text: Text,
  quantities: readonly Quantity[],
  dishes: ReturnType<typeof dishMentions>,
): void {
  for (const quantity of quantities) {
    const mention = dishOf(text, dishes, quantity);
    if (mention === null || quantity.said === null) continue;
    const { food, scope, ...said } = quantity.said;
    // 'the salmon one is 590 calories': no number of the salmon.
    const named = food !== undefined && isNamedBy(text, mention, food);
    const rest = named || scope === undefined ? said : { ...said, scope };
    const own = named || food === undefined ? rest : { ...rest, food };
    quantity.said = mention.title === null ? own : { ...own, dish: mention.title };
  }
}
