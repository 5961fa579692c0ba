import { UNSAID_PACK } from '#lib/episode/unsaid';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shoppingList } from '#lib/shopping/shopping-list';
import { buyText, shoppingText } from '#lib/shopping/shopping-text';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';
import { UNSAID_DAY } from '#lib/episode/unsaid';

// Refuse percent: USDA SR28 FOOD_DES (zucchini 5 ends, banana 36 skin, egg 12 shell).
const zucchini = aFood(
  'zucchini',
  {},
  { section: 'produce' },
  { refuse: { percent: 5, text: 'Ends', inValues: false }, state: 'raw' },
);
const banana = aFood(
  'banana',
  {},
  { section: 'produce' },
  { refuse: { percent: 36, text: 'Skin', inValues: false } },
);
const egg = aFood(
  'egg',
  {},
  { section: 'dairyAndEggs' },
  { refuse: { percent: 12, text: 'Shell', inValues: false } },
);
const cheese = aFood('cheese', {}, { section: 'dairyAndEggs' });

function needOf(
  food: typeof zucchini,
  line: Partial<Parameters<typeof aLine>[2]>,
  dish: Partial<Parameters<typeof aDish>[2]> = {},
) {
  const list = shoppingList(
    aFile([aDish('d', aRecipe('r', [aLine('l', food.id, line)]), dish)], [food]),
  );
  const [item] = list.items;
  if (!item) throw new Error('one item');
  return item;
}
const planned = (g: number) => ({
  planned: { lowMg: g * 1000, valueMg: g * 1000, highMg: g * 1000 },
});

describe('needs', () => {
  it.each([
    [zucchini, 380, 400],
    [banana, 353.28, 552],
    [egg, 50, 56.818],
  ])('grosses edible grams of %o up by refuse', (food, edible, bought) => {
    expect((needOf(food, planned(edible)).needMg ?? 0) / 1000).toBeCloseTo(bought, 2);
  });

  it('takes an amount as bought as it is', () => {
    expect(needOf(zucchini, { ...planned(400), asBought: true }).needMg).toBe(400_000);
  });

  it('buys raw what the recipe gives cooked, by the yield', () => {
    // USDA SR28 WEIGHT, 05306: 82 g cooked from 113.4 g raw.
    const yields = [
      { id: 'y', method: 'patty', rawMg: 113_400, cookedMg: 82_000, source: 'SR28', own: null },
    ];
    const turkey = aFood('turkey', {}, { yields }, { state: 'raw' });
    expect((needOf(turkey, { ...planned(82), state: 'cooked' }).needMg ?? 0) / 1000).toBeCloseTo(
      113.4,
      6,
    );
  });

  it('buys raw what is weighed raw, whatever state the table describes', () => {
    // USDA SR28 05306 (cooked) with two observed yields: a raw weight is bought as it is.
    const yields = [
      { id: 'a', method: 'pan', rawMg: 100_000, cookedMg: 70_000, source: 'own', own: null },
      { id: 'b', method: 'pan', rawMg: 100_000, cookedMg: 50_000, source: 'own', own: null },
    ];
    const cooked = aFood('mince', {}, { yields }, { state: 'cooked' });
    expect(needOf(cooked, { ...planned(250), state: 'raw' }).needMg).toBe(250_000);
    expect(needOf(cooked, { ...planned(60), state: 'cooked' }).needMg).toBeCloseTo(100_000, 6);
  });

  it('adds spare takes: the whole dish, or only what a take spoils', () => {
    const batches = { num: 2, den: 1 };
    expect(needOf(cheese, planned(10), { batches, spareTakes: 1 }).needMg).toBe(30_000);
    expect(
      needOf(cheese, planned(10), { batches, spareTakes: 1, spareScope: 'spoiltLines' }).needMg,
    ).toBe(20_000);
    expect(
      needOf(
        cheese,
        { ...planned(10), spoiltByTake: true },
        { batches, spareTakes: 1, spareScope: 'spoiltLines' },
      ).needMg,
    ).toBe(30_000);
  });

  it('still buys what stays in the pan', () => {
    const leftBehind = {
      kind: 'mass',
      lowMg: 5000,
      valueMg: 5000,
      highMg: 5000,
      where: 'pan',
      made: 'alike',
    } as const;
    expect(needOf(cheese, { ...planned(20), leftBehind }).needMg).toBe(20_000);
  });

  it('leaves an unknown amount open, never zero', () => {
    const item = needOf(cheese, {});
    expect(item).toMatchObject({ needMg: null, buyMg: null, open: ['l'] });
    expect(buyText(item)).toBe('amount open');
  });
});

describe('stock and packs', () => {
  const lot = (id: string, mg: number, useBy: string | null) => ({
    id,
    foodId: 'cheese',
    place: 'fridge',
    openedOn: null,
    useBy,
    moves: [
      { id: `${id}-m`, kind: 'bought' as const, deltaMg: mg, at: '2026-03-01T09:00:00.000Z' },
    ],
  });
  const pack = (id: string, netMg: number, minor: number | null) => ({
    ...UNSAID_PACK,
    id,
    foodId: 'cheese',
    name: `cheese ${netMg / 1000} g`,
    netMg,
    netMl: null,
    drainedMg: null,
    gtin: null,
    price: minor === null ? null : { minor, currency: 'USD', seenOn: '2026-03-01' },
  });
  const day = {
    id: 'day',
    date: '2026-03-07',
    kind: 'packed' as const,
    startMin: 540,
    wrapByMin: null,
    mealGapMin: 0,
    ...UNSAID_DAY,
    segments: [],
    appointments: [],
    pins: [],
  };
  const listOf = (g: number, more: Parameters<typeof aFile>[2]) =>
    shoppingList(aFile([aDish('d', aRecipe('r', [grams('l', 'cheese', g)]))], [cheese], more));

  it('buys at least the need, less stock, for any amounts', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: 0, max: 3000 }),
        fc.array(fc.integer({ min: 10, max: 1000 }), { minLength: 1, maxLength: 4 }),
        (need, stock, sizes) => {
          const packs = sizes.map((size, index) => pack(`p${index}`, size * 1000, null));
          const [item] = listOf(need, { stock: [lot('a', stock * 1000, null)], packs }).items;
          const bought = (item?.packs ?? []).reduce(
            (sum, { count, netMg }) => sum + count * (netMg ?? 0),
            0,
          );
          expect(bought + stock * 1000).toBeGreaterThanOrEqual(need * 1000);
          if (item && item.packs.length > 0) {
            const waste = bought - (item.buyMg ?? 0);
            for (const size of sizes) {
              const other =
                Math.ceil((item.buyMg ?? 0) / (size * 1000)) * size * 1000 - (item.buyMg ?? 0);
              expect(waste).toBeLessThanOrEqual(other);
            }
          }
        },
      ),
    );
  });

  it('does not count a lot that is past its use-by on the filming day, and says why', () => {
    const stock = [lot('old', 500_000, '2026-03-06'), lot('fresh', 100_000, '2026-03-07')];
    const [item] = listOf(300, { stock, day }).items;
    expect(item).toMatchObject({ stockMg: 100_000, buyMg: 200_000 });
    expect(item?.notCounted[0]).toContain('2026-03-06');
  });

  it('adds the moves of a lot up, and never counts below nothing', () => {
    const overdrawn = {
      ...lot('a', 100_000, null),
      moves: [
        { id: 'm1', kind: 'bought' as const, deltaMg: 100_000, at: '2026-03-01T09:00:00.000Z' },
        { id: 'm2', kind: 'used' as const, deltaMg: -150_000, at: '2026-03-02T09:00:00.000Z' },
      ],
    };
    expect(listOf(300, { stock: [overdrawn] }).items[0]).toMatchObject({
      stockMg: 0,
      buyMg: 300_000,
    });
  });

  it('totals what is priced and says at least where something is not', () => {
    const file = { packs: [pack('p', 100_000, 250)] };
    expect(listOf(250, file).cost).toMatchObject({ minor: 750, currency: 'USD', atLeast: false });
    expect(listOf(250, { packs: [pack('p', 100_000, null)] }).cost).toBeNull();
  });

  it('keeps what is known by volume only beside the grams, and buys it in packs by volume', () => {
    const half = { low: { num: 500, den: 1 }, high: { num: 500, den: 1 } };
    const lines = [
      grams('l', 'cheese', 120),
      aLine('poured', 'cheese', { quantity: half, unit: 'ml' }),
      aLine('a little more', 'cheese'),
    ];
    const stock = [lot('a', 500_000, null)];
    const text = shoppingText(
      shoppingList(aFile([aDish('d', aRecipe('r', lines))], [cheese], { stock })),
    );
    expect(text).toContain('[ ] cheese: 500 ml (need 120 g + 500 ml, in stock 500 g)');
    expect(text).toContain('amount open: a little more');
    expect(text).not.toContain('ALREADY');
    const bottle = { ...pack('bottle', 1, 300), netMg: null, netMl: 330 };
    const poured = shoppingList(
      aFile([aDish('d', aRecipe('r', lines.slice(1, 2)))], [cheese], { packs: [bottle] }),
    );
    expect(poured.items[0]?.packs).toMatchObject([{ count: 2, netMl: 330, minor: 600 }]);
  });

  it('prints by section with what is in the kitchen last', () => {
    const text = shoppingText(
      shoppingList(
        aFile(
          [
            aDish(
              'd',
              aRecipe('r', [
                grams('l', 'cheese', 120),
                grams('z', 'zucchini', 380),
                aLine('a pinch of luck', null),
              ]),
            ),
          ],
          [cheese, zucchini],
          { stock: [{ ...lot('a', 500_000, null) }], day },
        ),
      ),
    );
    expect(text).toBe(
      [
        'SHOPPING: Test episode',
        'For filming on 2026-03-07',
        '',
        'FRUIT AND VEGETABLES',
        '[ ] zucchini: 400 g (need 400 g)',
        '',
        'NO FOOD CHOSEN YET',
        '[ ] a pinch of luck (d)',
        '',
        'ALREADY IN THE KITCHEN',
        '    cheese: need 120 g, in stock 500 g',
        '',
      ].join('\n'),
    );
  });
});
