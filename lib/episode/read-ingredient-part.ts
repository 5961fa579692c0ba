import type Fraction from 'fraction.js';
import type { FoodState } from '#lib/foods/food';
import type { Ratio } from '#lib/episode/fields';
import type { Problem } from '#lib/result';
import { singular } from '#lib/units/plain-words';
import { twoAmounts } from '#lib/episode/read-ingredient-added';
import { amountAt } from '#lib/episode/read-ingredient-amount';
import type { Amount, SaidMass } from '#lib/episode/read-ingredient-amount-parts';
import {
  asideAmount,
  isDrainedWeight,
  isStateAlone,
  saysDry,
  statesIn,
  type AsideAmount,
  type Bracket,
} from '#lib/episode/read-ingredient-aside';
import { foodWords, type FoodWords } from '#lib/episode/read-ingredient-food';
import { remark } from '#lib/episode/read-ingredient-number';
import { textOf, type Token } from '#lib/episode/read-ingredient-tokens';
import type { ReadIngredient } from '#lib/episode/read-ingredient-types';
import { massRange, weightOf } from '#lib/episode/read-ingredient-weight';
import {
  COUNTING_BEHIND,
  EGG_PARTS,
  NAMES_WITH_COUNTING,
  SIZES,
} from '#lib/episode/read-ingredient-words';

/** A part as read, without its text, and where the next one begins. */
export interface ReadPart {
  readonly part: Omit<ReadIngredient, 'text' | 'household'>;
  readonly amount: Amount | null;
  readonly next: number;
}

/**
 * Reads one part of a line from a place on: the amount, then the food and what is said of it.
 * @param before the food of the part before, which a bare 'whites' or 'plus 1 tbsp for greasing' takes up
 */
export function readPart(
  tokens: readonly Token[],
  from: number,
  brackets: readonly Bracket[],
  before: string,
): ReadPart {
  const inside = brackets.map((bracket) => ({ ...bracket, said: asideAmount(bracket.tokens) }));
  const each = new Map<number, SaidMass>();
  for (const { at, said } of inside) if (said?.mass && said.of !== 'total') each.set(at, said.mass);
  const amount = amountAt(tokens, from, each);
  const start = skipOf(tokens, amount?.next ?? from);
  const words = foodWords(tokens, start);
  const own = inside.filter(
    ({ at }) => at >= from && (at < words.next || words.next >= tokens.length),
  );
  const besides = own
    .flatMap(inRuns)
    .filter(({ at }) => !(amount?.each && each.has(at) && at < (amount?.next ?? 0)));
  const collected = collect({ amount, words, brackets: besides });
  return {
    part: assemble(collected, amount, words, before, tokens[start]),
    amount,
    next: words.next,
  };
}

type Aside = Bracket & { said: AsideAmount | null };

/** The runs of a bracket that are amounts one by one, '(400 g, 240 g drained)': each on its own. */
function inRuns(bracket: Aside): readonly Aside[] {
  const { tokens, at, said } = bracket;
  const cuts = tokens.flatMap(({ text }, index) => (text === ',' ? [index] : []));
  if (said || cuts.length === 0) return [bracket];
  const runs = [-1, ...cuts].map((cut, index) => tokens.slice(cut + 1, cuts[index]));
  const read = runs.map((run) => ({ at, tokens: run, said: asideAmount(run) }));
  return read.every((run) => run.said?.mass) ? read : [bracket];
}

function skipOf(tokens: readonly Token[], at: number): number {
  const of = tokens[at]?.folded === 'of' ? at + 1 : at;
  return of > at && /^(?:the|a|an)$/.test(tokens[of]?.folded ?? '') ? of + 1 : of;
}

interface Collected {
  readonly notes: readonly string[];
  readonly states: readonly FoodState[];
  readonly beside: readonly AsideAmount[];
  readonly size: string | null;
  /** The weight in front is called the drained one: '95 g tin tuna (drained weight)'. */
  readonly drainedWeight: boolean;
}

/** Goes through what stands beside the food: amounts, a size, states, and what remains as a note. */
function collect({
  amount,
  words,
  brackets,
}: {
  amount: Amount | null;
  words: FoodWords;
  brackets: readonly (Bracket & { said: AsideAmount | null })[];
}): Collected {
  const notes: string[] = [];
  const states = [...words.states];
  const beside: AsideAmount[] = [];
  let size: string | null = null;
  let drainedWeight = false;
  if (amount && amount.aside.length > 0) notes.push(textOf(amount.aside));
  const take = (run: readonly Token[], said: AsideAmount | null) => {
    const only = run.length === 1 ? SIZES.get(run[0]?.folded ?? '') : undefined;
    states.push(...statesIn(run));
    drainedWeight ||= isDrainedWeight(run);
    const dry = saysDry(run, words.food);
    if (dry) states.push('dry');
    if (said) beside.push(said);
    if (said && (said.mass || amount === null)) return;
    if (only !== undefined) size ??= only;
    else if (!isStateAlone(run, dry) && !isDrainedWeight(run)) notes.push(textOf(run));
  };
  for (const run of words.notes) take(run, asideAmount(run));
  for (const { tokens, said } of brackets) take(tokens, said);
  return { notes: notes.filter((note) => note !== ''), states, beside, size, drainedWeight };
}

function assemble(
  { notes, states, beside, size, drainedWeight }: Collected,
  amount: Amount | null,
  words: FoodWords,
  before: string,
  first: Token | undefined,
): ReadPart['part'] {
  const remarks: Problem[] = [...(amount?.faults ?? [])];
  let unit = amount?.unit ?? null;
  let measure = amount?.measure ?? null;
  let low = amount?.low ?? null;
  let high = amount?.high ?? null;
  let about = amount?.about ?? false;
  const food = [...words.food];
  const taken = [...notes];

  const single = beside.length === 1 ? beside[0] : undefined;
  let rest = beside;
  if (
    amount === null &&
    single &&
    !(single.amount.unit === 'piece' && single.amount.measure === null)
  ) {
    ({ low, high, unit, measure, about } = single.amount);
    rest = [];
  }
  const sizeWord = words.size ?? size;
  if (sizeWord !== null) {
    if (unit === 'piece' && measure === null) measure = sizeWord;
    else if (words.size !== null && unit !== 'piece') taken.unshift(sizeWord);
    else taken.push(sizeWord);
  }
  if (unit === 'piece' && (measure === null || SIZES.has(measure))) {
    const counted = countedBehind(food);
    if (counted !== null) {
      food.pop();
      if (measure !== null) taken.push(measure);
      measure = counted;
    }
  }
  let name = textOf(food).trim();
  if (name === '' && amount && measure !== null && !SIZES.has(measure) && unit === 'piece') {
    name = amount.low && amount.low.compare(1) === 0 ? measure : `${measure}s`;
    measure = null;
  }
  if (before !== '' && (name === '' || /^(?:more|extra)$/.test(name))) name = before;
  if (EGG_PARTS.has(name.toLowerCase()) && /\beggs?$/i.test(before)) name = `egg ${name}`;
  if (first?.folded === 'each') {
    name = name.replace(/^each (?:of )?/i, '');
    remarks.push(
      remark('each-of-several', 'Each of several foods needs a line of its own with its amount.'),
    );
  }
  if (words.stray && amount) remarks.push(twoAmounts(textOf([words.stray, ...words.food])));
  if (words.stray && !amount) {
    remarks.push(
      remark(
        'amount-not-found',
        `It is not plain that “${words.stray.text}” is the amount. Write the amount in front, as “200 g oats”.`,
        { typed: words.stray.text },
      ),
    );
  }
  if (low && high && high.compare(0) === 0) {
    remarks.push(
      remark('zero-amount', 'An amount of 0 is none. Write what is used, or take the line out.'),
    );
  }
  const quantity = low && high && !closes(remarks) ? quantityOf(low, high) : null;
  if (low && high && !closes(remarks) && quantity === null) {
    remarks.push(remark('number-too-large', 'This number is more than fits in a recipe.'));
  }
  const said = weightOf({
    amount,
    rest,
    unit,
    low: quantity ? low : null,
    high: quantity ? high : null,
    about,
    states,
    drainedWeight,
    remarks,
  });
  if (name === '') {
    remarks.push(
      remark('no-food', 'No food is named. Write it after the amount, as “200 g oats”.'),
    );
  }
  if (!amount && quantity === null && remarks.length === 0 && !said && taken.length === 0) {
    remarks.push(
      remark(
        'no-amount',
        'No amount is written. Write it in front, as “1 tsp salt”, or “to taste”.',
      ),
    );
  }
  return {
    quantity,
    unit,
    measure,
    grams: said?.inGrams ? massRange(said) : null,
    weight: said ? massRange(said) : null,
    food: name,
    state: oneState(states, remarks),
    note: taken.join(', '),
    remarks,
  };
}

/** Remarks after which the amount stays open. */
const OPEN = new Set(['two-amounts', 'each-of-several', 'zero-amount', 'amount-not-found']);

function closes(remarks: readonly Problem[]): boolean {
  return remarks.some(({ code }) => OPEN.has(code));
}

/** The counting word behind the food: '2 garlic cloves'; not 'bay leaves'. */
function countedBehind(food: readonly Token[]): string | null {
  const last = COUNTING_BEHIND.get(food.at(-1)?.folded ?? '');
  if (last === undefined || food.length < 2) return null;
  return NAMES_WITH_COUNTING.has(food.at(-2)?.folded ?? '') ? null : last;
}

function quantityOf(low: Fraction, high: Fraction): ReadIngredient['quantity'] {
  const ends = [low, high].map(ratioOf);
  const [first, last] = ends;
  return first && last ? { low: first, high: last } : null;
}

/** What the file format holds at most in a fraction’s parts. */
const LARGEST = 1_000_000_000n;

function ratioOf(value: Fraction): Ratio | null {
  if (value.n > LARGEST || value.d > LARGEST) return null;
  return { num: Number(value.n), den: Number(value.d) };
}

function oneState(states: readonly FoodState[], remarks: Problem[]): FoodState | null {
  const said = [...new Set(states)];
  if (said.includes('raw') && said.length > 1) {
    remarks.push(
      remark(
        'two-states',
        'Both raw and another state are said. Write the one in which it is weighed.',
      ),
    );
    return null;
  }
  return said[0] ?? null;
}

/** The last word of a name in the singular: 'blood oranges' → 'blood orange'. */
export function singularName(name: string): string {
  const words = name.split(' ');
  const last = words.pop() ?? '';
  return [...words, singular(last)].join(' ');
}
