import { hedgeBehind } from './hedge-behind';
import type { Quantity } from './quantity';
import type { Text } from '../words/text';

/** Tokens around words that soften all numbers beside them: 'macros are approximate'. */
const REACH = 30;

/** 'thirty four grams of fat a plate, give or take': a hedge behind the part that a number is of. */
export function softenParts(text: Text, quantities: readonly Quantity[]): void {
  for (const quantity of quantities) {
    if (quantity.hedge !== 'none' || quantity.said === null) continue;
    const part = text.marks.at('scope', quantity.end);
    const soft = part && hedgeBehind(text, part.to);
    if (soft) quantity.hedge = soft.value;
  }
}

/**
 * Gives each nutrient without a hedge of its own the one that is said of all: in the sentence of these words, or, where
 * it has no number, in what follows.
 */
export function softenAll({ marks, sentences }: Text, quantities: readonly Quantity[]): void {
  const all = marks.all('allAbout');
  if (all.length === 0) return;
  const numbered = new Set(
    quantities
      .filter(({ said }) => said?.kind === 'nutrient')
      .map(({ from }) => sentences.of[from]),
  );
  let next = 0;
  for (const quantity of quantities) {
    while ((all[next]?.to ?? Infinity) < quantity.begin - REACH) next += 1;
    const mark = all[next];
    if (!mark || quantity.said?.kind !== 'nutrient' || quantity.hedge !== 'none') continue;
    const [said, own] = [sentences.of[mark.from] ?? 0, sentences.of[quantity.from] ?? 0];
    const beside = own === said && mark.from - quantity.end <= REACH;
    // 'All macros are approximate. This comes to 560 calories, 48 protein.'
    const announced = own > said && !numbered.has(said);
    if (beside || announced) quantity.hedge = 'about';
  }
}
