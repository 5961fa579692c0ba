import { UNSAID_PACK } from '#lib/episode/unsaid';
import type { Pack, StockLot } from '#lib/episode/stock-schema';
import { LABEL } from '#seed/demo/label-foods';
import { FOOD } from '#seed/demo/reference-foods';
import { grams } from '#seed/demo/shorthand';

type Move = readonly [kind: StockLot['moves'][number]['kind'], g: number, at: string];

function lot(
  id: string,
  foodId: string,
  place: string,
  dates: { readonly openedOn?: string; readonly useBy?: string },
  moves: readonly Move[],
): StockLot {
  return {
    id,
    foodId,
    place,
    openedOn: dates.openedOn ?? null,
    useBy: dates.useBy ?? null,
    moves: moves.map(([kind, g, at], index) => ({
      id: `${id}-${index + 1}`,
      kind,
      deltaMg: grams(g),
      at: `${at}:00.000Z`,
    })),
  };
}

/** What is in the kitchen: part of what the day needs. Each amount is the sum of its moves. */
export const STOCK: readonly StockLot[] = [
  lot('stock-barley', FOOD.barley, 'jar by the window', { openedOn: '2026-11-21' }, [
    ['bought', 500, '2026-11-20T16:10'],
    ['used', -210, '2026-11-21T11:00'],
    ['used', -150, '2026-12-09T15:20'],
  ]),
  lot('stock-oats', FOOD.oats, 'jar by the window', { openedOn: '2026-11-02' }, [
    ['bought', 1000, '2026-11-01T10:00'],
    ['used', -640, '2026-11-29T07:30'],
    ['counted', -35, '2026-12-06T18:00'],
    ['used', -130, '2026-12-10T11:45'],
  ]),
  lot('stock-oil', FOOD.oliveOil, 'shelf', { openedOn: '2026-10-18' }, [
    ['bought', 458, '2026-10-17T15:00'],
    ['used', -300, '2026-12-01T12:00'],
  ]),
  lot('stock-butter', FOOD.butter, 'fridge', { openedOn: '2026-12-04', useBy: '2027-01-15' }, [
    ['bought', 250, '2026-12-03T17:20'],
    ['used', -95, '2026-12-09T18:00'],
  ]),
  lot('stock-eggs', FOOD.egg, 'fridge', { useBy: '2026-12-28' }, [
    ['bought', 342, '2026-12-03T17:20'],
    ['used', -171, '2026-12-08T07:15'],
    ['used', -57, '2026-12-10T11:45'],
  ]),
  lot(
    'stock-cottage',
    FOOD.cottageCheese,
    'fridge',
    { openedOn: '2026-12-10', useBy: '2026-12-14' },
    [
      ['bought', 200, '2026-12-08T16:00'],
      ['used', -113, '2026-12-10T11:45'],
    ],
  ),
  lot('stock-blueberries', FOOD.blueberries, 'freezer', { useBy: '2027-08-01' }, [
    ['bought', 600, '2026-11-14T15:30'],
    ['used', -250, '2026-11-30T07:40'],
    ['used', -201, '2026-12-09T18:05'],
  ]),
  lot('stock-salt', FOOD.salt, 'by the stove', {}, [
    ['bought', 1000, '2026-08-02T10:00'],
    ['used', -410, '2026-12-01T10:00'],
  ]),
  lot('stock-pepper', FOOD.blackPepper, 'spice drawer', {}, [
    ['bought', 50, '2026-09-12T10:00'],
    ['used', -22, '2026-12-01T10:00'],
  ]),
  lot('stock-paprika', FOOD.paprika, 'spice drawer', {}, [
    ['bought', 40, '2026-09-12T10:00'],
    ['used', -31, '2026-12-10T11:45'],
  ]),
  lot('stock-cardamom', FOOD.cardamom, 'spice drawer', {}, [
    ['bought', 25, '2026-11-14T15:30'],
    ['used', -6, '2026-12-09T18:05'],
  ]),
  lot('stock-honey', FOOD.honey, 'shelf', {}, [
    ['bought', 350, '2026-10-17T15:00'],
    ['used', -180, '2026-12-06T08:00'],
    ['thrownAway', -10, '2026-12-06T08:10'],
  ]),
  lot('stock-mustard', LABEL.mustard, 'fridge', { openedOn: '2026-12-05' }, [
    ['bought', 200, '2026-12-05T10:30'],
    ['used', -30, '2026-12-10T11:45'],
  ]),
  lot('stock-passata', LABEL.passata, 'fridge', { openedOn: '2026-12-10', useBy: '2026-12-15' }, [
    ['bought', 500, '2026-12-05T10:30'],
    ['used', -260, '2026-12-10T11:45'],
  ]),
  lot('stock-skyr', LABEL.skyr, 'fridge', { openedOn: '2026-12-09', useBy: '2026-12-20' }, [
    ['bought', 1000, '2026-12-05T10:30'],
    ['used', -608, '2026-12-09T18:05'],
  ]),
];

/** Prices seen on the Saturday before, at the invented market on the quay. */
const SEEN_ON = '2026-12-05';

function pack(
  id: string,
  foodId: string,
  name: string,
  cents: number,
  size: Partial<Pick<Pack, 'netMg' | 'netMl' | 'drainedMg' | 'gtin'>>,
): Pack {
  return {
    ...UNSAID_PACK,
    id,
    foodId,
    name,
    netMg: null,
    netMl: null,
    drainedMg: null,
    gtin: null,
    price: { minor: cents, currency: 'USD', seenOn: SEEN_ON },
    ...size,
  };
}

/**
 * The sizes that the shop sells, with the last price seen in US cents. The article numbers begin with 952,
 * which GS1 keeps for examples (from memory), so no real article has them.
 */
export const PACKS: readonly Pack[] = [
  pack('pack-barley', FOOD.barley, 'Pearl barley 500 g', 249, { netMg: grams(500) }),
  pack('pack-mushrooms', FOOD.mushrooms, 'Button mushrooms 250 g', 279, { netMg: grams(250) }),
  pack('pack-onions', FOOD.onion, 'Net of onions 1 kg', 189, { netMg: grams(1000) }),
  pack('pack-carrots', FOOD.carrot, 'Bag of carrots 500 g', 129, { netMg: grams(500) }),
  pack('pack-spinach', FOOD.spinach, 'Baby spinach 125 g', 319, { netMg: grams(125) }),
  pack('pack-peas', FOOD.peas, 'Frozen peas 450 g', 229, { netMg: grams(450) }),
  pack('pack-turkey', FOOD.turkey, 'Ground turkey 500 g', 699, { netMg: grams(500) }),
  pack('pack-zucchini', FOOD.zucchini, 'Zucchini, loose, one of about 320 g', 119, {
    netMg: grams(320),
  }),
  pack('pack-cottage', FOOD.cottageCheese, 'Low-fat cottage cheese 200 g', 219, {
    netMg: grams(200),
  }),
  pack('pack-blueberries', FOOD.blueberries, 'Frozen blueberries 300 g', 399, {
    netMg: grams(300),
  }),
  pack('pack-almonds', FOOD.almonds, 'Blanched almonds 100 g', 289, { netMg: grams(100) }),
  pack('pack-garlic', FOOD.garlic, 'Head of garlic, about 50 g', 69, { netMg: grams(50) }),
  pack('pack-sugar', FOOD.brownSugar, 'Brown sugar 500 g', 259, { netMg: grams(500) }),
  pack('pack-oil', FOOD.oliveOil, 'Olive oil 500 ml', 899, { netMl: 500 }),
  pack('pack-worcestershire', FOOD.worcestershire, 'Worcestershire sauce 150 ml', 349, {
    netMl: 150,
  }),
  pack('pack-crispbread', LABEL.crispbread, 'Rugspire rye crispbread 240 g', 289, {
    netMg: grams(240),
    gtin: '9520010000018',
  }),
  pack('pack-cheese', LABEL.cheese, 'Netloft farmhouse cheese 8 oz', 649, {
    netMg: grams(227),
    gtin: '9520010000025',
  }),
  pack('pack-mustard', LABEL.mustard, 'Brinkleaf grainy mustard 200 g', 379, {
    netMg: grams(200),
    gtin: '9520010000032',
  }),
  pack('pack-passata', LABEL.passata, 'Solmarosa tomato passata 500 g', 259, {
    netMg: grams(500),
    gtin: '9520010000049',
  }),
  pack('pack-skyr', LABEL.skyr, 'Fjordlea plain skyr, tub of 1 kg', 599, {
    netMg: grams(1000),
    gtin: '9520010000056',
  }),
  pack('pack-skyr-small', LABEL.skyr, 'Fjordlea plain skyr, pot of 450 g', 329, {
    netMg: grams(450),
    gtin: '9520010000063',
  }),
];
