import type { FoodSpan } from '../words/foods';
import type { Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';

/** Tokens that the name of a food on its line has at most. */
const LONGEST_FOOD = 5;
/** What is counted of a food at most. */
const MOST_COUNTED = 100;

interface Entry {
  readonly quantity: Quantity;
  readonly food: FoodSpan;
  /** Whether the name is no nutrient as well: flour, not sugar. */
  readonly own: boolean;
  /** Tokens of the line or the part of it. */
  readonly start: number;
  readonly end: number;
}

/**
 * Lists in writing with the food before its number: 'Flour – 250 g', 'Sugar – 80 g', 'Eggs – 2'. In them sugar and salt
 * go in; a list of nothing but sugar, salt and the like is a label.
 */
export function sayWrittenLists(text: Text, quantities: readonly Quantity[]): void {
  if (text.spoken || text.context.form === 'title') return;
  let list: Entry[] = [];
  const close = () => {
    if (list.length > 1 && list.some(({ own }) => own)) list.forEach(say);
    list = [];
  };
  for (const quantity of quantities) {
    const entry = entryOf(text, quantity);
    const last = list.at(-1);
    if (!entry || (last && entry.start > last.end + 2)) close();
    if (entry) list.push(entry);
  }
  close();
}

function entryOf(text: Text, quantity: Quantity): Entry | null {
  const { unit, killed, said, begin, unitEnd, low, fraction } = quantity;
  if (killed !== null || (said !== null && said.kind !== 'amount' && said.kind !== 'nutrient'))
    return null;
  const measured = unit?.of === 'mass' || unit?.of === 'volume';
  const counted = unit === null && (fraction || Number.isInteger(low)) && low <= MOST_COUNTED;
  if (!measured && !counted) return null;
  const { tokens, marks } = text;
  const sign = /^[:=–—-]$/.test(tokens[begin - 1]?.text ?? '');
  const to = sign ? begin - 1 : begin;
  if (!sign && counted) return null;
  const end = closes(text, unitEnd);
  if (end === null) return null;
  for (let start = to - 1; start >= Math.max(0, to - LONGEST_FOOD); start -= 1) {
    if (!opens(text, start)) continue;
    const food = text.food(start);
    if (!food || food.to !== to) return null;
    const noun = marks.at('noun', food.from);
    return { quantity, food, own: noun?.to !== food.to, start, end };
  }
  return null;
}

/** Whether a line, or a part of it, begins at a token. */
function opens({ tokens }: Text, at: number): boolean {
  const before = tokens[at - 1];
  if (before === undefined || before.kind === 'line' || /^[,;]$/.test(before.text)) return true;
  const bullet = /^[•*·–-]$/.test(before.text);
  return bullet && (tokens[at - 2]?.kind ?? 'line') === 'line';
}

/** The end of a line or of a part of it, with words in brackets before; null where anything else follows. */
function closes({ tokens }: Text, at: number): number | null {
  let end = at;
  if (tokens[end]?.text === '(') {
    while (tokens[end] !== undefined && tokens[end]?.kind !== 'line' && tokens[end]?.text !== ')')
      end += 1;
    end += 1;
  }
  const next = tokens[end];
  return next === undefined || next.kind === 'line' || /^[,;.]$/.test(next.text) ? end : null;
}

function say({ quantity, food }: Entry): void {
  const { unit } = quantity;
  const container = unit === null || unit.of === 'container';
  quantity.noun = null;
  quantity.end = Math.min(quantity.end, quantity.unitEnd);
  quantity.said = {
    kind: 'amount',
    unit: container ? 'piece' : (unit.unit ?? 'piece'),
    food: food.name,
  };
}
