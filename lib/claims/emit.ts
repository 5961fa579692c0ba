import type { ClaimAt } from './kinds/claims';
import type { FreeFromAt } from './kinds/free-from';
import type { FoodSpan } from './words/foods';
import type { Quantity } from './numbers/quantity';
import type { ReadingStep, Statement, Tag } from './statement';
import type { Text } from './words/text';

/** Twelve digits are as many as a double keeps of thirds. */
const settled = (value: number) => Number(value.toPrecision(12));

/** The statement that a number came to be, with the steps of its reading. */
export function emit(text: Text, quantity: Quantity): Statement {
  const { said, hedge, low, high, begin, end } = quantity;
  if (!said) throw new Error('A number that says nothing is no statement.');
  return {
    ...said,
    ...place(text, begin, end),
    low: settled(low),
    high: settled(high),
    hedge,
    tags: tagsOf(quantity),
    ...(quantity.unsure ? { unsure: true } : {}),
    how: steps(text, quantity),
  } as Statement;
}

export function emitClaim(text: Text, { from, to, claim, nutrient }: ClaimAt): Statement {
  return {
    kind: 'claimWord',
    claim,
    ...(nutrient === undefined ? {} : { nutrient }),
    ...place(text, from, to),
    tags: ['beyond'],
    how: [step(text, 'kind', from, to, nutrient === undefined ? claim : `${claim} ${nutrient}`)],
  };
}

export function emitFreeFrom(text: Text, { from, to, of, unsure }: FreeFromAt): Statement {
  return {
    kind: 'freeFrom',
    ...of,
    ...place(text, from, to),
    tags: ['beyond'],
    ...(unsure ? { unsure: true } : {}),
    how: [step(text, 'kind', from, to, 'freeFrom')],
  };
}

export function emitFood(text: Text, { from, to, name }: FoodSpan): Statement {
  return {
    kind: 'foodNamed',
    food: name,
    ...place(text, from, to),
    tags: ['beyond'],
    how: [step(text, 'kind', from, to, name)],
  };
}

function place({ text, tokens }: Text, from: number, to: number) {
  const start = tokens[from]?.start ?? 0;
  const end = tokens[to - 1]?.end ?? start;
  return { start, end, words: text.slice(start, end) };
}

function step(
  text: Text,
  stage: ReadingStep['stage'],
  from: number,
  to: number,
  as: string,
): ReadingStep {
  const { start, end } = place(text, from, Math.max(to, from + 1));
  return { stage, start, end, as };
}

function tagsOf({
  digits,
  words,
  fraction,
  hedge,
  low,
  high,
  said,
  list,
  corrected,
}: Quantity): Tag[] {
  const scope = said?.scope;
  const tags: readonly (readonly [Tag, boolean])[] = [
    ['digits', digits],
    ['words', words],
    ['fraction', fraction],
    ['range', low !== high],
    ['hedge', hedge !== 'none' && hedge !== 'between'],
    ['scope', scope !== undefined && scope !== 'dish' && scope !== 'unknown'],
    ['list', list],
    ['correction', corrected],
    ['beyond', said?.kind !== 'nutrient'],
  ];
  return tags.filter(([, holds]) => holds).map(([tag]) => tag);
}

/** Number, hedge, unit, noun, what was taken back, kind, part and dish, as far as each was read. */
function steps(text: Text, quantity: Quantity): ReadingStep[] {
  const { from, to, begin, end, unit, unitEnd, noun, hedge, said, low, high, corrected } = quantity;
  const value = low === high ? String(settled(low)) : `${settled(low)} to ${settled(high)}`;
  const found: (ReadingStep | null)[] = [
    step(text, 'number', from, to, value),
    hedge === 'none' || hedge === 'between' ? null : step(text, 'hedge', begin, end, hedge),
    unit && unitEnd > to ? step(text, 'unit', to, unitEnd, unit.unit ?? unit.of) : null,
    noun ? step(text, 'noun', noun.from, noun.to, noun.nutrient) : null,
    ...quantity.how,
    corrected ? step(text, 'correction', begin, end, value) : null,
    said ? step(text, 'kind', begin, end, said.nutrient ?? said.food ?? said.kind) : null,
    said?.dish === undefined ? null : step(text, 'dish', begin, end, said.dish),
  ];
  return found.filter((read) => read !== null);
}
