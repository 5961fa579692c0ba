import { lastBefore, markBefore } from '../words/context';
import type { Quantity, Said } from '../numbers/quantity';
import { isDishWord } from '../words/dish-word';
import { only, type Text } from '../words/text';

/** What a mass without food or nutrient says of the finished dish, where it was weighed. */
export function finishedOf(
  text: Text,
  quantity: Quantity,
  before: Quantity | undefined,
): Said | null {
  if (quantity.unit === null) return bareWeight(text, quantity);
  if (quantity.unit.of !== 'mass' || quantity.unit.unit === 'mg' || quantity.unit.unit === 'µg')
    return null;
  const { begin } = quantity;
  if (lastBefore(text, begin, 'self', 4)) return null;
  const weighed = lastBefore(text, quantity.begin, 'weigh', 10);
  const subject = subjectFood(text, quantity);
  if (subject)
    return { kind: 'amount', unit: quantity.unit.unit, scope: subject.scope, food: subject.food };
  const portion = text.marks.at('thing', quantity.unitEnd)?.role.as === 'portion';
  if (portion) return { kind: 'amount', unit: quantity.unit.unit, scope: 'portion' };
  const whole = ofWhole(text, quantity);
  if (whole) return { kind: 'amount', unit: quantity.unit.unit, scope: whole };
  if (ofPortions(text, quantity, before))
    return { kind: 'amount', unit: quantity.unit.unit, scope: 'portion' };
  if (isOfPieces(text, quantity, before))
    return { kind: 'amount', unit: quantity.unit.unit, scope: 'each' };
  if (isPartWeighed(text, quantity)) return { kind: 'amount', unit: quantity.unit.unit };
  const after =
    before?.said?.kind === 'amount' &&
    before.said.food === undefined &&
    quantity.begin - before.end < 10;
  return weighed || after ? { kind: 'amount', unit: quantity.unit.unit } : null;
}

/** 'each fillet is 180 grams': the piece is the food. */
function subjectFood(
  text: Text,
  quantity: Quantity,
): { readonly scope: 'each'; readonly food: string } | null {
  const copula = markBefore(text, quantity, 'copula', 1);
  const scope = copula && text.marks.before('scope', copula.from);
  if (scope?.role.scope !== 'each') return null;
  const food = text.food(scope.to - 1);
  return food?.to === scope.to ? { scope: 'each', food: food.name } : null;
}

/** Grams that are said as such without their name. */
const BARE = { least: 100, most: 5000 } as const;

/** 'the whole thing weighs nine forty': no one says ounces or kilos so. */
function bareWeight(text: Text, quantity: Quantity): Said | null {
  const { noun, low, high, begin, end, fraction } = quantity;
  if (noun || fraction || low !== high || low < BARE.least || low > BARE.most) return null;
  const weighs = markBefore(text, quantity, 'weigh', 3);
  const links = ['filler', 'small', 'copula', 'hedge'] as const;
  if (!weighs || !only(text, weighs.to, begin, links)) return null;
  const who = text.tokens[weighs.from - 1]?.folded ?? '';
  if (lastBefore(text, begin, 'self', 4) ?? text.language.claims.persons.has(who)) return null;
  const next = text.food(end) ?? text.marks.at('thing', end) ?? text.marks.at('trapBehind', end);
  if (next || text.marks.lastIn('noun', begin - TOPIC, begin)) return null;
  quantity.unsure = true;
  return { kind: 'amount', unit: 'g' };
}

/** Tokens around a weight in which a nutrient would be what is weighed. */
const TOPIC = 50;

/** Tokens of an aside between a part and its verb. */
const ASIDE = 12;

/** 'one serving, as you see it on the plate, is': a part that an aside parts from its verb. */
function partAside({ marks, tokens }: Text, verb: number) {
  if (tokens[verb - 1]?.text !== ',') return undefined;
  for (let at = verb - 2; at >= verb - ASIDE; at -= 1) {
    if (tokens[at]?.kind === 'number') return undefined;
    if (tokens[at]?.text === ',') return marks.before('scope', at);
  }
  return undefined;
}

/** 'a loaf of about eight hundred and fifty grams', 'for a 750 g loaf': the dish or part that a mass stands beside. */
function ofWhole(text: Text, { begin, unitEnd }: Quantity): 'whole' | 'portion' | null {
  const { marks, tokens, language } = text;
  const { article, of } = language.numbers;
  const word = (at: number) => tokens[at]?.folded ?? '';
  if (article.has(word(begin - 1)) && isDishWord(word(unitEnd), language)) return 'whole';
  // 'Each portion (about 380 g) provides'
  const bracket = marks.before('hedge', begin)?.from ?? begin;
  const part = tokens[bracket - 1]?.text === '(' && marks.before('scope', bracket - 1)?.role.scope;
  if (part === 'portion' || part === 'whole') return part;
  if (text.food(unitEnd) ?? (of.has(word(unitEnd)) || null)) return null;
  const from = marks.before('hedge', begin)?.from ?? begin;
  if (!of.has(word(from - 1))) return null;
  if (isDishWord(word(from - 2), language) && article.has(word(from - 3))) return 'whole';
  return marks.before('scope', from - 1)?.role.scope === 'portion' ? 'portion' : null;
}

/** 'ten portions of two fifty grams'. */
function ofPortions(
  { tokens, language, marks }: Text,
  { begin }: Quantity,
  before: Quantity | undefined,
) {
  const of = language.numbers.of.has(tokens[begin - 1]?.folded ?? '');
  // 'eight portions at 231 grams'
  const at = marks.before('lead', begin) !== undefined && before?.said?.unit === 'portion';
  return (of || at) && before?.said?.kind === 'portions' && before.end === begin - 1;
}

/** 'six balls, ninety grams each', 'roll them to thirty grams': how much a piece weighs, where no nutrient is said. */
function isOfPieces(text: Text, quantity: Quantity, before: Quantity | undefined): boolean {
  const { begin, end } = quantity;
  const counted = isEach(text, end);
  // 'they come out at 68 grams each cooked', 'about 62 g each once baked'
  if (counted && isDone(text, end)) return true;
  if (isOfNutrient(text, begin - TOPIC, end + AHEAD)) return false;
  const shaped = lastBefore(text, begin, 'shape', SHAPED);
  // 'four sausages, nine grams each' may be of protein.
  const heavy = quantity.unit?.unit !== 'g' || quantity.low >= PIECE;
  const pieces = heavy && before?.said?.kind === 'portions' && begin - before.end <= GAP;
  return (
    (counted && (pieces || shaped !== undefined)) || (shaped !== undefined && isLed(text, begin))
  );
}

/** Whether a nutrient is said in a stretch that is no food as well, as sugar and salt are. */
function isOfNutrient({ marks, food }: Text, from: number, to: number): boolean {
  for (let at = Math.max(0, from); at < to; at += 1)
    if (marks.at('noun', at) && food(at)?.from !== at) return true;
  return false;
}

function isEach({ marks }: Text, end: number): boolean {
  const each = marks.at('scope', end)?.role;
  return each?.link === 'counted' || each?.scope === 'each';
}

/** Whether a weight is said of something that is cooked, or not yet. */
const isDone = ({ tokens, language }: Text, end: number): boolean =>
  tokens.slice(end, end + DONE).some(({ folded }) => language.foods.prepared.has(folded));

/** Tokens from a weight to the state that it was weighed in. */
const DONE = 4;

const isLed = ({ marks, tokens, language: { numbers } }: Text, begin: number) =>
  marks.before('lead', begin) !== undefined ||
  marks.before('at', begin) !== undefined ||
  numbers.to.has(tokens[begin - 1]?.folded ?? '');

/** Tokens from pieces to what each weighs; and from the verb that shapes them. */
const GAP = 4;
/** Grams that a piece has at least where nothing else says that it was weighed. */
const PIECE = 40;
const AHEAD = 12;
const SHAPED = 12;

/** From so many grams on a part is weighed; below, a nutrient may be meant. */
const HEAVY = 100;
/** Tokens from all of it to a colon and its weight. */
const HEADED = 10;

/** 'each patty is a quarter pound', 'a portion is 320 grams'. */
function isPartWeighed(text: Text, quantity: Quantity): boolean {
  const { marks, tokens } = text;
  const copula = markBefore(text, quantity, 'copula', 1);
  const kilos = quantity.unit?.unit === 'kg' || quantity.unit?.unit === 'lb';
  // 'the whole loaf's just over a kilo'
  const own = marks.before('scope', quantity.begin)?.role.scope;
  if (kilos && own === 'whole') return true;
  // 'the tray came to 1,846 grams cooked'
  if (marks.before('comesTo', quantity.begin) && isDone(text, quantity.end)) return true;
  // 'the whole tray as it left the oven: 1,240 g'
  const colon = tokens[quantity.begin - 1]?.text === ':' && quantity.low >= HEAVY;
  const all = colon && lastBefore(text, quantity.begin, 'scope', HEADED)?.role.scope === 'whole';
  if (all && !isOfNutrient(text, quantity.begin - HEADED, quantity.end + 2)) return true;
  const scope =
    copula && (marks.before('scope', copula.from) ?? partAside(text, copula.from))?.role.scope;
  if (scope !== 'each' && scope !== 'portion' && scope !== 'slice') return false;
  const noun = text.marks.lastIn('noun', quantity.begin - TOPIC, quantity.begin + GAP);
  return quantity.unit?.unit !== 'g' || quantity.low >= HEAVY || (scope === 'each' && !noun);
}
