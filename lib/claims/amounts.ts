import { lastBefore, markBefore } from './context';
import { foodAt, nameOf, type FoodSpan } from './foods';
import { phraseAt } from './phrases';
import { isDish } from './prices';
import type { Quantity, Said } from './quantity';
import { only, type Text } from './text';
import { tokenize } from './tokens';

/** Words that a food has at most where nobody knows its name. */
const LONGEST_NAME = 4;

/** The amount of a food, or the weight of what is finished, that a number says; null where it says none. */
export function amountOf(
  text: Text,
  quantity: Quantity,
  before: Quantity | undefined,
): Said | null {
  const { unit } = quantity;
  const counted = unit === null || unit.of === 'container';
  if (unit !== null && unit.of !== 'mass' && unit.of !== 'volume' && unit.of !== 'container')
    return null;
  if (unit?.unit === 'µg' || quantity.high === 0 || isBlocked(text, quantity)) return null;
  const pack = packOf(text, quantity);
  if (pack === 'bought') {
    quantity.killed = 'size of a pack';
    return null;
  }
  const { of } = text.language.numbers;
  const ofIt = of.has(text.tokens[quantity.end]?.folded ?? '');
  if (unit === null && ofIt) return null;
  const first = foodBefore(text, quantity, before);
  const food = foodBehind(text, quantity, unit !== null);
  // 'noodles 200 grams tofu': of which, nobody can say.
  if (first !== null && food?.adjacent && !ofIt) return null;
  const said = {
    kind: 'amount' as const,
    unit: unit === null || unit.of === 'container' ? 'piece' : unit.unit,
  };
  if (food) {
    if (
      unit === null &&
      ((isDish(text, food.name) && !isLine(text, quantity)) || quantity.high > 100)
    )
      return null;
    if (unit === null && (!isCount(quantity) || text.context.form === 'title')) return null;
    if (food.to > quantity.end && food.adjacent) quantity.end = food.to;
    return { ...said, food: food.name };
  }
  if (unit === null) return null;
  if (first !== null && unit.of !== 'container') return { ...said, food: first };
  const line =
    !text.spoken && unit.of !== 'container' ? unknownFood(text, quantity.end, true) : null;
  if (line && before?.said?.kind === 'amount') {
    quantity.end = line.to;
    return { ...said, food: line.name };
  }
  const same = sameAsBefore(text, quantity, before);
  if (same !== null) return { ...said, food: same };
  if (counted && !pack) return null;
  const used =
    pack === 'used' ||
    text.marks.at('ofThem', quantity.end) !== undefined ||
    markBefore(text, quantity, 'use', 2) ||
    poured(text, quantity);
  const name = used ? (lastFood(text, quantity.begin) ?? titleFood(text)) : null;
  return name === null ? null : { ...said, food: name };
}

/** The food right before a number, which is not that of the amount before it: 'tofu 280 grams'. */
function foodBefore(
  text: Text,
  { begin, unit }: Quantity,
  before: Quantity | undefined,
): string | null {
  if (unit === null || before?.end === begin) return null;
  for (let at = Math.max(0, begin - 4); at < begin; at += 1) {
    const food = text.food(at);
    const noun = food && text.marks.at('noun', food.from);
    if (food?.to === begin && !noun) return food.name;
  }
  return null;
}

/** 'I weighed 225 g into this one': what goes in, not what is finished. */
function poured({ marks }: Text, { end }: Quantity): boolean {
  return marks.firstIn('into', end, end + 6) !== undefined;
}

/** The one food that the title of the dish names before its last word, where the text names none. */
function titleFood(text: Text): string | null {
  const { context, language } = text;
  const words = tokenize(context.dish ?? '');
  const found: string[] = [];
  for (let at = 0; at < words.length - 1;) {
    const food = foodAt(words.slice(0, -1), at, language);
    if (food) found.push(food.name);
    at = food ? food.to : at + 1;
  }
  return found.length === 1 ? (found[0] ?? null) : null;
}

/** What a mass without food or nutrient says of the finished dish, where it was weighed. */
export function finishedOf(
  text: Text,
  quantity: Quantity,
  before: Quantity | undefined,
): Said | null {
  if (quantity.unit?.of !== 'mass' || quantity.unit.unit === 'mg' || quantity.unit.unit === 'µg')
    return null;
  const { begin } = quantity;
  if (lastBefore(text, begin, 'self', 4)) return null;
  const weighed = lastBefore(text, quantity.begin, 'weigh', 10);
  const subject = subjectFood(text, quantity);
  if (subject)
    return { kind: 'amount', unit: quantity.unit.unit, scope: subject.scope, food: subject.food };
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

const isCount = ({ low, high, fraction }: Quantity) =>
  fraction || (Number.isInteger(low) && Number.isInteger(high));

function isBlocked(text: Text, { begin }: Quantity): boolean {
  if (text.marks.before('correct', begin)) return false;
  const { tokens, language } = text;
  for (let back = 1; back <= 3; back += 1) {
    const found = phraseAt(language.foods.blockers, tokens, begin - back);
    if (found?.next === begin && !language.numbers.or.has(tokens[begin - 1]?.folded ?? '')) {
      return (
        text.marks.before('hedge', begin) === undefined &&
        text.marks.before('use', begin) === undefined &&
        !/^for$/.test(tokens[begin - 1]?.folded ?? '')
      );
    }
  }
  return false;
}

/** Whether a number is the size of a pack, bought or used up: 'a 400 gram tub', 'the whole 400 gram tub goes in'. */
function packOf(text: Text, { begin, unitEnd, unit }: Quantity): 'bought' | 'used' | null {
  const pack =
    unit === null || unit.of === 'container' ? undefined : text.marks.at('pack', unitEnd);
  if (!pack) return null;
  const all =
    lastBefore(text, begin, 'allOfIt', 4) ?? text.marks.firstIn('allOfIt', pack.to, pack.to + 6);
  return all ? 'used' : 'bought';
}

interface Named {
  readonly name: string;
  readonly to: number;
  readonly adjacent: boolean;
}

/** The food right behind a number and its unit, or behind the other unit in brackets that follows it. */
function foodBehind(text: Text, quantity: Quantity, measured: boolean): Named | null {
  const { tokens, language } = text;
  let at = Math.max(quantity.unitEnd, quantity.end);
  let adjacent = true;
  const pack = measured ? text.marks.at('pack', at) : undefined;
  if (pack && quantity.unit?.of !== 'container') at = pack.to;
  if (measured && /^[(/]$/.test(tokens[at]?.text ?? '')) {
    const other = text.marks.at('unit', at + 2);
    const slash = tokens[at]?.text === '/' && tokens[at + 1]?.kind === 'number' && other;
    const close = slash
      ? other.to - at - 1
      : tokens.slice(at, at + 8).findIndex(({ text: mark }) => mark === ')');
    if (close > 0) at += close + 1;
    adjacent = false;
  } else if (measured && tokens[at]?.text === ')') {
    at += 1;
    adjacent = false;
  }
  const of = language.numbers.of.has(tokens[at]?.folded ?? '');
  if (of) at += 1;
  const known = text.food(at);
  if (known) return { name: known.name, to: known.to, adjacent };
  if (!measured && !isLine(text, quantity)) return null;
  const name = unknownFood(text, at, of || isLine(text, quantity));
  return name && { ...name, adjacent };
}

/** Whether a number begins its line, as those of ingredients do. */
function isLine({ tokens, context, marks }: Text, { begin }: Quantity): boolean {
  if (context.form !== 'description' && context.form !== 'card') return false;
  const before = tokens[begin - 1];
  return before === undefined
    ? false
    : before.kind === 'line' ||
        (/^[•\-–*·]$/.test(before.text) &&
          marks.at('joiner', begin - 1) !== undefined &&
          (tokens[begin - 2]?.kind ?? 'line') === 'line');
}

/** A food by a name that is in no table: the words up to a mark or a word that joins. */
function unknownFood(
  text: Text,
  from: number,
  sure: boolean,
): Pick<FoodSpan, 'name' | 'to'> | null {
  if (!sure) return null;
  const { tokens, language, marks } = text;
  let begin = from;
  while (language.foods.plain.has(tokens[begin]?.folded ?? '')) begin += 1;
  let to = begin;
  const stop = (at: number) =>
    tokens[at]?.kind !== 'word' ||
    (
      [
        'small',
        'joiner',
        'copula',
        'noun',
        'thing',
        'so',
        'which',
        'trapBehind',
        'unit',
        'not',
      ] as const
    ).some((category) => marks.at(category, at));
  while (to < begin + LONGEST_NAME && !stop(to)) to += 1;
  return to > begin ? { name: nameOf(tokens, begin, to, language.singular), to } : null;
}

/** The food of the amount just before, where this is the same in another unit. */
function sameAsBefore(text: Text, quantity: Quantity, before: Quantity | undefined): string | null {
  if (before?.said?.kind !== 'amount' || before.said.food === undefined) return null;
  const gap = quantity.begin - before.end;
  const links = ['joiner', 'so', 'hedge', 'which', 'copula', 'filler', 'scope'] as const;
  return gap <= 4 && gap > 0 && only(text, before.end, quantity.begin, links)
    ? before.said.food
    : null;
}

/** The food that was named last before a token, in its sentence. */
export function lastFood(text: Text, at: number, reach = 20): string | null {
  const start = Math.max(0, at - reach);
  let found: string | null = null;
  for (let next = start; next < at;) {
    const food = text.food(next);
    if (food && food.to <= at) found = food.name;
    next = food ? food.to : next + 1;
  }
  return found;
}
