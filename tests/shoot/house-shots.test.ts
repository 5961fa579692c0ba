import { describe, expect, test } from 'vitest';
import { SHOT_MOMENTS, type HouseShot, type ShotMoment } from '#lib/episode/kitchen-schema';
import type { Step } from '#lib/episode/step-schema';
import { MOST_SHOTS } from '#lib/episode/step-limits';
import { houseShotsToAdd, shotLine, stepAt, USUAL_HOUSE_SHOTS } from '#lib/shoot/house-shots';
import { demoFile } from '../ui/page-support';

type Given = Pick<Step, 'id' | 'role' | 'oven' | 'burners' | 'applianceId'>;

const step = (id: string, role: Step['role'], change: Partial<Given> = {}): Given => {
  return { id, role, oven: null, burners: 0, applianceId: null, ...change };
};
const OVEN = { oven: { ovenId: null, milliC: 200_000 } };

/** A tray bake, written in its order. */
const BAKE = [
  step('look', 'shoot'),
  step('chop', 'prep'),
  step('weigh', 'prep'),
  step('bake', 'cook', OVEN),
  step('cool', 'wait'),
  step('slice', 'shoot'),
  step('plate', 'shoot'),
  step('taste', 'taste'),
  step('eat', 'eat'),
  step('say', 'talk'),
  step('clean', 'wash'),
];
const without = (...ids: string[]) => BAKE.filter(({ id }) => !ids.includes(id));

describe('the step at which a moment of a dish comes', () => {
  test.each<[ShotMoment, string | null]>([
    ['ingredientsRaw', 'chop'],
    ['onTheScale', 'chop'],
    ['intoTheHeat', 'bake'],
    ['outOfTheHeat', 'slice'],
    ['still', 'plate'],
    ['cutOpen', 'taste'],
    ['firstBite', 'taste'],
    ['number', 'say'],
  ])('%s of a bake: %s', (moment, expected) => {
    expect(stepAt(moment, BAKE)).toBe(expected);
  });

  test.each<[string, ShotMoment, readonly Given[], string | null]>([
    ['no tasting: the meal', 'cutOpen', without('taste'), 'eat'],
    ['no talk: the last bite', 'number', without('say'), 'eat'],
    ['nothing shot after the heat: what follows it', 'still', without('slice', 'plate'), 'cool'],
    ['a look before the heat shows no plate', 'outOfTheHeat', without('slice', 'plate'), 'cool'],
    ['a pan is heat', 'intoTheHeat', [step('fry', 'cook', { burners: 1 })], 'fry'],
    ['an appliance is heat', 'intoTheHeat', [step('air', 'cook', { applianceId: 'a' })], 'air'],
    ['heat at the very end has nothing after it', 'still', [step('b', 'cook', OVEN)], null],
    [
      'heat after the first bite is another serving',
      'still',
      [...BAKE, step('r', 'cook', OVEN)],
      'plate',
    ],
    ['a salad comes out of no heat', 'outOfTheHeat', without('bake'), null],
    ['a salad is shot before the bite', 'still', without('bake'), 'plate'],
  ])('%s', (_name, moment, steps, expected) => {
    expect(stepAt(moment, steps)).toBe(expected);
  });

  test('a dish without steps has no moment', () => {
    for (const moment of SHOT_MOMENTS) expect(stepAt(moment, [])).toBeNull();
  });

  test('whole plates are shown before the first bite, never after', () => {
    for (const segment of demoFile().episode.segments) {
      const bite = segment.steps.findIndex(({ role }) => role === 'taste' || role === 'eat');
      for (const moment of ['still', 'outOfTheHeat'] as const) {
        const at = segment.steps.findIndex(({ id }) => id === stepAt(moment, segment.steps));
        if (bite >= 0) expect(at).toBeLessThanOrEqual(bite);
      }
    }
  });
});

describe('the shots that a dish does not have yet', () => {
  const house: HouseShot[] = USUAL_HOUSE_SHOTS.map((shot, at) => ({ ...shot, id: `h${at}` }));
  const dish = demoFile().episode.segments.find(({ kind }) => kind === 'recipe');
  if (!dish) throw new Error('the demo has a dish');
  const bare = { ...dish, shots: [] };

  test('all of the list, in its order, each with its step', () => {
    const added = houseShotsToAdd(bare, house);
    expect(added.map(({ title }) => title)).toEqual(house.map(({ title }) => title));
    const steps = new Set(dish.steps.map(({ id }) => id));
    for (const { stepId } of added) if (stepId !== null) expect(steps.has(stepId)).toBe(true);
    expect(added.some(({ stepId }) => stepId !== null)).toBe(true);
  });

  test('a title that is there already, in whatever case, is left as it is; twice adds nothing', () => {
    const once = houseShotsToAdd(bare, house);
    const shots = once.map((shot, at) => ({ ...shot, id: `s${at}` }));
    expect(houseShotsToAdd({ ...dish, shots }, house)).toEqual([]);
    const [first, ...rest] = shots;
    if (!first) throw new Error('the list is empty');
    const loud = { ...first, title: ` ${first.title.toUpperCase()} ` };
    expect(houseShotsToAdd({ ...dish, shots: [loud] }, house)).toHaveLength(rest.length);
    const [one] = house;
    if (!one) throw new Error('the list is empty');
    expect(houseShotsToAdd(bare, [one, { ...one, id: 'again' }])).toHaveLength(1);
  });

  test('talk gets none, and no dish more than it holds', () => {
    expect(houseShotsToAdd({ ...bare, kind: 'talk' }, house)).toEqual([]);
    const shots = Array.from({ length: MOST_SHOTS - 2 }, (_, at) => {
      return { id: `s${at}`, title: `Shot ${at}`, stepId: null, framing: '', lengthS: 0 };
    });
    expect(houseShotsToAdd({ ...dish, shots }, house)).toHaveLength(2);
  });
});

test('a shot in one line says its moment only where the title does not', () => {
  expect(shotLine({ title: 'Cut open', moment: 'cutOpen', framing: 'close', lengthS: 4 })).toBe(
    'Cut open · close · 0:04',
  );
  expect(shotLine({ title: 'First bite', moment: 'firstBite', framing: '', lengthS: 6 })).toBe(
    'First bite · 0:06',
  );
  expect(shotLine({ title: 'Steam', moment: 'outOfTheHeat', framing: '', lengthS: 0 })).toBe(
    'Steam · out of the oven or pan',
  );
});
