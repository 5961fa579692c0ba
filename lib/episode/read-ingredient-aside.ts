import type { FoodState } from '#lib/foods/food';
import { singular } from '#lib/units/plain-words';
import { amountAt, isRough } from '#lib/episode/read-ingredient-amount';
import {
  aboutMass,
  massOf,
  type Amount,
  type SaidMass,
} from '#lib/episode/read-ingredient-amount-parts';
import { rangeAt } from '#lib/episode/read-ingredient-number';
import type { Token } from '#lib/episode/read-ingredient-tokens';
import { unitAt } from '#lib/episode/read-ingredient-unit';
import { DRY_WORDS, FILLERS, SOLD_DRY, STATES } from '#lib/episode/read-ingredient-words';

/** Words in brackets, and the place before which they stood among the words outside. */
export interface Bracket {
  readonly at: number;
  readonly tokens: readonly Token[];
}

/** Takes brackets out of a line, in one pass; one that is never closed reaches to the end. */
export function withoutBrackets(tokens: readonly Token[]): {
  readonly outside: readonly Token[];
  readonly brackets: readonly Bracket[];
} {
  const outside: Token[] = [];
  const brackets: Bracket[] = [];
  let inside: Token[] = [];
  let depth = 0;
  const close = () => {
    if (inside.length > 0) brackets.push({ at: outside.length, tokens: inside });
    inside = [];
  };
  for (const token of tokens) {
    if (/^[([{]$/.test(token.text)) {
      if (depth > 0) inside.push(token);
      depth += 1;
    } else if (/^[)\]}]$/.test(token.text)) {
      if (depth > 1) inside.push(token);
      if (depth === 1) close();
      depth = Math.max(0, depth - 1);
    } else if (depth > 0) inside.push(token);
    else outside.push(token);
  }
  close();
  return { outside, brackets };
}

/** An amount that stands beside the main one, and what it is of. */
export interface AsideAmount {
  readonly mass: SaidMass | null;
  /** The whole amount as read, for a line that has no other. */
  readonly amount: Amount;
  readonly of: 'each' | 'total' | 'unsaid';
  readonly drained: boolean;
  readonly from: number;
}

const AFTER_AMOUNT =
  /^(?:each|apiece|total|in|altogether|all|together|drained|undrained|dry|cooked|raw|uncooked|weight|net|wt|per|tin|can|of|edible|prepared|size|when|once|the|before|peeled|or|so)$/;
const BEFORE_AMOUNT =
  /^(?:drained|weight|net|total|in|all|each|weighing|of|is|:|=|or|i\.e|ie|dry|cooked|raw|uncooked|wt|equals|makes)$/;

/**
 * Reads words beside the main amount as an amount: '20 g', 'about 300 g in total', '150 g each',
 * 'drained weight 240 g'. Null where they are something else.
 */
export function asideAmount(tokens: readonly Token[]): AsideAmount | null {
  let from = 0;
  while (from < tokens.length && isBefore(tokens[from])) from += 1;
  const amount = amountAt(tokens, from);
  if (!amount || amount.low === null || amount.next === from) return null;
  const words = [...tokens.slice(0, from), ...tokens.slice(amount.next)];
  if (!tokens.slice(amount.next).every((token) => isAfter(token))) return null;
  const said = new Set(words.map(({ folded }) => folded));
  const about = amount.about || isRough(tokens.slice(0, from)) || said.has('so');
  const mass = amount.whole ?? massAt(tokens, from);
  return {
    mass: mass && aboutMass(mass, about),
    amount: { ...amount, about },
    of: said.has('each') || said.has('apiece') || said.has('per') ? 'each' : total(said),
    drained: said.has('drained'),
    from,
  };
}

function total(said: ReadonlySet<string>): 'total' | 'unsaid' {
  return said.has('total') || said.has('altogether') || said.has('all') ? 'total' : 'unsaid';
}

function isBefore(token: Token | undefined): boolean {
  if (!token) return false;
  return (
    BEFORE_AMOUNT.test(token.folded) || FILLERS.has(token.folded) || /^[~≈,.]$/.test(token.text)
  );
}

function isAfter(token: Token): boolean {
  return AFTER_AMOUNT.test(token.folded) || /^[.,;]$/.test(token.text);
}

/** The mass that an amount of one unit is; the same one as `amountAt` reads. */
function massAt(tokens: readonly Token[], from: number): SaidMass | null {
  let at = from;
  while (isBefore(tokens[at])) at += 1;
  const amount = amountAt(tokens, at);
  if (amount?.low === null || amount?.unit === null || !amount) return null;
  if (amount.unit === 'piece' || amount.unit === 'pack') return null;
  const number = rangeAt(tokens, at);
  const unit = number ? unitAt(tokens, number.next) : null;
  const plain = {
    kind: 'unit',
    unit: amount.unit,
    num: 1,
    den: 1,
    next: 0,
    modifiers: [],
  } as const;
  return unit?.kind === 'unit' ? massOf(amount, plain) : null;
}

const NOT_YET = /^(?:not|un|never|be|until|to|before|if|when|once|for|without|non|from)$/;

/** The states that words of a note say: 'cooked', 'drained and rinsed'; not 'to be cooked', 'not drained'. */
export function statesIn(tokens: readonly Token[]): readonly FoodState[] {
  return tokens.flatMap(({ folded }, index) => {
    const state = STATES.get(folded);
    if (!state || NOT_YET.test(tokens[index - 1]?.folded ?? '')) return [];
    return [state];
  });
}

/** 'dry', 'dry weight' said of something that is sold dry: 'lentils, dry', 'rice (dry weight)'. */
export function saysDry(tokens: readonly Token[], food: readonly Token[]): boolean {
  return (
    tokens.some(({ folded }) => DRY_WORDS.has(folded)) &&
    food.some(({ folded }) => SOLD_DRY.has(singular(folded)))
  );
}

/** Words that call the weight beside them the drained one: 'drained weight', 'net drained weight'. */
export function isDrainedWeight(tokens: readonly Token[]): boolean {
  const words = tokens.map(({ folded }) => folded);
  const all = words.every((word) => /^(?:net|drained|weight|wt|\.)$/.test(word));
  return all && words.includes('drained') && words.some((word) => /^(?:weight|wt)$/.test(word));
}

const STATE_ALONE = /^(?:cooked|raw|uncooked|drained|weight|weighed)$/;

/** Whether words say a state and nothing else, so that the note need not repeat it; 'dry' where `dry`. */
export function isStateAlone(tokens: readonly Token[], dry: boolean): boolean {
  return tokens.every(({ folded }) => STATE_ALONE.test(folded) || (dry && DRY_WORDS.has(folded)));
}
