import { describe, expect, it } from 'vitest';
import type { PackPrice } from '#lib/episode/stock-schema';
import { byFirstNeed, runsOut, shortByFood } from '#lib/shopping/runs-out';
import { latestPrices, latestPriceWords, priceWords } from '#lib/shopping/price-words';
import { shoppingList } from '#lib/shopping/shopping-list';
import { isInStock } from '#lib/shopping/shopping-text';
import { aWeekOn, watchedLots } from '#lib/shopping/watched-lots';
import { demoFile } from '../ui/page-support';

const demo = demoFile();

describe('what runs out', () => {
  it('is what planned days need over what counts, and nothing that is there', () => {
    const list = shoppingList(demo);
    const out = runsOut(list);
    expect(out.map(({ foodId }) => foodId).sort()).toEqual(
      list.items
        .filter((item) => !isInStock(item))
        .map(({ foodId }) => foodId)
        .sort(),
    );
    expect(out.length).toBeGreaterThan(0);
    for (const { foodId, words } of out) {
      const item = list.items.find((each) => each.foodId === foodId);
      if (item?.buyMg) expect(words).toMatch(/^short of [\d,.]+ (g|kg)/);
    }
    const [first] = out;
    expect(shortByFood(out).get(first?.foodId ?? '')).toMatch(/^Short of .* for Sat 12 Dec$/);
  });

  it('is told by the episode that needs it first; what the person has does not run out', () => {
    const later = {
      ...demo,
      episode: { ...demo.episode, id: 'later', title: 'Later' },
      day: demo.day && { ...demo.day, date: '2026-12-19' },
    };
    const groups = byFirstNeed(runsOut(shoppingList([later, demo])));
    expect(groups[0]?.of.episodeId).toBe(demo.episode.id);
    expect(groups.flatMap(({ foods }) => foods).length).toBe(
      runsOut(shoppingList([demo, later])).length,
    );
    const [short] = runsOut(shoppingList(demo)).filter(({ foodId }) =>
      demo.stock.every((lot) => lot.foodId !== foodId),
    );
    if (!short) throw new Error('all that is short has a lot');
    const answer = { is: 'have' as const, on: '2026-12-10', remark: '' };
    const said = [{ foodId: short.foodId, answer, opened: null }];
    const left = runsOut(shoppingList({ ...demo, pantry: said }));
    expect(left.map(({ foodId }) => foodId)).not.toContain(short.foodId);
  });
});

describe('what is past or ends soon', () => {
  const [food] = demo.foods.filter(({ kind }) => kind === 'label');
  if (!food) throw new Error('the demo has labels');
  const lot = (id: string, useBy: string | null, mg: number, openedOn: string | null = null) => ({
    id,
    foodId: food.id,
    place: '',
    openedOn,
    useBy,
    moves: [{ id: `m-${id}`, kind: 'bought' as const, deltaMg: mg, at: '2026-12-01T08:00:00Z' }],
  });
  const watched = (lots: readonly ReturnType<typeof lot>[], days: number | null = null) =>
    watchedLots(
      [{ food, lots, opened: days === null ? null : { days, source: 'the label' } }],
      '2026-12-10',
      '2026-12-17',
    ).map((each) => [each.lot.id, each.past, each.last.on]);

  it('goes by the use-by, and by the storage once opened where that ends before', () => {
    const lots = [
      lot('far', '2026-12-18', 1000),
      lot('week', '2026-12-17', 1000),
      lot('past', '2026-12-09', 1000),
      lot('today', '2026-12-10', 1000),
      lot('empty', '2026-12-09', 0),
      lot('undated', null, 1000),
      lot('opened', '2026-12-31', 1000, '2026-12-08'),
    ];
    expect(watched(lots)).toEqual([
      ['past', true, '2026-12-09'],
      ['today', false, '2026-12-10'],
      ['week', false, '2026-12-17'],
    ]);
    expect(watched(lots, 3).map(([id]) => id)).toEqual(['past', 'today', 'opened', 'week']);
    expect(watched([lot('opened', null, 1000, '2026-12-01')], 3)).toEqual([
      ['opened', true, '2026-12-04'],
    ]);
  });

  it('looks a week ahead, over the end of a year', () => {
    expect(aWeekOn('2026-12-28')).toBe('2027-01-04');
    expect(aWeekOn('2028-02-25')).toBe('2028-03-03');
  });
});

describe('prices', () => {
  const price = {
    shopId: null,
    minor: 329,
    currency: 'USD',
    seenOn: '2026-12-05',
    count: 1,
    most: null,
    until: null,
  };

  it('read with their shop, day and offer', () => {
    expect(priceWords(price, null)).toBe('USD 3.29, seen Sat 5 Dec');
    expect(priceWords({ ...price, count: 2, most: 1, until: '2026-12-12' }, 'Quay')).toBe(
      '2 for USD 3.29, Quay, seen Sat 5 Dec, at most once, until 12 Dec',
    );
  });

  it('count as seen last in each shop and number; those before them are kept apart', () => {
    const seen = (id: string, over: Partial<PackPrice>) => ({
      id,
      packId: 'p',
      price: { ...price, ...over },
    });
    const all = [
      seen('new', {}),
      seen('shop', { shopId: 'quay' }),
      seen('three', { count: 3 }),
      seen('offer', { minor: 199, most: 2, until: '2026-12-12' }),
      seen('old', { seenOn: '2026-11-01' }),
    ];
    const { latest, earlier } = latestPrices(all);
    expect(latest.map(({ id }) => id)).toEqual(['new', 'shop', 'three', 'offer']);
    expect(earlier.map(({ id }) => id)).toEqual(['old']);
  });

  it('of a food is the one seen last of any pack, in its shop', () => {
    const shops = new Map([['quay', 'Quay market']]);
    const packs = [
      { name: 'Tub', price: { minor: 300, currency: 'USD', seenOn: '2026-12-01' }, prices: [] },
      { name: 'Pot', price: null, prices: [{ ...price, shopId: 'quay' }] },
    ];
    expect(latestPriceWords(packs, shops)).toBe('Pot: USD 3.29, Quay market, seen Sat 5 Dec');
    expect(latestPriceWords([{ name: 'Tub', price: null, prices: [] }], shops)).toBeNull();
  });
});
