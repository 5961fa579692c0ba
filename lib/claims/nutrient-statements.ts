import { lastBefore, markBefore, markBehind, sentenceEnd } from './context';
import { foodBefore, isDish } from './prices';
import type { Noun, Quantity, Said } from './quantity';
import { phraseAt } from './phrases';
import type { Hedge } from './statement';
import { only, type Text } from './text';

/** The nutrient and its number that a text states; null where a number states none by itself. */
export function nutrientOf(
  text: Text,
  quantity: Quantity,
  before: readonly Quantity[],
): Said | null {
  const { unit, noun } = quantity;
  if (unit?.of === 'share') return shareOf(text, quantity, before);
  const more = moreThan(text, quantity);
  if (more) return more;
  if (unit?.of === 'energy' && unit.unit === 'kJ')
    return said('energyKj', 'kJ', text, quantity, before);
  if (!noun) return null;
  if (unit && unit.of !== 'mass' && unit.of !== 'energy') return null;
  const named = unit === null ? noun.unit : unit.unit;
  if (unit?.of === 'mass' && !['g', 'mg', 'µg'].includes(unit.unit)) return null;
  if (noun.nutrient === 'energyKcal' && unit?.of === 'mass') return null;
  if (unit === null && noun.nutrient !== 'energyKcal' && countsFoods(text, noun)) return null;
  const nutrient =
    unit?.unit === 'IU' ? (INTERNATIONAL[noun.nutrient] ?? noun.nutrient) : noun.nutrient;
  return said(nutrient, named, text, quantity, before);
}

/** '3 protein pastas': the number counts foods. */
function countsFoods({ tokens, language, food }: Text, { to }: Noun): boolean {
  const word = tokens[to]?.folded ?? '';
  const { dishes } = language.claims;
  return (
    food(to)?.from === to ||
    dishes.has(word) ||
    (word !== '' && dishes.has(language.singular(word)))
  );
}

const INTERNATIONAL: Partial<Record<Noun['nutrient'], Noun['nutrient']>> = {
  vitaminARae: 'vitaminAIu',
  vitaminDMicrograms: 'vitaminDIu',
};

function said(
  nutrient: Noun['nutrient'],
  unit: string,
  text: Text,
  quantity: Quantity,
  before: readonly Quantity[],
): Said {
  const { noun } = quantity;
  if (noun && noun.from >= quantity.end && only(text, quantity.end, noun.from, ['filler']))
    quantity.end = noun.to;
  const soft = phraseAt(text.language.hedgesBehind, text.tokens, quantity.end);
  if (soft && quantity.hedge === 'none' && isBehind(text, soft)) {
    quantity.hedge = soft.value;
    quantity.end = soft.next;
  }
  const gap =
    noun && noun.to <= quantity.begin
      ? only(text, noun.to, quantity.begin, ['filler', 'hedge'])
      : false;
  if (noun && gap) quantity.begin = noun.from;
  const base = { kind: 'nutrient' as const, nutrient, unit };
  return { ...base, ...(compared(text, quantity) ?? ofIngredient(text, quantity, before) ?? {}) };
}

/** 'ten grams more protein than the regular one'. */
function moreThan(text: Text, quantity: Quantity): Said | null {
  const than = text.marks.at('than', quantity.end);
  const noun = than && text.marks.at('noun', than.to);
  if (!noun || !text.marks.firstIn('thanWord', noun.to, noun.to + 3)) return null;
  const { unit } = quantity;
  if (unit !== null && (unit.of !== 'mass' || noun.role.nutrient === 'energyKcal')) return null;
  quantity.end = noun.to;
  const said = unit === null ? noun.role.unit : unit.unit;
  const { nutrient } = noun.role;
  return { kind: 'nutrient', nutrient, unit: said, scope: 'compared', against: than.role.against };
}

/** A hedge behind the noun, and not of a number that follows: '465 calories give or take'. */
function isBehind(
  { tokens, language }: Text,
  { value, next }: { readonly value: Hedge; readonly next: number },
): boolean {
  const token = tokens[next];
  const number =
    token?.kind === 'number' ||
    language.numbers.cardinals.has(token?.folded ?? '') ||
    language.numbers.article.has(token?.folded ?? '');
  return (value === 'about' || value === 'atMost') && !number;
}

/** '200 calories less than the takeaway one'. */
function compared(text: Text, quantity: Quantity): Partial<Said> | null {
  const than = text.marks.at('than', quantity.end);
  if (!than) return null;
  const word = text.marks.firstIn('thanWord', than.to, than.to + 4);
  return word ? { scope: 'compared', against: than.role.against } : null;
}

/** What one ingredient has: 'the turkey alone is 94', 'a tablespoon of oil, that is 120'. */
export function ofIngredient(
  text: Text,
  quantity: Quantity,
  before: readonly Quantity[],
): Partial<Said> | null {
  const food =
    alone(text, quantity) ??
    again(text, quantity, before.at(-1)) ??
    afterAmount(text, quantity, before.at(-1)) ??
    inBrackets(text, quantity) ??
    withFood(text, quantity) ??
    foodBefore(text, quantity);
  return food === null ? null : { scope: 'ingredient', food };
}

function alone(text: Text, quantity: Quantity): string | null {
  for (const category of ['alone', 'adds'] as const) {
    const mark = markBefore(text, quantity, category, 4);
    if (
      !mark ||
      !only(text, mark.to, quantity.begin, ['copula', 'filler', 'hedge', 'small', 'back'])
    )
      continue;
    for (let at = Math.max(0, mark.from - 4); at < mark.from; at += 1) {
      const food = text.food(at);
      if (food?.to === mark.from) return food.name;
    }
    const behind = text.food(mark.to);
    if (category === 'alone' && behind && behind.to <= quantity.begin) return behind.name;
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

function afterAmount(text: Text, quantity: Quantity, before: Quantity | undefined): string | null {
  if (before?.said?.kind !== 'amount' || before.said.food === undefined) return null;
  if (before.said.scope !== undefined) return null;
  const gap = [before.end, quantity.begin] as const;
  if (quantity.begin - before.end > 6) return null;
  const linked = text.marks.firstIn('which', ...gap) ?? text.marks.firstIn('copula', ...gap);
  const bracket = text.tokens[quantity.begin - 1]?.text === '(';
  const own = markBehind(text, quantity.end, 'alone', 0);
  const free = only(text, ...gap, ['which', 'copula', 'joiner', 'filler', 'hedge', 'so']);
  return free && (linked || bracket || own) ? before.said.food : null;
}

/** Whether a word goes on with the name of a dish: the 'jars' of oat jars. */
function inTitle({ context, tokens, language }: Text, at: number): boolean {
  const word = language.singular(tokens[at]?.folded ?? '');
  const titles = [context.dish, ...(context.dishes ?? [])].join(' ').toLowerCase();
  return (
    word.length > 2 &&
    titles
      .split(/[^\p{L}]+/u)
      .map(language.singular)
      .includes(word)
  );
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

/** 'with the avocado it's 90 more'. */
function withFood(text: Text, { begin, end }: Quantity): string | null {
  if (text.marks.at('than', end)?.role.against !== 'more') return null;
  for (let at = Math.max(0, begin - 7); at < begin; at += 1) {
    const food = text.marks.at('use', at) && (text.food(at + 1) ?? text.food(at + 2));
    if (food && food.to <= begin) return food.name;
  }
  return null;
}

/** '23 % DV', '30 % less fat than', '38 percent of the calories come from protein'. */
function shareOf(text: Text, quantity: Quantity, before: readonly Quantity[]): Said | null {
  const { marks } = text;
  if (quantity.unit?.unit === '%DV') {
    const noun = marks.at('noun', quantity.end) ?? lastBefore(text, quantity.begin, 'noun', 12);
    const last = before.filter((other) => other.said?.kind === 'nutrient').at(-1)?.said?.nutrient;
    const nutrient = noun?.role.nutrient ?? last;
    return nutrient === undefined ? null : { kind: 'nutrient', nutrient, unit: '%DV' };
  }
  const than = marks.at('than', quantity.end);
  const less = than && marks.at('noun', than.to);
  if (than && less && quantity.unit?.unit === '%') {
    quantity.end = less.to;
    return {
      kind: 'nutrient',
      nutrient: less.role.nutrient,
      unit: '%',
      scope: 'compared',
      against: than.role.against,
    };
  }
  const energy = marks.firstIn('noun', quantity.end, quantity.end + 4);
  if (energy?.role.nutrient !== 'energyKcal') return null;
  const end = Math.min(energy.to + 8, sentenceEnd(text, quantity.from));
  const mark = text.tokens.slice(energy.to, end).findIndex(({ kind }) => kind !== 'word');
  const near = before.at(-1);
  const same = near && quantity.begin - near.end <= 2 ? near.noun : null;
  const noun =
    marks.firstIn('noun', energy.to, mark < 0 ? end : energy.to + mark) ??
    (same && { role: same, from: same.from }) ??
    lastBefore(text, quantity.begin, 'noun', 4);
  if (!noun || noun.role.nutrient === 'energyKcal') return null;
  if (text.food(noun.from)) return null;
  quantity.end = energy.to;
  return { kind: 'nutrient', nutrient: noun.role.nutrient, unit: '%' };
}
