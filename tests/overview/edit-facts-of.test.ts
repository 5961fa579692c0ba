import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { Segment } from '#lib/episode/schema';
import { editFactsOf } from '#lib/overview/edit-facts-of';
import type { DayEvent, Entry } from '#lib/shoot/day-log';
import type { Cost } from '#lib/shopping/list-types';
import { aStep } from '../claims/judge-beyond/invented-kitchen';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

const START = Date.parse('2026-06-06T08:00:00.000Z');
type At = readonly [minute: number, entry: Entry];

/** Events of one device, each so many minutes after eight. */
function logOf(...entries: readonly At[]): DayEvent[] {
  return entries.map(([minute, entry], index): DayEvent => ({
    ...entry,
    id: `e${index}`,
    deviceId: 'phone',
    deviceSeq: index + 1,
    at: new Date(START + minute * 60_000).toISOString(),
  }));
}

const mark = (kind: 'started' | 'done' | 'skipped' | 'redo', stepId: string): Entry => ({
  kind,
  refs: { stepId },
  payload: {},
});
const read = (stepId: string, milliC: number): Entry => ({
  kind: 'temperature',
  refs: { stepId },
  payload: { milliC },
});

const dish = (id: string, more = {}) =>
  aDish(
    id,
    aRecipe(`${id}-recipe`, [
      grams(`${id}-chicken`, 'chicken', 300, { text: '300 g chicken thighs', state: 'raw' }),
      grams(`${id}-cod`, 'cod', 200, { text: '200 g cod', state: 'raw' }),
      grams(`${id}-stock`, 'stock', 200, { text: '200 g stock', state: 'raw' }),
    ]),
    {
      steps: [
        aStep(`${id}-soak`, 'Soak', { role: 'prep', evening: true }),
        aStep(`${id}-chop`, 'Chop', { role: 'prep' }),
        aStep(`${id}-bake`, 'Bake'),
        aStep(`${id}-shoot`, 'The hero shot', { role: 'shoot' }),
      ],
      ...more,
    },
  );
const FOODS = [
  aFood('chicken', {}, { name: 'Chicken, thigh, raw' }),
  aFood('cod', {}, { name: 'Fish, cod, raw' }),
  aFood('stock', {}, { name: 'Soup, stock, chicken' }),
];
const FILE = aFile([dish('a'), dish('b')], FOODS);
const facts = (...entries: readonly At[]) =>
  editFactsOf(FILE, { events: logOf(...entries), costs: [] }).dishes[0];

describe('what the log says of a dish', () => {
  const whole: readonly At[] = [
    [0, mark('started', 'a-chop')],
    [8, mark('done', 'a-chop')],
    [10, mark('started', 'a-bake')],
    [22, mark('done', 'a-bake')],
    [40, mark('done', 'a-shoot')],
  ];

  it('is the time from the first hand on it to the end of what makes it', () => {
    expect(facts(...whole)?.readyAfterS).toBe(22 * 60);
    expect(facts(...whole)?.steps).toEqual([
      { stepId: 'a-chop', tookS: 480 },
      { stepId: 'a-bake', tookS: 720 },
    ]);
  });

  it('is unknown where a step is not done, was made again or began without a press', () => {
    expect(facts(...whole.slice(0, 3))?.readyAfterS).toBeNull();
    expect(facts(...whole.slice(1))?.readyAfterS).toBeNull();
    expect(
      facts(
        ...whole,
        [23, mark('redo', 'a-bake')],
        [24, mark('started', 'a-bake')],
        [36, mark('done', 'a-bake')],
      )?.readyAfterS,
    ).toBeNull();
    expect(facts()).toMatchObject({ readyAfterS: null, steps: [], coreMilliC: [], cost: null });
  });

  it('leaves out times that are doubtful', () => {
    // Ten minutes usually; more than ten times that was hardly the step’s own.
    expect(facts([0, mark('started', 'a-bake')], [101, mark('done', 'a-bake')])?.steps).toEqual([]);
  });

  it('has the readings of its own steps alone', () => {
    expect(
      facts([1, read('a-bake', 61_000)], [2, read('b-bake', 80_000)], [3, read('a-bake', 75_000)])
        ?.coreMilliC,
    ).toEqual([61_000, 75_000]);
  });
});

describe('what is published of its raw foods', () => {
  it('is each row of the chart, the strictest first, with its source and that the local code decides', () => {
    // FoodSafety.gov: poultry 165 °F, fin fish 145 °F; a stock is no raw meat.
    const inside = facts()?.inside ?? [];
    expect(inside.map(({ fahrenheit, ingredients }) => [fahrenheit, ingredients])).toEqual([
      [165, [{ text: '300 g chicken thighs', foods: ['Chicken, thigh, raw'] }]],
      [145, [{ text: '200 g cod', foods: ['Fish, cod, raw'] }]],
    ]);
    for (const { caution } of inside) {
      expect(caution).toContain('FoodSafety.gov');
      expect(caution).toContain('Follow your local food code');
    }
  });
});

/*
 * Whatever way raw poultry comes into a dish, 165 °F is the least that is published for it (FoodSafety.gov, Safe
 * Minimum Internal Temperature Chart, 12 April 2019; the same at USDA FSIS).
 */
describe('what is published of what may be raw', () => {
  const CHICKEN_RECIPE = aRecipe('balls', [
    grams('b', 'label', 400, { text: '400 g chicken, minced' }),
  ]);
  const leastOf = (line: RecipeLine, more: Partial<Segment> = {}) =>
    editFactsOf(
      {
        ...aFile(
          [aDish('a', aRecipe('r', [line]), more)],
          [
            aFood('label', {}, { kind: 'label', name: 'Farm thighs, chicken' }),
            aFood('plain', {}, { kind: 'label', name: 'Family pack' }),
            aFood('cooked', {}, { name: 'Chicken, breast, roasted' }, { state: 'cooked' }),
            aFood('vegan', {}, { kind: 'label', name: 'Vegan pieces' }),
            aFood('rice', {}, { name: 'Rice' }),
          ],
        ),
        recipes: [CHICKEN_RECIPE],
      },
      { events: [], costs: [] },
    ).dishes[0]?.inside.map(({ fahrenheit }) => fahrenheit);

  it.each([
    ['a food of a label as it is sold', grams('l', 'label', 400, { text: '400 g thighs' })],
    ['words without a food', aLine('l', null, { text: '500 g chicken thighs' })],
    ['words beside a food that does not say it', grams('l', 'plain', 1, { text: '1 turkey' })],
    ['the food that it may be instead', grams('l', 'rice', 400, { orFoodId: 'label' })],
    ['what it is weighed as once cooked', grams('l', 'cooked', 180, { state: 'cooked' })],
    ['a dish that it is made from', aLine('l', null, { madeFrom: { recipeId: 'balls', rev: 1 } })],
  ])('finds poultry in %s', (_, line) => {
    expect(leastOf(line)).toEqual([165]);
  });

  it('finds it in a step that goes to an inside temperature, and in the title where nothing is said', () => {
    const step = aStep('s', 'Roast the chicken', { coreMilliC: 71_000 });
    expect(leastOf(aLine('l', null, { text: '1 whole bird' }), { steps: [step] })).toEqual([165]);
    expect(leastOf(aLine('l', null, { text: '1 bird' }), { title: 'Roast duck' })).toEqual([165]);
  });

  it('finds none in what is confirmed to be meatless, or in what is made of it', () => {
    expect(leastOf(grams('l', 'vegan', 400, { text: '400 g chicken' }))).toEqual([]);
    expect(leastOf(aLine('l', null, { text: '400 ml chicken stock' }))).toEqual([]);
  });

  it('ends where dishes are made from each other', () => {
    const ring = aLine('l', null, { text: 'chicken', madeFrom: { recipeId: 'r', rev: 1 } });
    expect(leastOf(ring)).toEqual([165]);
  });
});

const cost = (minor: number, more: Partial<Cost> = {}): Cost => ({
  minor,
  currency: 'EUR',
  low: minor - 10,
  high: minor + 10,
  atLeast: false,
  oldest: '2026-06-01',
  ...more,
});

describe('what dishes and the day cost', () => {
  const of = (costs: readonly Cost[], file = FILE) =>
    editFactsOf(file, {
      events: [],
      costs: costs.map((each, index) => ({ segmentId: 'ab'[index] ?? '', cost: each })),
    });

  it('is the sum of what is eaten of them', () => {
    const { dishes, dayCost } = of([cost(400), cost(600)]);
    expect(dishes.map((each) => each.cost?.minor)).toEqual([400, 600]);
    expect(dayCost).toEqual({ lowMinor: 980, minor: 1000, highMinor: 1020, currency: 'EUR' });
    const half = aFile([dish('a', { eaten: { num: 1, den: 2 } }), dish('b')], FOODS);
    expect(of([cost(400), cost(600)], half).dayCost?.minor).toBe(800);
  });

  it('is unknown where a price is missing, in two currencies, or where nobody knows the share', () => {
    expect(of([cost(400), cost(600, { atLeast: true })])).toMatchObject({ dayCost: null });
    expect(of([cost(400), cost(600, { atLeast: true })]).dishes[1]?.cost).toBeNull();
    expect(of([cost(400)]).dayCost).toBeNull();
    expect(of([cost(400), cost(600, { currency: 'USD' })]).dayCost).toBeNull();
    const byEye = aFile([dish('a', { ate: { kind: 'byEye', permille: 100 } }), dish('b')], FOODS);
    expect(of([cost(400), cost(600)], byEye).dayCost).toBeNull();
  });

  it('never has a value outside its bounds', () => {
    const some = fc.record({
      minor: fc.integer({ min: 10, max: 90_000 }),
      den: fc.integer({ min: 1, max: 9 }),
    });
    fc.assert(
      fc.property(some, some, (a, b) => {
        const file = aFile(
          [
            dish('a', { eaten: { num: 1, den: a.den } }),
            dish('b', { eaten: { num: 1, den: b.den } }),
          ],
          FOODS,
        );
        const day = of([cost(a.minor), cost(b.minor)], file).dayCost;
        const exact = a.minor / a.den + b.minor / b.den;
        expect(day).not.toBeNull();
        expect(day?.lowMinor).toBeLessThanOrEqual(exact);
        expect(day?.highMinor).toBeGreaterThanOrEqual(exact);
        expect(Math.abs((day?.minor ?? 0) - exact)).toBeLessThanOrEqual(0.5 + 1e-9);
      }),
    );
  });
});
