import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editFactsOf } from '#lib/overview/edit-facts-of';
import type { DayEvent, Entry } from '#lib/shoot/day-log';
import type { Cost } from '#lib/shopping/list-types';
import { aStep } from '../claims/judge-beyond/invented-kitchen';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

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
    expect(inside.map(({ fahrenheit, foods }) => [fahrenheit, foods])).toEqual([
      [165, ['300 g chicken thighs', 'Chicken, thigh, raw']],
      [145, ['200 g cod', 'Fish, cod, raw']],
    ]);
    for (const { caution } of inside) {
      expect(caution).toContain('FoodSafety.gov');
      expect(caution).toContain('Follow your local food code');
    }
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
