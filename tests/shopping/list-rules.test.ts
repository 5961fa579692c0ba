import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pack, StockLot, PantryFood } from '#lib/episode/stock-schema';
import { UNSAID_DAY, UNSAID_PACK } from '#lib/episode/unsaid';
import type { Food } from '#lib/foods/food';
import { countStock, lotLastDay } from '#lib/shopping/counted-stock';
import { sumOfPrices } from '#lib/shopping/list-cost';
import { shelfAmount } from '#lib/shopping/shelf-amount';
import { shoppingList } from '#lib/shopping/shopping-list';
import { buyText, isInStock, needText, shoppingText } from '#lib/shopping/shopping-text';
import { shortageText } from '#lib/shopping/shortage';
import { takeFromLots } from '#lib/shopping/take-from-lots';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

const cheese = aFood('cheese', {}, { section: 'dairyAndEggs' });
const onDay = (date: string) => ({
  ...{ id: `day-${date}`, date, kind: 'packed' as const, startMin: 540, wrapByMin: null },
  ...{ mealGapMin: 0, segments: [], appointments: [], pins: [] },
  ...UNSAID_DAY,
});
const lot = (id: string, mg: number, more: Partial<StockLot> = {}): StockLot => ({
  ...{ id, foodId: 'cheese', place: 'fridge', openedOn: null, useBy: null },
  moves: [{ id: `${id}-m`, kind: 'bought', deltaMg: mg, at: '2026-03-01T09:00:00.000Z' }],
  ...more,
});
const pack = (id: string, netMg: number | null, minor: number, more: Partial<Pack> = {}): Pack => ({
  ...{ id, foodId: 'cheese', name: id, netMg, netMl: null, drainedMg: null, gtin: null },
  ...UNSAID_PACK,
  price: { minor, currency: 'USD', seenOn: '2026-03-01' },
  ...more,
});
const said = (more: Partial<PantryFood>): PantryFood => ({
  ...{ foodId: 'cheese', answer: null, opened: null },
  ...more,
});
const dish = (g: number, more: Parameters<typeof aDish>[2] = {}) =>
  aDish('d', aRecipe('r', [grams('l', 'cheese', g)]), more);
const listOf = (
  g: number,
  more: Parameters<typeof aFile>[2] = {},
  food: Food = cheese,
  segment: Parameters<typeof aDish>[2] = {},
) => {
  const list = shoppingList(aFile([dish(g, segment)], [food], more));
  const [item] = list.items;
  if (!item) throw new Error('one item');
  return { list, item };
};

describe('the person’s word', () => {
  const answer = (is: 'have' | 'notEnough' | 'none', remark = '') => ({
    pantry: [said({ answer: { is, on: '2026-03-05', remark } })],
  });

  it('have: nothing is bought; not enough or none: all of the need, with the remark', () => {
    const have = listOf(300, answer('have')).item;
    expect(have).toMatchObject({ buyMg: 0, packs: [] });
    expect(isInStock(have)).toBe(true);
    expect(needText(have)).toBe('need 300 g, have it, you said on 2026-03-05');
    const some = listOf(300, answer('notEnough', 'a handful')).item;
    expect(some.buyMg).toBe(300_000);
    expect(needText(some)).toContain('not enough, you said on 2026-03-05: a handful');
    expect(listOf(300, answer('none')).item.buyMg).toBe(300_000);
  });

  it('gives way to lots, where the food has any', () => {
    const { item } = listOf(300, { ...answer('have'), stock: [lot('a', 100_000)] });
    expect(item).toMatchObject({ answer: null, stockMg: 100_000, buyMg: 200_000 });
  });
});

describe('lots', () => {
  // FoodSafety.gov, Cold Food Storage Chart: raw ground meat and poultry 1 to 2 days, raw poultry pieces 1 to 2 days,
  // steaks 3 to 5 days, bacon 7 days, eggs in shell 3 to 5 weeks, raw whites 2 to 4 days, lunch meat opened 3 to 5 days.
  it.each([
    ['Turkey, ground, 93% lean, raw', '2026-03-04'],
    ['Chicken, breast, skinless, raw', '2026-03-04'],
    ['Beef, sirloin, raw', '2026-03-07'],
    ['Pork, bacon, raw', '2026-03-09'],
    ['Egg, whole, raw, fresh', '2026-04-06'],
    ['Egg, white, raw, fresh', '2026-03-06'],
    ['Lunch meat, turkey', '2026-03-07'],
  ])('%s opened on 2 March is used by %s', (name, on) => {
    const food = aFood('cheese', {}, { name }, { state: 'raw' });
    const found = lotLastDay(lot('a', 1, { openedOn: '2026-03-02' }), food);
    expect(found?.on).toBe(on);
    expect(found?.why).toContain('FoodSafety.gov');
  });

  it('past their last day are not counted and say why; the person’s own days win over the chart', () => {
    const turkey = aFood('cheese', {}, { name: 'Turkey, ground, raw' }, { state: 'raw' });
    const opened = lot('a', 500_000, { openedOn: '2026-03-04', useBy: '2026-03-20' });
    const day = onDay('2026-03-07');
    const { item } = listOf(300, { stock: [opened], day }, turkey);
    expect(item).toMatchObject({ stockMg: 0, buyMg: 300_000 });
    expect(item.notCounted[0]).toBe(
      '500 g, fridge: opened 2026-03-04, raw ground meat and poultry: 1 to 2 days in the refrigerator (FoodSafety.gov, Cold Food Storage Chart), until 2026-03-06, before the filming day',
    );
    const pantry = [said({ opened: { days: 3, source: 'the butcher' } })];
    expect(listOf(300, { stock: [opened], day, pantry }, turkey).item).toMatchObject({
      stockMg: 500_000,
      buyMg: 0,
    });
    const frozen = lot('a', 500_000, { openedOn: '2026-03-04', place: 'freezer' });
    expect(listOf(300, { stock: [frozen], day }, turkey).item.stockMg).toBe(500_000);
  });

  it('cover what any order of using them could, on the days on which they are good', () => {
    const days = ['2026-03-02', '2026-03-04', '2026-03-06'] as const;
    const amount = fc.integer({ min: 0, max: 6 });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(amount, fc.option(fc.constantFrom(...days))), { maxLength: 3 }),
        fc.array(fc.tuple(amount, fc.constantFrom(...days)), { minLength: 1, maxLength: 3 }),
        (lots, needs) => {
          const stock = lots.map(([mg, useBy], at) => lot(`l${at}`, mg, { useBy }));
          const dated = needs.map(([mg, date]) => ({ mg, date }));
          const { coveredMg, notCounted, stockMg } = countStock(cheese, stock, dated);
          // Hall's condition on nested windows: over each last day, no more than the needs up to it take.
          let open = dated.map((need) => ({ ...need }));
          let covered = 0;
          for (const day of [...days, '9999']) {
            for (const of of lots.filter(([, useBy]) => (useBy ?? '9999') === day)) {
              let left = of[0];
              open = open.map((need) => {
                const used = need.date <= day ? Math.min(left, need.mg) : 0;
                left -= used;
                covered += used;
                return { ...need, mg: need.mg - used };
              });
            }
          }
          expect(coveredMg).toBe(covered);
          expect(coveredMg).toBeLessThanOrEqual(stockMg);
          expect(notCounted.length).toBeLessThanOrEqual(lots.length);
        },
      ),
    );
  });

  it('give what was weighed, first expiring first, and are never taken below nothing', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -5, max: 30 }), { maxLength: 4 }),
        fc.integer({ min: 0, max: 80 }),
        (amounts, mg) => {
          const stock = amounts.map((each, at) =>
            lot(`l${at}`, each, { useBy: `2026-04-0${9 - at}` }),
          );
          const { takes, shortMg } = takeFromLots(cheese, stock, mg, '2026-03-07');
          const taken = takes.reduce((sum, take) => sum + take.mg, 0);
          expect(taken + shortMg).toBe(mg);
          for (const take of takes) {
            const index = Number(take.lotId.slice(1));
            expect(take.mg).toBeLessThanOrEqual(amounts[index] ?? 0);
            // A lot that expires earlier is empty before a later one is touched.
            for (const [other, there] of amounts.entries()) {
              if (other <= index || there <= 0) continue;
              expect(takes.find(({ lotId }) => lotId === `l${other}`)?.mg).toBe(there);
            }
          }
        },
      ),
    );
  });
});

describe('needs', () => {
  it('keep what a take needs again for pickups, and say so in the working', () => {
    const { item } = listOf(100, {}, cheese, { spareTakes: 1, pickupReserve: 2 });
    expect(item.needMg).toBe(400_000);
    expect(item.working[0]).toMatchObject({ batches: 1, spareTakes: 1, pickups: 2 });
    const spoilt = { spareScope: 'spoiltLines', pickupReserve: 2 } as const;
    expect(listOf(100, {}, cheese, spoilt).item.needMg).toBe(100_000);
  });

  it('of a span are those of its episodes together, each with its day and note', () => {
    const file = (id: string, date: string) => {
      const lines = [aLine('l', 'cheese', { ...grams('l', 'cheese', 200), shopNote: `for ${id}` })];
      const made = aFile([aDish(`d-${id}`, aRecipe(`r-${id}`, lines))], [cheese], {
        day: onDay(date),
        stock: [lot('a', 300_000, { useBy: '2026-03-03' })],
      });
      return { ...made, episode: { ...made.episode, id, title: id } };
    };
    const list = shoppingList([file('one', '2026-03-02'), file('two', '2026-03-05')]);
    // The lot of 300 g is good for the first day alone.
    expect(list.items[0]).toMatchObject({ needMg: 400_000, stockMg: 300_000, buyMg: 200_000 });
    // What is left of it after the first day is past before the second, and no rest.
    expect(list.items[0]?.leftover).toBeNull();
    expect(list.items[0]?.notes).toEqual(['for one', 'for two']);
    expect(list.items[0]?.working.map(({ episode, date }) => [episode, date])).toEqual([
      ['one', '2026-03-02'],
      ['two', '2026-03-05'],
    ]);
    expect(list.items[0]?.notCounted[0]).toContain('before the filming day 2026-03-05');
    expect(list).toMatchObject({ forDate: '2026-03-02', toDate: '2026-03-05' });
  });
});

describe('packs of a list', () => {
  it('hold what is left of them drained', () => {
    const tin = pack('tin', 400_000, 150, { drainedMg: 240_000 });
    expect(listOf(480, { packs: [tin] }).item.packs).toMatchObject([{ count: 2, netMg: 240_000 }]);
  });

  it('in millilitres count by the food’s own weight of a volume, which is asked for where it is not known', () => {
    const bottle = pack('bottle', null, 300, { netMl: 500 });
    const asked = listOf(100, { packs: [bottle] }).item;
    expect(asked).toMatchObject({ packs: [], buyMg: 100_000 });
    expect(asked.asks).toEqual([
      'Say what 100 ml of cheese weigh: bottle is in millilitres, and grams are needed.',
    ]);
    const cup = {
      id: 'm',
      name: 'cup',
      qtyNum: 1,
      qtyDen: 1,
      massMg: 236_588,
      digits: 0,
      source: '',
    };
    const known = { ...cheese, measures: [cup] };
    expect(listOf(100, { packs: [bottle] }, known).item.packs).toMatchObject([{ count: 1 }]);
  });

  it('are the cheapest over shops, and an offer counts while it holds', () => {
    const at = (shopId: string, minor: number, more = {}) => ({
      ...{
        shopId,
        minor,
        currency: 'USD',
        seenOn: '2026-03-01',
        count: 1,
        most: null,
        until: null,
      },
      ...more,
    });
    const shops = ['pier', 'quay'].map((id) => ({ id, name: id, sections: [] }));
    const ended = { count: 3, minor: 100, until: '2026-03-06' };
    const packs = [
      pack('block', 250_000, 400, {
        prices: [at('quay', 350), at('pier', 380), at('pier', 0, ended)],
      }),
    ];
    const list = (options: Parameters<typeof shoppingList>[1]) =>
      shoppingList(aFile([dish(700)], [cheese], { packs, shops }), options);
    const [both] = list({}).items;
    expect(both?.packs).toMatchObject([{ count: 3, shopId: 'quay', minor: 1050 }]);
    const [pier] = list({ shopIds: ['pier'] }).items;
    expect(pier?.packs).toMatchObject([{ count: 3, shopId: 'pier', minor: 1140 }]);
    const [earlier] = list({ today: '2026-03-05' }).items;
    expect(earlier?.packs).toMatchObject([{ count: 3, atOnce: 3, minor: 100 }]);
  });

  it('are there without a sum where offers alone do not go far enough', () => {
    const tub = pack('tub', 100_000, 0, {
      price: null,
      prices: [
        {
          ...{ shopId: 'quay', minor: 300, currency: 'USD', seenOn: '2026-03-01', count: 2 },
          ...{ most: 1, until: null },
        },
      ],
    });
    const item = (g: number) =>
      listOf(g, { packs: [tub], shops: [{ id: 'quay', name: 'quay', sections: [] }] }).item;
    expect(item(200)).toMatchObject({ packs: [{ count: 2, minor: 300 }] });
    expect(item(500)).toMatchObject({ packs: [{ count: 5, minor: null }] });
    expect(item(500).why).toContain('more is needed than the offer goes for');
  });

  it('say the sum where a larger one wins for what keeps until a planned use', () => {
    const packs = [pack('half', 500_000, 200), pack('kilo', 1_000_000, 300)];
    const pantry = [said({ opened: { days: 7, source: 'on the pack' } })];
    const first = aFile([dish(500)], [cheese], { packs, pantry, day: onDay('2026-03-02') });
    const later = aFile([aDish('pie', aRecipe('p', [grams('x', 'cheese', 400)]))], [cheese], {
      day: onDay('2026-03-08'),
    });
    const item = shoppingList(first, { later: [later] }).items[0];
    expect(item?.packs).toMatchObject([{ packId: 'kilo', count: 1 }]);
    expect(item?.why).toBe(
      'USD 3.00 less USD 1.20 for 400 g that keep for pie is USD 1.80; 1 × half, with less left over, would be USD 2.00',
    );
    expect(item?.leftover).toMatchObject({ mg: 500_000, lastDay: '2026-03-09' });
    expect(item?.leftover?.uses).toMatchObject([{ segment: 'pie', mg: 400_000 }]);
    const tooLate = { ...later, day: onDay('2026-03-12') };
    expect(shoppingList(first, { later: [tooLate] }).items[0]?.packs).toMatchObject([
      { packId: 'half' },
    ]);
  });

  it('whatever there is, bought and counted stock are never less than the need', () => {
    const sizes = fc.array(
      fc.tuple(fc.integer({ min: 10, max: 900 }), fc.integer({ min: 0, max: 900 })),
      {
        minLength: 1,
        maxLength: 5,
      },
    );
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4000 }),
        fc.integer({ min: 0, max: 2000 }),
        sizes,
        (g, there, all) => {
          const packs = all.map(([size, minor], at) => pack(`p${at}`, size * 1000, minor));
          const { item } = listOf(g, { packs, stock: [lot('a', there * 1000)] });
          const bought = item.packs.reduce(
            (sum, { count, netMg }) => sum + count * (netMg ?? 0),
            0,
          );
          expect(bought + item.stockMg).toBeGreaterThanOrEqual(g * 1000);
        },
      ),
    );
  });
});

describe('money', () => {
  const price = (minor: number, seenOn: string, currency = 'USD') => ({ minor, seenOn, currency });

  it('is as seen within a month, and widens with the years from then on', () => {
    const drift = { today: '2026-07-01', permille: 50 };
    expect(sumOfPrices([price(1000, '2026-06-15')], false, drift)).toMatchObject({
      low: 1000,
      high: 1000,
    });
    // Half a year less half a day at 5 % a year: 24.8 of 1,000.
    expect(sumOfPrices([price(1000, '2026-01-01')], false, drift)).toMatchObject({
      minor: 1000,
      low: 975,
      high: 1025,
      oldest: '2026-01-01',
    });
    expect(sumOfPrices([], false, drift)).toBeNull();
  });

  it('has a sum for each currency, and each says whether something is missing in it', () => {
    const butter = aFood('butter', {}, { section: 'dairyAndEggs' });
    const lines = [grams('a', 'cheese', 100), grams('b', 'butter', 100)];
    const abroad = { minor: 900, currency: 'DKK', seenOn: '2026-03-01' };
    const packs = [
      pack('block', 100_000, 250),
      pack('big block', 500_000, 900),
      { ...pack('stick', 100_000, 0), foodId: 'butter', price: abroad },
    ];
    const list = shoppingList(
      aFile([aDish('d', aRecipe('r', lines))], [cheese, butter], { packs }),
    );
    expect(list.cost).toMatchObject({ minor: 250, currency: 'USD', atLeast: true });
    expect(list.otherCosts).toMatchObject([{ minor: 900, currency: 'DKK', atLeast: true }]);
    expect(list.unpriced).toEqual([{ foodId: 'butter', name: 'butter' }]);
  });

  it('names every food where no price is known, and none where each has one', () => {
    const lines = [grams('a', 'cheese', 100)];
    const listOf = (packs: Pack[]) =>
      shoppingList(aFile([aDish('d', aRecipe('r', lines))], [cheese], { packs }));
    const without = { ...pack('block', 100_000, 250), price: null };
    expect(listOf([without]).unpriced).toEqual([{ foodId: 'cheese', name: cheese.name }]);
    expect(listOf([pack('block', 100_000, 250)]).unpriced).toEqual([]);
  });

  it('of a dish and its portion is what its ingredients cost, without spare takes', () => {
    const packs = [pack('block', 200_000, 400)];
    const portions = [{ id: 'p', kind: 'count' as const, name: 'bowl', of: 2 }];
    const recipe = { ...aRecipe('r', [grams('l', 'cheese', 100)]), portions };
    const list = shoppingList(aFile([aDish('d', recipe, { spareTakes: 1 })], [cheese], { packs }));
    expect(list.cost).toMatchObject({ minor: 400 });
    expect(list.dishes).toMatchObject([
      { cost: { minor: 200 }, portions: 2, each: { minor: 100 } },
    ]);
  });
});

describe('the words of a list', () => {
  // 1 lb = 453.592 37 g (NIST SP 811, Appendix B).
  it.each([
    [453_592.37, '1 lb'],
    [453_600, '1 lb 0.1 oz'],
    [500_000, '1 lb 1.7 oz'],
    [28_349.523125, '1 oz'],
    [100_000, '3.6 oz'],
  ])('%f mg are %s on a US shelf label, never less', (mg, words) => {
    expect(shelfAmount(mg, 'us')).toBe(words);
  });

  it('are in grams and kilograms elsewhere, rounded up', () => {
    expect(shelfAmount(1_240_100, 'metric')).toBe('1,241 g');
    expect(shelfAmount(2_001_000, 'metric')).toBe('2.01 kg');
    expect(shelfAmount(4_500, 'metric')).toBe('4.5 g');
  });

  it('walk through the shop in its own order, in its own units', () => {
    const apple = aFood('apple', {}, { section: 'produce' });
    const file = aFile(
      [aDish('d', aRecipe('r', [grams('a', 'apple', 500), grams('b', 'cheese', 100)]))],
      [apple, cheese],
      { shops: [{ id: 's', name: 'Quay', sections: ['dairyAndEggs', 'produce'] }] },
    );
    const list = shoppingList({ ...file, kitchen: { ...file.kitchen, shelfUnits: 'us' } });
    expect(list.items.map(({ name }) => name)).toEqual(['cheese', 'apple']);
    expect(shoppingText(list)).toContain('[ ] apple: 1 lb 1.7 oz (need 1 lb 1.7 oz)');
    const [first] = list.items;
    expect(first && buyText(first, 'us')).toBe('3.6 oz');
  });
});

describe('leftovers', () => {
  it('of what was in stock are used by their own last day, of what was bought by how it keeps opened', () => {
    const pantry = [said({ opened: { days: 5, source: '' } })];
    const day = onDay('2026-03-02');
    const stock = [lot('a', 300_000, { useBy: '2026-03-04' })];
    const inStock = listOf(100, { stock, pantry, day }).item.leftover;
    expect(inStock).toMatchObject({ mg: 200_000, lastDay: '2026-03-04' });
    const bought = listOf(100, { packs: [pack('p', 250_000, 99)], pantry, day }).item.leftover;
    expect(bought).toMatchObject({
      mg: 150_000,
      lastDay: '2026-03-07',
      why: 'keeps 5 days opened (as you said)',
    });
    expect(listOf(100).item.leftover).toBeNull();
  });
});

it('a shortage is said with what was weighed and what was there', () => {
  const shortage = { foodId: 'c', name: 'Cheese', weighedMg: 800_000, takenMg: 700_000 };
  expect(shortageText(shortage)).toBe(
    'Cheese: 800 g were weighed and 700 g were in stock, 100 g too little',
  );
});
