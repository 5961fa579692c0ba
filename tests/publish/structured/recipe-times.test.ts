import { describe, expect, it } from 'vitest';
import type { Dish } from '#lib/episode/context';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { Segment } from '#lib/episode/schema';
import type { Step, StepLink } from '#lib/episode/step-schema';
import { recipeTimes } from '#lib/publish/structured/recipe-times';
import { link, step } from '../../shoot/made-day';
import { aDish, aLine, aRecipe } from '../../support/build';

const MIN = 60;
const of = (id: string, role: Step['role'], minutes: number, more: Partial<Step> = {}) =>
  step(id, { title: id, role, usualS: minutes * MIN, hands: true, ...more });
const alone = { hands: false };

const dish = (steps: readonly Step[], more: Partial<Segment> = {}, lines: RecipeLine[] = []) =>
  aDish('d', aRecipe('r', lines), { steps: [...steps], ...more }) as Dish;
/** Each behind the one before it. */
const chain = (...ids: string[]): StepLink[] =>
  ids.slice(1).map((to, at) => link(ids[at] ?? '', to, 0, null));

describe('times of a dish', () => {
  it('are sums where steps follow each other, with waits between', () => {
    const steps = [
      of('stir', 'prep', 15),
      of('bake', 'cook', 45, alone),
      of('cool', 'wait', 30, alone),
    ];
    expect(recipeTimes(dish(steps), chain('stir', 'bake', 'cool'))).toEqual({
      times: { prepTime: 'PT15M', cookTime: 'PT45M', totalTime: 'PT1H30M' },
      left: [],
    });
  });

  it('of steps that all take the hands need no ties', () => {
    const steps = [of('chop', 'prep', 10), of('fry', 'cook', 20)];
    expect(recipeTimes(dish(steps), []).times).toEqual({
      prepTime: 'PT10M',
      cookTime: 'PT20M',
      totalTime: 'PT30M',
    });
  });

  it('are left out where steps may go on side by side, with both ends of all time', () => {
    const steps = [
      of('chop', 'prep', 10),
      of('simmer', 'cook', 32, alone),
      of('brown', 'cook', 12),
      of('fold', 'cook', 4),
    ];
    const links = [...chain('chop', 'simmer', 'fold'), ...chain('chop', 'brown', 'fold')];
    expect(recipeTimes(dish(steps), links)).toEqual({
      times: { prepTime: 'PT10M' },
      left: [
        { what: 'cook time', why: '“simmer” and “brown” may go on side by side' },
        { what: 'total time', why: '46–58 min, depending on which steps go on side by side' },
      ],
    });
  });

  it('are left out where nobody has said what comes first', () => {
    const steps = [of('stir', 'prep', 15), of('bake', 'cook', 45, alone)];
    expect(recipeTimes(dish(steps), [])).toEqual({
      times: { prepTime: 'PT15M', cookTime: 'PT45M' },
      left: [{ what: 'total time', why: '45–60 min, depending on which steps go on side by side' }],
    });
  });

  it('count a rest once, whether the step or a tie asks for it', () => {
    const rest = [
      of('mix', 'prep', 10),
      of('bake', 'cook', 14, { ...alone, restS: 600 }),
      of('show', 'shoot', 5),
      of('eat', 'eat', 20),
    ];
    const links = [
      ...chain('mix', 'bake'),
      link('bake', 'show', 600, null),
      ...chain('show', 'eat'),
    ];
    expect(recipeTimes(dish(rest), links).times.totalTime).toBe('PT34M');
    const tied = rest.map((each) => ({ ...each, restS: 0 }));
    expect(recipeTimes(dish(tied), links).times.totalTime).toBe('PT34M');
  });

  it('have none of what comes after the meal, or after what is shown and before no meal', () => {
    const steps = [
      of('fry', 'cook', 20),
      of('show', 'shoot', 5),
      of('eat', 'eat', 15),
      of('chill', 'prep', 4),
      of('lids', 'prep', 3),
    ];
    const links = [...chain('fry', 'show', 'eat', 'chill'), ...chain('show', 'lids')];
    expect(recipeTimes(dish(steps), links)).toEqual({
      times: { cookTime: 'PT20M', totalTime: 'PT20M' },
      left: [],
    });
    // Shown before it goes into the oven, and eaten after.
    const dough = [
      of('knead', 'prep', 10),
      of('show', 'shoot', 5),
      of('bake', 'cook', 30),
      of('eat', 'eat', 9),
    ];
    expect(recipeTimes(dish(dough), chain('knead', 'show', 'bake', 'eat')).times).toEqual({
      prepTime: 'PT10M',
      cookTime: 'PT30M',
      totalTime: 'PT40M',
    });
  });

  it('of all of it are not known where a part is done the evening before', () => {
    const steps = [of('thaw', 'wait', 600, { evening: true }), of('fry', 'cook', 10)];
    expect(recipeTimes(dish(steps), chain('thaw', 'fry'))).toEqual({
      times: { cookTime: 'PT10M' },
      left: [{ what: 'total time', why: '“thaw” is done the evening before' }],
    });
  });

  it('of all of it are not known where it is made from a dish with steps of its own', () => {
    const line = aLine('1 batch of sauce', null, { madeFrom: { recipeId: 's', rev: 1 } });
    const { times, left } = recipeTimes(dish([of('bake', 'cook', 10)], {}, [line]), []);
    expect(times).toEqual({ cookTime: 'PT10M' });
    expect(left.map(({ why }) => why)).toEqual([
      '“1 batch of sauce” is a dish with steps of its own',
    ]);
  });

  it('are none of several batches, nor of preparing alone', () => {
    const two = dish([of('bake', 'cook', 10)], { batches: { num: 2, den: 1 } });
    expect(recipeTimes(two, [])).toEqual({
      times: {},
      left: [{ what: 'times', why: 'its steps are of other than one batch' }],
    });
    expect(recipeTimes(dish([of('chop', 'prep', 10)]), []).left).toEqual([
      { what: 'times', why: 'it has no steps to cook or wait' },
    ]);
  });
});
