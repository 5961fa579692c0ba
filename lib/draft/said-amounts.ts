import { readStatements } from '#lib/claims/read-statements';
import type { Statement } from '#lib/claims/statement';
import { fold, singular } from '#lib/units/plain-words';
import { leftOut } from './described';
import type { DraftLine, DraftPortions, LeftOut } from './draft';
import { ingredientRow, type IngredientRow } from './ingredient-row';
import { fromSpoken, type SpokenText } from './spoken';

/** What is said of one dish that its ingredients and portions can be taken from. */
export interface SaidAmounts {
  readonly lines: readonly DraftLine[];
  readonly portions: DraftPortions | null;
  readonly left: readonly LeftOut[];
}

type Amount = Extract<Statement, { kind: 'amount' }>;

/**
 * Ingredients from amounts that are said, "I used 220 grams of turkey", and the portions a dish is said to make,
 * between two places of what is said. One food is one ingredient: what is said of it again is left out, by line.
 */
export function saidAmounts(spoken: SpokenText, start: number, end: number): SaidAmounts {
  const lines = new Map<string, DraftLine>();
  const left: LeftOut[] = [];
  const counts: DraftPortions[] = [];
  for (const statement of readStatements(spoken.text.slice(start, end), { form: 'captions' })) {
    const from = fromSpoken(spoken, start + statement.start, start + statement.end);
    if (statement.kind === 'portions') {
      const { low, high, hedge, unsure } = statement;
      const exact = low === high && hedge === 'none' && !unsure && Number.isInteger(low);
      if (exact && low > 1 && low <= 1000) counts.push({ count: low, from });
    }
    if (statement.kind !== 'amount' || statement.food === undefined) continue;
    const key = foodKey(statement.food);
    const before = lines.get(key);
    const again = before?.from.words === from.words;
    const line = again ? before : lineOf(statement);
    if (line === null) {
      left.push(leftOut('amount', from));
      continue;
    }
    if (before === undefined) lines.set(key, { ...line, from });
    else if (before.text !== line.text) {
      left.push(
        leftOut('amount', from, 'An amount of this food was said before: the first one stands.'),
      );
    }
  }
  const [first] = counts;
  const agreed = counts.every(({ count }) => count === first?.count);
  if (!agreed) {
    for (const { from } of counts) left.push(leftOut('portions', from));
  }
  return { lines: [...lines.values()], portions: agreed ? (first ?? null) : null, left };
}

const foodKey = (food: string) => fold(food).split(/\s+/).map(singular).join(' ');

/** The ingredient in the words that say it; null where they don't read as the amount that was heard. */
function lineOf(statement: Amount): IngredientRow | null {
  if (statement.unsure) return null;
  if (statement.scope !== 'dish' && statement.scope !== 'whole' && statement.scope !== 'unknown')
    return null;
  const words = statement.words.replace(/\s+/g, ' ');
  for (const text of [words, `${words} ${statement.food ?? ''}`]) {
    const read = ingredientRow(text);
    if (read && isSame(read, statement)) return read;
  }
  return null;
}

function isSame({ parts }: IngredientRow, { low, high, unit }: Amount): boolean {
  const [part] = parts;
  if (parts.length !== 1 || !part?.quantity) return false;
  const near = (value: number, wanted: number) => Math.abs(value - wanted) <= 1e-9 * wanted;
  const of = ({ num, den }: { readonly num: number; readonly den: number }) => num / den;
  const counted = part.unit === unit || (unit === 'piece' && part.unit === 'pack');
  const plain = counted && near(of(part.quantity.low), low) && near(of(part.quantity.high), high);
  if (plain) return true;
  const { weight } = part;
  return (
    unit === 'g' &&
    weight !== null &&
    near(weight.lowMg, low * 1000) &&
    near(weight.highMg, high * 1000)
  );
}
