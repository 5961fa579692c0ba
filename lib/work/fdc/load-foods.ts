import { FDC_DATA_TYPES } from '#lib/foods/fdc-record';
import { codesById, idIn, isWanted, joined, load, type Loading } from '#lib/work/fdc/loading';
import type { Stage } from '#lib/work/fdc/stage';

/** food.csv: the foods that are imported, and the ids of those that are not. */
export async function loadFoods(loading: Loading): Promise<void> {
  const { stage, counter, wanted, others } = loading;
  const put = stage.db.prepare('INSERT OR IGNORE INTO food VALUES (?, ?, ?, ?, ?)');
  const otherIds: number[] = [];
  await load(
    loading,
    {
      name: 'food.csv',
      into: 'food',
      needed: true,
      columns: {
        needed: ['fdc_id', 'data_type', 'description'],
        lacking: ['food_category_id', 'publication_date'],
      },
    },
    (cell, at) => {
      const id = idIn(cell('fdc_id'));
      if (id === null || id < 1) {
        counter.fault('food.csv', at, `"${cell('fdc_id').slice(0, 30)}" is no fdc_id`);
        return;
      }
      const type = cell('data_type').trim();
      if (!Object.hasOwn(FDC_DATA_TYPES, type)) {
        counter.passOver(type || 'without a kind');
        others.add(id);
        // Only what a run that goes on must know; a full download has fewer of these than of products.
        otherIds.push(id);
        return;
      }
      if (cell('description').trim() === '') {
        counter.fault('food.csv', at, `food ${id} has no description`);
        others.add(id);
        return;
      }
      const { changes } = put.run(
        id,
        type,
        cell('description'),
        cell('food_category_id').trim(),
        cell('publication_date').trim(),
      );
      if (changes === 0)
        counter.fault('food.csv', at, `food ${id} is there twice; the first stands`);
      wanted.add(id);
    },
    () => keepOthers(stage, otherIds),
  );
}

function keepOthers(stage: Stage, ids: readonly number[]): void {
  stage.db
    .prepare("INSERT OR REPLACE INTO meta (key, value) VALUES ('others', ?)")
    .run(JSON.stringify(ids.slice(0, 2_000_000)));
}

const BRANDED = {
  needed: ['fdc_id', 'gtin_upc', 'serving_size', 'serving_size_unit'],
  lacking: [
    'brand_owner',
    'brand_name',
    'ingredients',
    'household_serving_fulltext',
    'branded_food_category',
    'market_country',
  ],
} as const;

/** branded_food.csv: what belongs to products alone. */
export async function loadBranded(loading: Loading): Promise<void> {
  const { stage, counter } = loading;
  const put = stage.db.prepare('INSERT OR IGNORE INTO branded VALUES (?, ?)');
  const table = { name: 'branded_food.csv', into: 'branded', needed: false, columns: BRANDED };
  await load(loading, table, (cell, at) => {
    const id = isWanted(loading, table.name, at, cell('fdc_id'));
    if (id === null) return;
    const cells = joined(
      cell('brand_owner'),
      cell('brand_name'),
      cell('gtin_upc'),
      cell('ingredients'),
      cell('serving_size'),
      cell('serving_size_unit'),
      cell('household_serving_fulltext'),
      cell('branded_food_category'),
      cell('market_country'),
    );
    if (put.run(id, cells).changes === 0) {
      counter.fault(table.name, at, `food ${id} is there twice; the first stands`);
    }
  });
}

/** Codes of the food groups by their id ("18" is "1800"), kept for the foods of the two tables. */
export async function loadGroups(loading: Loading): Promise<void> {
  const codes = await codesById(loading, 'food_category.csv', 'code');
  loading.stage.db
    .prepare("INSERT OR REPLACE INTO meta (key, value) VALUES ('groups', ?)")
    .run(JSON.stringify(Object.fromEntries(codes)));
}
