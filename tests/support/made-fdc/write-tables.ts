import { createWriteStream, mkdirSync } from 'node:fs';
import { once } from 'node:events';
import { join } from 'node:path';
import { MADE_NUTRIENTS, madeProduct, publishedAmount } from './made-food';

/** Ids of derivations as the tables have them (70 and 73 from public copies; the codes are what counts). */
const DERIVATIONS = { LCCS: 70, LCSL: 73 } as const;

/** Text of a cell as published: always within quotes, quotes doubled. */
export const quotedCell = (text: string | number): string =>
  `"${String(text).replaceAll('"', '""')}"`;
export const csvLine = (cells: readonly (string | number)[], end = '\n'): string =>
  cells.map(quotedCell).join(',') + end;

export const HEADERS = {
  'food.csv': [
    'fdc_id',
    'data_type',
    'description',
    'food_category_id',
    'publication_date',
    'market_country',
    'trade_channel',
    'microbe_data',
  ],
  'branded_food.csv': [
    'fdc_id',
    'brand_owner',
    'brand_name',
    'subbrand_name',
    'gtin_upc',
    'ingredients',
    'not_a_significant_source_of',
    'serving_size',
    'serving_size_unit',
    'household_serving_fulltext',
    'branded_food_category',
    'data_source',
    'package_weight',
    'modified_date',
    'available_date',
    'market_country',
    'discontinued_date',
    'preparation_state_code',
    'trade_channel',
    'short_description',
    'material_code',
  ],
  'food_nutrient.csv': [
    'id',
    'fdc_id',
    'nutrient_id',
    'amount',
    'data_points',
    'derivation_id',
    'min',
    'max',
    'median',
    'loq',
    'footnote',
    'min_year_acquired',
    'percent_daily_value',
  ],
  'nutrient.csv': ['id', 'name', 'unit_name', 'nutrient_nbr', 'rank'],
  'food_nutrient_derivation.csv': ['id', 'code', 'description'],
} as const;

/**
 * Writes a Branded download of made-up products as tables into a folder; returns rows written in all. With fewer
 * `products` than records the later records are further readings of the same products, as in the real one.
 */
export async function writeMadeTables(
  folder: string,
  records: number,
  { seed = 1, products = Infinity } = {},
): Promise<number> {
  mkdirSync(folder, { recursive: true });
  const out = (name: keyof typeof HEADERS) => {
    const stream = createWriteStream(join(folder, name));
    stream.write(csvLine(HEADERS[name]));
    return stream;
  };
  const food = out('food.csv');
  const branded = out('branded_food.csv');
  const nutrients = out('food_nutrient.csv');
  const names = out('nutrient.csv');
  const derivations = out('food_nutrient_derivation.csv');
  for (const [id, name, unit, number] of MADE_NUTRIENTS)
    names.write(csvLine([id, name, unit, number, '']));
  for (const [code, id] of Object.entries(DERIVATIONS))
    derivations.write(csvLine([id, code, code]));
  let rows = 0;
  for (let place = 0; place < records; place += 1) {
    const made = madeProduct(seed, place, products);
    const { fdcId, servingSize } = made;
    food.write(
      csvLine([
        fdcId,
        'branded_food',
        made.description,
        '',
        made.published,
        'United States',
        '',
        '',
      ]),
    );
    branded.write(
      csvLine([
        fdcId,
        made.brandOwner,
        made.brandName,
        '',
        made.gtin,
        made.ingredients,
        '',
        servingSize,
        made.servingUnit,
        made.household,
        made.category,
        'LI',
        '',
        '',
        '',
        'United States',
        '',
        '',
        '',
        '',
        '',
      ]),
    );
    rows += 2;
    let lines = '';
    for (const [id, , , , nutrient] of MADE_NUTRIENTS) {
      const printed = (made.label as Record<string, string | undefined>)[nutrient];
      if (printed === undefined) continue;
      rows += 1;
      const { amount, derivation } = publishedAmount(printed, servingSize);
      lines += csvLine([
        rows,
        fdcId,
        id,
        amount,
        '',
        DERIVATIONS[derivation],
        '',
        '',
        '',
        '',
        '',
        '',
        '',
      ]);
    }
    if (!nutrients.write(lines)) await once(nutrients, 'drain');
  }
  const streams = [food, branded, nutrients, names, derivations];
  await Promise.all(streams.map((stream) => (stream.end(), once(stream, 'close'))));
  return rows;
}
