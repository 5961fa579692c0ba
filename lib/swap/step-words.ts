import type { AmountContext } from '#lib/episode/context';
import type { SwapStep } from '#lib/episode/publish-schema';
import type { Recipe } from '#lib/episode/recipe-schema';
import { gramsOf } from '#lib/swap/counted-amount';
import { printGrams } from '#lib/units/print';

/**
 * What one step of a swap does, in words: 'Full-fat curd in place of 200 g curd', 'oats: 100 g instead of 80 g',
 * 'without the oil', 'and 15 g of Honey'.
 * @param recipe as it is without the swap
 */
export function stepWords(step: SwapStep, recipe: Recipe, context: AmountContext): string {
  const food =
    'foodId' in step ? (context.foods.get(step.foodId)?.name ?? 'a food that is gone') : '';
  const line = 'lineId' in step ? recipe.lines.find(({ id }) => id === step.lineId) : undefined;
  const text = line?.text ?? 'an ingredient that is gone';
  const grams = (mg: number) => `${printGrams(mg)} g`;
  switch (step.kind) {
    case 'add':
      return `and ${grams(step.massMg)} of ${food}`;
    case 'leaveOut':
      return `without ${text}`;
    case 'food':
      return `${food} in place of ${text}${step.massMg === null ? '' : `, ${grams(step.massMg)}`}`;
    case 'amount': {
      const was = line ? gramsOf(line, recipe, context) : null;
      return `${text}: ${grams(step.massMg)}${was ? ` instead of ${grams(was.valueMg)}` : ''}`;
    }
  }
}

/** A name for a swap that has none yet, of what its first step does: 'Full-fat curd', 'no oats'. */
export function proposedName(
  steps: readonly SwapStep[],
  recipe: Recipe,
  context: AmountContext,
): string {
  const [first] = steps;
  if (!first) return '';
  const named = (id: string) => context.foods.get(id)?.name ?? '';
  const line = 'lineId' in first ? recipe.lines.find(({ id }) => id === first.lineId) : undefined;
  const food = named(line?.foodId ?? '') || (line?.text ?? '');
  switch (first.kind) {
    case 'food':
      return named(first.foodId).slice(0, 120);
    case 'add':
      return `${named(first.foodId)} added`.slice(-120);
    case 'leaveOut':
      return `no ${food}`.slice(0, 120);
    case 'amount': {
      const was = line ? gramsOf(line, recipe, context) : null;
      return `${was && was.valueMg > first.massMg ? 'less' : 'more'} ${food}`.slice(0, 120);
    }
  }
}

/** Steps with one more: what it says of an ingredient takes the place of what was said of the same before. */
export function withStep(steps: readonly SwapStep[], step: SwapStep): readonly SwapStep[] {
  if (step.kind === 'add') return [...steps, step];
  const replaced = (each: SwapStep) =>
    each.kind !== 'add' &&
    each.lineId === step.lineId &&
    (step.kind !== 'amount' || each.kind === 'amount');
  const others = steps.filter((each) => !replaced(each));
  // An amount of the food that was put in its place before belongs to that food's step.
  const put = others.find(
    (each) => each.kind === 'food' && step.kind === 'amount' && each.lineId === step.lineId,
  );
  if (put?.kind === 'food' && step.kind === 'amount') {
    return others.map((each) => (each === put ? { ...put, massMg: step.massMg } : each));
  }
  return [...others, step];
}
