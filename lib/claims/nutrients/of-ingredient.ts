import { markBefore, markBehind, sentenceStart } from '../words/context';
import { subjectFood, isAllOf } from '../kinds/subject-food';
import { isDish } from '../words/dish-word';
import { foodAtEnd, foodsIn } from '../words/foods-in';
import { phraseAt } from '../words/phrases';
import { endWithNoun, type Quantity, type Said } from '../numbers/quantity';
import { only, type Text } from '../words/text';

/** What one ingredient has: 'the turkey alone is 94', 'a tablespoon of oil, that is 120'. */
export function ofIngredient(
  text: Text,
  quantity: Quantity,
  before: readonly Quantity[],
): Partial<Said> | null {
  const each = eachOfFood(text, quantity);
  if (each !== null) return { scope: 'each', food: each };
  const food =
    alone(text, quantity) ??
    again(text, quantity, before.at(-1)) ??
    afterAmount(text, quantity, before.at(-1), before.at(-2)) ??
    inBrackets(text, quantity) ??
    withFood(text, quantity) ??
    additionFood(text, quantity) ??
    subjectFood(text, quantity) ??
    listed(text, quantity, before.at(-1));
  return food === null ? null : { scope: 'ingredient', food };
}

/** Tokens from a food that is spoken of to what one of them has. */
const OF_THEM = 12;

/** 'the tortillas are the ten inch ones, they're 210 calories each': of one of that food, which is no dish. */
function eachOfFood(text: Text, { begin, end, noun }: Quantity): string | null {
  const { marks, tokens, language } = text;
  const part = marks.at('scope', endWithNoun({ end, noun }))?.role;
  const copula = marks.before('copula', begin);
  const they = language.claims.they;
  const pronoun = tokens[copula?.from ?? -1]?.folded ?? '';
  if (part?.scope !== 'each' || part.link !== 'counted' || !copula) return null;
  if (!they.has(pronoun) && !they.has(tokens[copula.from - 1]?.folded ?? '')) return null;
  const food = foodsIn(text, copula.from - OF_THEM, copula.from).findLast(({ to }) => {
    const last = tokens[to - 1]?.folded ?? '';
    return language.singular(last) !== last && marks.at('copula', to) !== undefined;
  });
  return food && !isDish(text, food.name) ? food.name : null;
}

function alone(text: Text, quantity: Quantity): string | null {
  for (const category of ['alone', 'adds'] as const) {
    const mark = markBefore(text, quantity, category, 4);
    if (
      !mark ||
      !only(text, mark.to, quantity.begin, ['copula', 'filler', 'hedge', 'small', 'back'])
    )
      continue;
    // 'the avocado alone adds a hundred and sixty'
    const from = (category === 'adds' && text.marks.before('alone', mark.from)?.from) || mark.from;
    const food = foodAtEnd(text, from - LONGEST_FOOD, from);
    if (food) return food.name;
    const aside = category === 'adds' ? onlyFoodIn(text, from - ASIDE, from) : null;
    if (aside !== null) return aside;
    const behind = text.food(mark.to);
    if (category === 'alone' && behind && behind.to <= quantity.begin) return behind.name;
  }
  return null;
}

/** Tokens of the name of a food at most. */
const LONGEST_FOOD = 4;

/** Tokens of an aside between a food and its verb: 'the peanut butter, God love it, adds'. */
const ASIDE = 7;

/** The one food in a stretch of words without a number, a part or another verb; null with more or none. */
function onlyFoodIn(text: Text, from: number, to: number): string | null {
  const found: string[] = [];
  for (let at = Math.max(0, from); at < to;) {
    const { marks } = text;
    const other = marks.at('copula', at) ?? marks.at('noun', at) ?? marks.at('scope', at);
    const food = text.food(at);
    if (food && food.to <= to && !isDish(text, food.name)) found.push(food.name);
    else if (other) return null;
    at = food && food.to <= to ? food.to : at + 1;
  }
  return found.length === 1 ? (found[0] ?? null) : null;
}

/** 'chicken thighs nine hundred calories potatoes five hundred': each food right before its number. */
function listed(text: Text, { begin }: Quantity, before: Quantity | undefined): string | null {
  for (let at = Math.max(0, begin - LONGEST_FOOD); at < begin; at += 1) {
    const food = text.food(at);
    const starts = at === sentenceStart(text, begin) || at === before?.end;
    const other = food !== null && (isDish(text, food.name) || isAllOf(text, food));
    if (food?.to === begin && starts && !other && !text.marks.at('noun', at)) return food.name;
  }
  return null;
}

/** The next in a row about one food, or its number once more: 'it is a hundred and twenty calories every time'. */
function again(text: Text, quantity: Quantity, before: Quantity | undefined): string | null {
  const said = before?.said;
  if (!before || said?.kind !== 'nutrient' || said.scope !== 'ingredient') return null;
  if (only(text, before.end, quantity.begin, ['joiner', 'filler', 'hedge']))
    return said.food ?? null;
  if (
    said.nutrient !== quantity.noun?.nutrient ||
    before.low !== quantity.low ||
    quantity.begin - before.end > 8
  )
    return null;
  return markBefore(text, quantity, 'copula', 0) ? (said.food ?? null) : null;
}

/** Tokens from one amount of a row of foods to the next. */
const ROW = 5;

/** '200 grams of skyr, 80 grams of berries, it's 160 calories': what they come to, and not the last of them. */
function isOfRow(
  { tokens, language }: Text,
  [from, to]: readonly [number, number],
  earlier: Quantity | undefined,
): boolean {
  const row = earlier?.said?.kind === 'amount' && earlier.said.food !== undefined;
  if (!row || from - earlier.end > ROW + LONGEST_AMOUNT) return false;
  return tokens.slice(from, to).some(({ folded }) => language.claims.its.has(folded));
}

/** Tokens from a number of a nutrient to the noun of the next. */
const NEXT = 8;

/** Whether another nutrient follows in the same row: '… and 24 grams of protein'. */
function goesOn({ marks }: Text, { end, noun }: Quantity): boolean {
  const from = endWithNoun({ end, noun });
  const next = marks.firstIn('noun', from, from + NEXT);
  return next !== undefined && next.role.nutrient !== noun?.nutrient;
}

/** Tokens of an amount with its food. */
const LONGEST_AMOUNT = 6;

function afterAmount(
  text: Text,
  quantity: Quantity,
  before: Quantity | undefined,
  earlier: Quantity | undefined,
): string | null {
  if (before?.said?.kind !== 'amount' || before.said.food === undefined) return null;
  if (before.said.scope !== undefined) return null;
  const gap = [before.end, quantity.begin] as const;
  if (quantity.begin - before.end > 6) return null;
  const linked = text.marks.firstIn('which', ...gap) ?? text.marks.firstIn('copula', ...gap);
  const bracket = text.tokens[quantity.begin - 1]?.text === '(';
  const own = markBehind(text, quantity.end, 'alone', 0);
  const free = only(text, ...gap, ['which', 'copula', 'joiner', 'filler', 'hedge', 'so']);
  if (!own && isOfRow(text, gap, earlier)) {
    // Of one number alone nobody can say whether it is of all of them.
    if (!goesOn(text, quantity)) quantity.unsure = true;
    return null;
  }
  return free && (linked || bracket || own) ? before.said.food : null;
}

/** Whether a word goes on with the name of a dish: the 'jars' of oat jars. */
function inTitle({ titles, tokens, language }: Text, at: number): boolean {
  const word = language.singular(tokens[at]?.folded ?? '');
  return word.length > 2 && titles.some(({ stems }) => stems.includes(word));
}

function inBrackets(text: Text, { begin }: Quantity): string | null {
  if (text.context.form === 'title') return null;
  if (text.tokens[begin - 1]?.text !== '(') return null;
  for (let at = Math.max(0, begin - 5); at < begin - 1; at += 1) {
    const food = text.food(at);
    if (food && food.to <= begin - 1 && !isDish(text, food.name) && !inTitle(text, food.to)) {
      return food.name;
    }
  }
  return null;
}

/** 'you could add cheese': what the viewer may do. */
function isOffered({ tokens, language, marks }: Text, at: number): boolean {
  for (let from = Math.max(0, at - 3); from < at; from += 1) {
    const found = phraseAt(language.foods.blockers, tokens, from);
    if ((found && found.next <= at) || marks.at('otherDay', from)) return true;
  }
  return false;
}

/** Tokens before an addition in which the food is named that it is of. */
const ADDED = 9;

/** 'add the bun and it's another 140', 'another 290 for the bread'. */
export function additionFood(text: Text, { begin, end, noun }: Quantity): string | null {
  const { marks } = text;
  if (!marks.before('back', begin)) return null;
  const behind = endWithNoun({ end, noun });
  const forFood = marks.at('serveTitle', behind) ? text.food(behind + 1) : null;
  if (forFood) return forFood.name;
  const food = foodsIn(text, begin - ADDED, begin).findLast(({ name }) => !isDish(text, name));
  return food && !isOffered(text, food.from) ? food.name : null;
}

/** 'with the avocado it's 90 more'. */
function withFood(text: Text, { begin, end }: Quantity): string | null {
  if (text.marks.at('than', end)?.role.against !== 'more') return null;
  for (let at = Math.max(0, begin - 7); at < begin; at += 1) {
    const food = text.marks.at('use', at) && (text.food(at + 1) ?? text.food(at + 2));
    if (food && food.to <= begin) return food.name;
  }
  return null;
}
