import { STATE_WORDS } from '#lib/foods/state-words';
import {
  celsius,
  chosen,
  field,
  grams,
  measured,
  moment,
  named,
  numeric,
  plain,
  share,
  type JournalRow,
  type Telling,
} from '#lib/overview/change-fields';
import type { Subject } from '#lib/overview/change-subjects';
import { moneyTyped } from '#lib/units/read-typed';

const called = (row: JournalRow) => plain(row.name);
const ofFood = (row: JournalRow, { names }: Telling) => names[plain(row.foodId)] ?? 'a food';

/** How many values a column of JSON holds. */
const counted = (words: string, column: string) =>
  field(words, column, (value) =>
    typeof value === 'object' && value !== null ? `${Object.keys(value).length}` : '',
  );

/** The tables of foods, kitchen, stock and this machine, in the words of the screen. */
export const OTHER_SUBJECTS = {
  Creator: {
    kind: ['creator', 'creators'],
    name: called,
    fields: [field('name', 'name')],
    silent: ['id'],
  },
  Kitchen: {
    kind: ['kitchen', 'kitchens'],
    name: called,
    fields: [
      field('name', 'name'),
      field('time zone', 'zone'),
      measured('latitude', 'lat', String),
      measured('longitude', 'lon', String),
      measured('burners', 'burners', String),
    ],
    silent: ['id'],
  },
  Oven: {
    kind: ['oven', 'ovens'],
    name: called,
    placed: true,
    fields: [
      field('name', 'name'),
      measured('racks', 'racks', String),
      celsius('cold', 'coldMilliC'),
      measured('heats by 1 °C in', 'heatSPerC', (s) => `${s} s`),
      measured('cools by 1 °C in', 'coolSPerC', (s) => `${s} s`),
    ],
    silent: ['id', 'kitchenId'],
  },
  OvenChange: {
    kind: ['measured oven time', 'measured oven times'],
    name: () => 'oven',
    placed: true,
    fields: [
      celsius('from', 'fromMilliC'),
      celsius('to', 'toMilliC'),
      measured('takes', 'seconds', (s) => `${s} s`),
    ],
    silent: ['id', 'ovenId'],
  },
  Scale: {
    kind: ['scale', 'scales'],
    name: called,
    placed: true,
    fields: [
      field('name', 'name'),
      grams('steps of', 'resolutionMg'),
      measured('accuracy', 'accuracyPpm', (ppm) => `${ppm} parts per million`),
    ],
    silent: ['id', 'kitchenId'],
  },
  MeasureSpread: {
    kind: ['spread of a measure', 'spreads of measures'],
    name: (row) => plain(row.kind),
    placed: true,
    fields: [
      field('measure', 'kind'),
      measured('spread', 'permille', (thousandths) => `± ${thousandths / 10} %`),
    ],
    silent: ['id', 'kitchenId'],
  },
  ReferenceRelease: {
    kind: ['reference table', 'reference tables'],
    name: (row) => `${plain(row.source)} ${plain(row.release)}`,
    fields: [
      field('table', 'source'),
      field('release', 'release'),
      measured('foods', 'foodCount', String),
      moment('at', 'at'),
    ],
    silent: ['id', 'sha256'],
  },
  Food: {
    kind: ['food', 'foods'],
    name: called,
    fields: [
      field('name', 'name'),
      chosen('from', 'kind', {
        reference: 'a reference table',
        label: 'a label',
        prepared: 'a dish',
      }),
      field('section', 'section'),
      named('now part of', 'mergedIntoId'),
      named('nearest in the table', 'witnessId'),
      named('made by', 'recipeId'),
    ],
    silent: ['id'],
  },
  FoodVersion: {
    kind: ['label reading', 'label readings'],
    name: ofFood,
    fields: [
      measured('reading', 'seq', String),
      chosen('stated for', 'basis', {
        per100g: '100 g',
        per100ml: '100 ml',
        serving: 'a serving',
      }),
      grams('serving', 'servingMg'),
      measured('serving in ml', 'servingMl', String),
      field('serving as written', 'servingText'),
      measured('servings in a pack', 'servings', String),
      counted('values', 'values'),
      field('second column for', 'secondBasis'),
      counted('values of the second column', 'secondValues'),
      chosen('carbohydrate', 'carbBasis', {
        total: 'with fibre',
        available: 'without fibre',
      }),
      chosen('state', 'state', STATE_WORDS),
      measured('peel and trim', 'refusePercent', (percent) => `${percent} %`),
      field('peel and trim is', 'refuseText'),
      field('rounded by', 'rule'),
      field('source', 'source'),
      field('release', 'release'),
      field('number', 'sourceNo'),
      field('read on', 'dateRead'),
    ],
    silent: ['id', 'foodId', 'servingDecimals', 'factors', 'kept'],
  },
  FoodMeasure: {
    kind: ['measure', 'measures'],
    name: called,
    placed: true,
    fields: [
      field('name', 'name'),
      share('how many', 'qtyNum', 'qtyDen'),
      grams('weigh', 'massMg'),
      field('source', 'source'),
    ],
    silent: ['id', 'versionId', 'digits'],
  },
  YieldObservation: {
    kind: ['cooked weight', 'cooked weights'],
    name: ofFood,
    placed: true,
    fields: [
      field('method', 'method'),
      grams('raw', 'rawMg'),
      grams('cooked', 'cookedMg'),
      field('source', 'source'),
      moment('at', 'at'),
    ],
    silent: ['id', 'foodId'],
  },
  AllergenFact: {
    kind: ['allergen', 'allergens'],
    name: (row) => plain(row.allergen),
    placed: true,
    fields: [
      field('allergen', 'allergen'),
      chosen('said', 'standing', {
        declared: 'declared',
        confirmed: 'confirmed',
        proposed: 'proposed',
        denied: 'not in it',
      }),
      field('reason', 'reason'),
      moment('at', 'at'),
    ],
    silent: ['id', 'foodId'],
  },
  LineMatch: {
    kind: ['remembered food', 'remembered foods'],
    name: (row, telling) => `“${plain(row.wordsFolded)}” means ${ofFood(row, telling)}`,
    fields: [field('words', 'wordsFolded'), named('food', 'foodId'), moment('at', 'at')],
    silent: ['id'],
  },
  FoodToken: {
    kind: null,
    name: (row) => plain(row.token),
    fields: [],
    silent: ['id', 'token', 'foodId', 'rank'],
  },
  StockLot: {
    kind: ['pack in stock', 'packs in stock'],
    name: ofFood,
    fields: [field('place', 'place'), field('opened on', 'openedOn'), field('use by', 'useBy')],
    silent: ['id', 'foodId'],
  },
  StockMove: {
    kind: ['move of stock', 'moves of stock'],
    name: ({ deltaMg }) => `${(numeric(deltaMg) ?? 0) / 1000} g`,
    fields: [
      chosen('kind', 'kind', {
        bought: 'bought',
        counted: 'counted',
        used: 'used',
        thrownAway: 'thrown away',
      }),
      grams('by', 'deltaMg'),
      moment('at', 'at'),
    ],
    silent: ['id', 'lotId', 'eventId'],
  },
  Shop: {
    kind: ['shop', 'shops'],
    name: called,
    fields: [field('name', 'name')],
    silent: ['id'],
  },
  Pack: {
    kind: ['pack', 'packs'],
    name: called,
    fields: [
      field('name', 'name'),
      grams('net', 'netMg'),
      measured('net in ml', 'netMl', String),
      grams('drained', 'drainedMg'),
      field('bar code', 'gtin'),
    ],
    silent: ['id', 'foodId'],
  },
  Price: {
    kind: ['price', 'prices'],
    name: ({ minor, currency }) => `${moneyTyped(numeric(minor) ?? 0)} ${plain(currency)}`,
    fields: [
      measured('price', 'minor', moneyTyped),
      field('currency', 'currency'),
      field('seen on', 'seenOn'),
      named('shop', 'shopId'),
      field('offer', 'offer', (value) => (value === true ? 'yes' : 'no')),
    ],
    silent: ['id', 'packId'],
  },
  Plan: {
    kind: ['shooting order', 'shooting orders'],
    name: () => '',
    fields: [moment('at', 'at')],
    silent: ['id', 'dayId', 'inputHash', 'engine', 'seed', 'result'],
  },
  PairedDevice: {
    kind: ['phone', 'phones'],
    name: called,
    fields: [field('name', 'name'), moment('let in', 'pairedAt'), moment('sent away', 'endedAt')],
    silent: ['id', 'tokenHash'],
  },
  Attachment: {
    kind: ['attached file', 'attached files'],
    name: called,
    fields: [field('name', 'name'), field('kind', 'mime')],
    silent: ['id', 'sha256', 'bytes'],
  },
} as const satisfies Readonly<Record<string, Subject>>;
