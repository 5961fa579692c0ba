import type { Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';

/** How far the shares of the three macronutrients may be off a hundred, as each is rounded. */
const OFF_WHOLE = 2;
/** Tokens from the words for a split to its first number. */
const SPLIT = 12;
const MACROS: ReadonlySet<string> = new Set(['protein', 'carbohydrate', 'fat']);

/**
 * 'split: 40 % carbs, 30 % protein, 30 % fat', '40/30/30 (carbs/protein/fat)': three that come to a hundred are shares
 * of the energy, where percent or words for a split say so.
 */
export function sayShares(text: Text, quantities: readonly Quantity[]): void {
  quantities.forEach((quantity, index) => goOn(text, quantity, quantities[index + 1]));
  quantities.forEach((first, index) => {
    const row = quantities.slice(index, index + MACROS.size);
    if (row.length < MACROS.size || first.killed !== null) return;
    const nouns = row.map(({ noun, end }) => {
      const behind = text.marks.at('noun', text.marks.at('copula', end)?.to ?? end)?.role;
      return noun ?? behind;
    });
    const sum = row.reduce((all, { low }) => all + low, 0);
    if (Math.abs(sum - 100) > OFF_WHOLE || !row.every(({ low, high }) => low === high)) return;
    if (
      new Set(nouns.map((noun) => noun?.nutrient ?? '').filter((one) => MACROS.has(one))).size < 3
    )
      return;
    // '29 percent is protein, 47 carbs, 24 fat'
    const percent =
      first.unit?.unit === '%' && row.every(({ unit }) => unit === null || unit.unit === '%');
    const split = text.marks.lastIn('split', Math.max(0, first.begin - SPLIT), first.begin);
    if (!percent && !(split && row.every(({ unit }) => unit === null))) return;
    row.forEach((quantity, place) => {
      const nutrient = nouns[place]?.nutrient;
      if (nutrient !== undefined && quantity.killed === null)
        quantity.said = { kind: 'nutrient', nutrient, unit: '%' };
    });
  });
}

/** Tokens from one share to the next. */
const NEXT = 8;

/** '38 percent of the calories come from protein and 21 from fat': a share that goes on without its word. */
function goOn({ marks }: Text, { said, low, end }: Quantity, next: Quantity | undefined): void {
  if (said?.kind !== 'nutrient' || said.unit !== '%' || said.against !== undefined || !next) return;
  if (next.unit !== null || next.noun !== null || next.killed !== null) return;
  const from = marks.at('small', next.end);
  const noun = from && marks.at('noun', from.to);
  const fits = next.begin - end <= NEXT && next.low === next.high && low + next.low <= 100;
  if (!noun || !fits || !MACROS.has(noun.role.nutrient)) return;
  next.said = { kind: 'nutrient', nutrient: noun.role.nutrient, unit: '%' };
}
