import { STATE_WORDS } from '#lib/foods/state-words';
import {
  chosen,
  counted,
  field,
  grams,
  measured,
  moment,
  named,
  plain,
  share,
  ticked,
  type JournalRow,
  type Telling,
} from '#lib/overview/change-fields';
import type { Subject } from '#lib/overview/change-subjects';

const called = (row: JournalRow) => plain(row.name);
const ofFood = (row: JournalRow, { names }: Telling) => names[plain(row.foodId)] ?? 'a food';

/** The tables of foods, in the words of the screen. */
export const FOOD_SUBJECTS = {
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
      ticked('values with peel and trim', 'refuseInValues'),
      field('peel and trim is', 'refuseText'),
      field('rounded by', 'rule'),
      field('source', 'source'),
      field('release', 'release'),
      field('number', 'sourceNo'),
      field('read on', 'dateRead'),
      field('brand', 'brand'),
      field('barcode number', 'gtin'),
      field('ingredients', 'ingredients'),
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
      grams('read to within', 'ownHalfMg'),
      moment('at', 'at'),
    ],
    silent: ['id', 'foodId', 'lineId'],
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
} as const satisfies Readonly<Record<string, Subject>>;
