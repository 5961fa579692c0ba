import { readFileSync } from 'node:fs';
import { Script, createContext } from 'node:vm';
import { describe, expect, test } from 'vitest';
import { basketCount, paidBesideCost, paidRows, paidText, rowStanding } from '#lib/shopping/basket';
import { foldList } from '#lib/shopping/fold-list';
import { leftoverText } from '#lib/shopping/leftover-text';
import { codeOrder, writeListCode } from '#lib/shopping/list-code';
import { episodeScope, type ListEvent } from '#lib/shopping/list-events';
import { listFile } from '#lib/shopping/list-file';
import { LIST_FILE_SCRIPT } from '#lib/shopping/list-file-parts';
import { paidCsv } from '#lib/shopping/paid-csv';
import { shelves, takenAsListed } from '#lib/shopping/shelf-rows';
import { readInstead, readPaid } from '#lib/shopping/shop-typed';
import { shoppingList, type ShoppingItem } from '#lib/shopping/shopping-list';
import { parseEpisodeFile } from '#lib/episode/file';

const read = parseEpisodeFile(readFileSync('seed/demo.episode.json', 'utf8'));
if (!read.ok) throw new Error('the demo is no episode');
const list = shoppingList(read.value);
const LOOK = {
  madeOn: '2026-12-10',
  day: { paper: 'white', ink: 'black', soft: 'gray', line: 'silver' },
  night: { paper: 'black', ink: 'white', soft: 'silver', line: 'gray' },
};
const made = { scope: episodeScope('e'), deviceId: 'd' } as const;
const at = (minute: number) => `2026-12-11T10:0${minute}:00.000Z`;
const event = (seq: number, part: object) =>
  ({ ...made, id: `e${seq}`, deviceSeq: seq, at: at(seq), ...part }) as ListEvent;

describe('a list in the order of walking', () => {
  const packsOf = (shopId: string | null) => (item: ShoppingItem) => ({
    ...item,
    packs: item.packs.map((pack) => ({ ...pack, shopId })),
  });

  test('every food stands once, in the sections’ order, and what is in stock by itself', () => {
    const { toBuy, inStock } = shelves(list, []);
    const ids = [...toBuy.flatMap(({ items }) => items), ...inStock].map(({ foodId }) => foodId);
    expect([...ids].sort()).toEqual(codeOrder(list));
    expect(new Set(ids).size).toBe(ids.length);
    const named = shelves({ ...list, items: list.items.map(packsOf('s')) }, [
      { id: 's', name: 'Quay market', sections: ['frozen', 'dairyAndEggs'] },
    ]).toBuy;
    expect(named.slice(0, 2).map(({ title }) => title)).toEqual(['Frozen', 'Dairy and eggs']);
  });

  test('of several shops each has its own walk, and what has no pack stands where most is bought', () => {
    const items = list.items.map((item, place) => packsOf(place === 0 ? 'b' : 'a')(item));
    const shops = [
      { id: 'a', name: 'Quay market', sections: ['frozen' as const] },
      { id: 'b', name: 'Mill store', sections: [] },
    ];
    const { toBuy } = shelves({ ...list, items }, shops);
    expect(toBuy[0]?.title).toBe('Quay market: Frozen');
    expect(toBuy.at(-1)?.title).toMatch(/^Mill store: /);
    const without = items.filter(({ packs, buyMg }) => packs.length === 0 && buyMg !== 0);
    for (const { foodId } of without) {
      const group = toBuy.find((each) => each.items.some((item) => item.foodId === foodId));
      expect(group?.shopId).toBe('a');
    }
  });

  test('what is taken is the packs, or the amount, or nobody knows', () => {
    const pack = {
      name: 'Tub',
      shopId: null,
      minor: null,
      currency: null,
      seenOn: null,
      atOnce: 1,
    };
    const tub = { ...pack, packId: 'p', count: 3, looseMg: null, netMg: 450_000, netMl: null };
    const item = { packs: [tub], buyMg: 1_200_000, needMl: null };
    expect(takenAsListed(item)).toEqual([{ packId: 'p', count: 3, mg: 1_350_000 }]);
    expect(takenAsListed({ ...item, packs: [{ ...tub, count: 1, looseMg: 350_000 }] })).toEqual([
      { packId: 'p', count: 1, mg: 350_000 },
    ]);
    const none = { packId: null, count: 1 };
    expect(takenAsListed({ ...item, packs: [], buyMg: 15.2 })).toEqual([{ ...none, mg: 16 }]);
    expect(takenAsListed({ ...item, packs: [], buyMg: null })).toEqual([{ ...none, mg: null }]);
    expect(takenAsListed({ ...item, packs: [], needMl: 30 })).toEqual([{ ...none, mg: null }]);
  });
});

describe('the basket', () => {
  const ticked = event(1, { kind: 'ticked', foodId: 'skyr', payload: { packs: [] } });
  const away = event(2, { kind: 'putAway', foodId: 'skyr', payload: { eventId: 'e1' } });

  test('what was put away before the list was made is bought once more', () => {
    const state = foldList([ticked, away]);
    expect(rowStanding(state, 'skyr', [])).toBe('putAway');
    expect(rowStanding(state, 'skyr', ['e1'])).toBe('open');
    expect(rowStanding(foldList([ticked]), 'skyr', [])).toBe('inBasket');
    const foods = [{ foodId: 'skyr' }, { foodId: 'oats' }];
    expect(basketCount(foods, state, [])).toEqual({ done: 1, all: 2 });
  });

  test('what was paid is the last word of each receipt, beside what was foreseen', () => {
    const paid = (seq: number, minor: number | null, shopId: string | null) =>
      event(seq, {
        kind: 'paid',
        foodId: null,
        payload: { shopId, minor, currency: 'USD', on: '2026-12-11' },
      });
    const rows = paidRows(foldList([paid(1, 999, 'a'), paid(2, 6115, 'a'), paid(3, 300, null)]));
    expect(paidText(rows)).toBe('USD 64.15');
    expect(paidRows(foldList([paid(1, 999, 'a'), paid(2, null, 'a')]))).toEqual([]);
    const cost = {
      ...{ minor: 6330, currency: 'USD', low: 6330, high: 6330 },
      oldest: '2026-12-05',
    };
    expect(paidBesideCost(rows, { ...cost, atLeast: false })).toBe('USD 0.85 more than foreseen');
    expect(paidBesideCost(rows, { ...cost, currency: 'EUR', atLeast: false })).toBeNull();
    const names = new Map([['a', '=Quay, "the" market']]);
    // RFC 4180, and an apostrophe before what a spreadsheet takes for a formula.
    expect(paidCsv(rows, 'Oven', names)).toBe(
      'date,shop,food,paid,currency,for\r\n2026-12-11,,,3.00,USD,Oven\r\n2026-12-11,"\'=Quay, ""the"" market",,61.15,USD,Oven\r\n',
    );
  });

  test('what is left over says until when and for what', () => {
    const use = { episodeId: 'f', episode: 'F', segmentId: 's', segment: 'Pancakes' };
    const leftover = {
      ...{ mg: 300_000, lastDay: '2026-12-19', why: null },
      uses: [{ ...use, date: '2026-12-15', mg: 250_000 }],
    };
    expect(leftoverText({ leftover }, 'metric')).toEqual([
      'Left over: 300 g, use by Sat 19 Dec.',
      'Pancakes on Tue 15 Dec needs 250 g of it.',
    ]);
    expect(leftoverText({ leftover: null }, 'metric')).toEqual([]);
  });
});

describe('what is typed in the shop', () => {
  const texts = {
    ...{ name: 'Oderwick kvarg', same: false, count: '2', grams: '300', basis: 'serving' as const },
    ...{ servingGrams: '30', values: { protein: ' 4.5 ', fat: '' } },
  };

  test('something else is read with its amount and the values that were typed', () => {
    expect(readInstead(texts, 'f', null)).toEqual({
      ok: true,
      value: {
        name: 'Oderwick kvarg',
        takenFoodId: null,
        packs: [{ packId: null, count: 2, mg: 600_000 }],
        label: { basis: 'serving', servingMg: 30_000, values: { protein: '4.5' } },
        photoSha256: null,
      },
    });
    const same = readInstead({ ...texts, same: true, grams: '' }, 'f', null);
    expect(same).toMatchObject({ ok: true, value: { takenFoodId: 'f', label: null } });
    expect(same.ok && same.value.packs).toEqual([{ packId: null, count: 2, mg: null }]);
  });

  const FAULTS: [object, string][] = [
    [{ name: ' ' }, 'name'],
    [{ name: 'x'.repeat(241) }, 'name'],
    [{ count: '0' }, 'count'],
    [{ count: '1.5' }, 'count'],
    [{ grams: '0' }, 'grams'],
    [{ grams: 'a lot' }, 'grams'],
    [{ grams: '2000000' }, 'grams'],
    [{ servingGrams: '' }, 'serving'],
    [{ servingGrams: '-3' }, 'serving'],
    [{ values: { protein: 'much' } }, 'protein'],
  ];
  test.each(FAULTS)('%j is refused at its field', (part, field) => {
    const refused = readInstead({ ...texts, ...part }, 'f', null);
    expect(refused.ok ? [] : Object.keys(refused.faults)).toEqual([field]);
  });

  test('a receipt is read in its currency’s own parts', () => {
    const typed = { amount: '61.15', currency: 'usd', on: '2026-12-11', shopId: '' };
    expect(readPaid(typed)).toMatchObject({ ok: true, value: { minor: 6115, shopId: null } });
    // ISO 4217: the yen has no minor unit.
    const yen = { ...typed, currency: 'JPY' };
    expect(readPaid({ ...yen, amount: '6100' })).toMatchObject({
      ok: true,
      value: { minor: 6100 },
    });
    expect(readPaid(yen).ok).toBe(false);
    const wrong = readPaid({ amount: '', currency: '$', on: '', shopId: '' });
    expect(wrong.ok ? [] : Object.keys(wrong.faults)).toEqual(['amount', 'currency', 'on']);
  });
});

describe('the list as one file', () => {
  const rough = { ...list, episode: '</title><script>alert(1)</script>' };
  const text = listFile(rough, shelves(rough, []), LOOK);

  test('it asks for nothing beside itself, and words stay words', () => {
    expect(text).not.toMatch(/\b(?:src|href)=|url\(|@import/);
    expect(text).toContain("default-src 'none'");
    expect(text.match(/<script>/g)).toHaveLength(1);
    expect(text).toContain('&lt;/title&gt;&lt;script&gt;alert(1)');
    expect(text.match(/type="checkbox"/g)).toHaveLength(
      shelves(list, []).toBuy.flatMap(({ items }) => items).length,
    );
  });

  test('its script writes the very code that is read here', () => {
    const foods = codeOrder(list);
    const ids = ['code', 'count', 'kept', 'copy', 'copied', 'back'];
    const elements = new Map(
      ids.map((id) => [id, { textContent: '', hidden: true, addEventListener: () => undefined }]),
    );
    const boxes = foods.map((_, place) => ({
      dataset: { at: String(place) },
      checked: place % 3 === 0,
      addEventListener: () => undefined,
    }));
    const [, name = ''] = /data-name="(\w+)"/.exec(text) ?? [];
    const document = {
      body: { dataset: { name, foods: String(foods.length), made: LOOK.madeOn } },
      querySelectorAll: () => boxes,
      getElementById: (id: string) => elements.get(id),
    };
    // Without `localStorage` the script goes on, and says that nothing is kept.
    new Script(LIST_FILE_SCRIPT).runInContext(createContext({ document, navigator: {} }));
    const ticked = new Set(foods.filter((_, place) => place % 3 === 0));
    expect(elements.get('code')?.textContent).toBe(writeListCode(foods, ticked));
    expect(elements.get('kept')?.textContent).toContain('keeps nothing');
  });
});
