import type { Dish } from '#lib/episode/context';
import type { Step, StepLink } from '#lib/episode/step-schema';
import { waysOn, type WaysOn } from '#lib/publish/structured/step-order';
import { isoDuration } from '#lib/units/iso-duration';
import { minutesSaid, minutesTyped } from '#lib/units/read-typed';

/** Times of a dish that its steps leave no doubt about, and why the others are left out. */
export interface RecipeTimes {
  readonly times: {
    readonly prepTime?: string;
    readonly cookTime?: string;
    readonly totalTime?: string;
  };
  readonly left: readonly { readonly what: string; readonly why: string }[];
}

/**
 * Times of making a dish, by the usual length of its steps that prepare, cook or wait; what must come after the meal, as
 * boxing the rest, is none of it. How long is prepared and how long something cooks is the sum of those steps, where none
 * of them can go on beside another: two steps cannot where ties put one behind the other, or where both take the hands.
 * All time, with waits, rests and what ties ask between steps, is known only where it comes to the same whether steps are
 * done side by side or one after the other, all on one day and all in this dish. Anything else is named and not guessed.
 * @param links ties between steps of the episode
 * @example recipeTimes(stirThenBake, links).times // { prepTime: 'PT15M', cookTime: 'PT45M', totalTime: 'PT1H' }
 */
export function recipeTimes(dish: Dish, links: readonly StepLink[]): RecipeTimes {
  const all = waysOn(dish.steps, links);
  const upToMeal = dish.steps.filter((step) => !isAfterMeal(step, dish, all));
  const ways = waysOn(upToMeal, links);
  const made = upToMeal.filter(isOfMaking);
  const leave = (what: string, why: string): RecipeTimes => ({ times: {}, left: [{ what, why }] });
  // Times would be of preparing alone.
  if (!made.some(({ role }) => role !== 'prep')) {
    return leave('times', 'it has no steps to cook or wait');
  }
  const { num, den } = dish.batches;
  if (num !== den) return leave('times', 'its steps are of other than one batch');
  const told = [
    sumOf(
      'prepTime',
      'prep time',
      made.filter(({ role }) => role === 'prep'),
      ways,
    ),
    sumOf(
      'cookTime',
      'cook time',
      made.filter(({ role }) => role === 'cook'),
      ways,
    ),
    totalOf(dish, made, ways),
  ];
  return {
    times: Object.fromEntries(told.flatMap(({ time }) => (time ? [time] : []))),
    left: told.flatMap(({ left }) => (left ? [left] : [])),
  };
}

interface Told {
  readonly time?: readonly [property: string, duration: string];
  readonly left?: { readonly what: string; readonly why: string };
}

const isOfMaking = ({ role }: Step) => role === 'prep' || role === 'cook' || role === 'wait';

/**
 * Behind a meal of the dish; or behind what is shown, told or tasted of it and before no meal, where there is one.
 */
function isAfterMeal({ id }: Step, { steps }: Dish, { isBehind }: WaysOn): boolean {
  const meals = steps.filter(({ role }) => role === 'eat');
  if (meals.some((meal) => isBehind(id, meal.id))) return true;
  if (meals.length === 0 || meals.some((meal) => isBehind(meal.id, id))) return false;
  return steps.some((step) => !isOfMaking(step) && isBehind(id, step.id));
}

function sumOf(property: string, what: string, steps: readonly Step[], ways: WaysOn): Told {
  if (steps.length === 0) return {};
  const beside = besideEachOther(steps, ways);
  if (beside) return { left: { what, why: beside } };
  return { time: [property, isoDuration(steps.reduce((sum, { usualS }) => sum + usualS, 0))] };
}

/** Two steps that may go on at the same time, in words; null where there are none. */
function besideEachOther(steps: readonly Step[], { isBehind }: WaysOn): string | null {
  for (const [at, one] of steps.entries()) {
    const other = steps
      .slice(at + 1)
      .find(
        (each) =>
          !(one.hands && each.hands) && !isBehind(one.id, each.id) && !isBehind(each.id, one.id),
      );
    if (other) return `“${one.title}” and “${other.title}” may go on side by side`;
  }
  return null;
}

function totalOf({ recipe }: Dish, made: readonly Step[], ways: WaysOn): Told {
  const leave = (why: string): Told => ({ left: { what: 'total time', why } });
  const early = made.find(({ evening }) => evening);
  if (early) return leave(`“${early.title}” is done the evening before`);
  const other = recipe.lines.find(({ madeFrom }) => madeFrom !== null);
  if (other) return leave(`“${other.text}” is a dish with steps of its own`);
  const least = Math.max(
    ways.longestWay(new Set(made.map(({ id }) => id))),
    made.reduce((sum, { hands, usualS }) => sum + (hands ? usualS : 0), 0),
  );
  const most = made.reduce((sum, { id, usualS }) => sum + usualS + ways.waitAfter(id), 0);
  if (least < most) {
    const range = `${minutesTyped(least)}–${minutesSaid(most)}`;
    return leave(`${range}, depending on which steps go on side by side`);
  }
  return { time: ['totalTime', isoDuration(most)] };
}
