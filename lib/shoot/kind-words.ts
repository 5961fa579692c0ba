import { minutesText } from '#lib/shoot/day-words';
import type { DayFacts } from '#lib/shoot/day-facts';

/**
 * What kind of day it is, in words that claim what the plan holds: meals are the steps of eating, and only those that
 * are really eaten are kept apart.
 * @example kindWords(facts) // 'As lived: meals in viewing order, each at least 3 h after the one before it.'
 */
export function kindWords({ day, meals }: Pick<DayFacts, 'day' | 'meals'>): string {
  const eaten = meals.filter(({ segment }) => segment.eaten.num > 0).length;
  const apart = eaten > 1 && day.mealGapMin > 0 ? minutesText(day.mealGapMin) : null;
  if (day.kind === 'packed') {
    const meal = apart === null ? '' : ` Meals begin at least ${apart} apart.`;
    return `Packed: any order that food and story allow, for the shortest day.${meal}`;
  }
  if (apart !== null) {
    return `As lived: meals in viewing order, each begun at least ${apart} after the one before it.`;
  }
  if (meals.length > 1) return 'As lived: meals in viewing order, with no time kept between them.';
  return 'As lived: meals in viewing order. No two steps are of eating, so nothing is kept in order or apart: add a step of eating to each meal.';
}
