import {
  clean,
  codesById,
  idIn,
  isWanted,
  joined,
  load,
  type Loading,
} from '#lib/work/fdc/loading';

/** food_portion.csv: household weights, with the words of their units. */
export async function loadPortions(loading: Loading): Promise<void> {
  const units = await codesById(loading, 'measure_unit.csv', 'name');
  const put = loading.stage.db.prepare('INSERT INTO portion VALUES (?, ?)');
  const name = 'food_portion.csv';
  const columns = {
    needed: ['fdc_id', 'gram_weight'],
    lacking: ['amount', 'measure_unit_id', 'portion_description', 'modifier'],
  } as const;
  loading.stage.db.exec('DROP INDEX IF EXISTS portion_food');
  await load(loading, { name, into: 'portion', needed: false, columns }, (cell, at) => {
    const id = isWanted(loading, name, at, cell('fdc_id'));
    if (id === null) return;
    const unit = units.get(cell('measure_unit_id').trim()) ?? '';
    put.run(
      id,
      joined(
        cell('amount'),
        unit,
        cell('modifier'),
        cell('portion_description'),
        cell('gram_weight'),
      ),
    );
  });
  loading.stage.db.exec('CREATE INDEX portion_food ON portion (fdc_id)');
}

/** The factors of energy and of nitrogen, over three tables. */
export async function loadFactors(loading: Loading): Promise<void> {
  const { db } = loading.stage;
  const owner = db.prepare('INSERT OR IGNORE INTO factor_of VALUES (?, ?)');
  const name = 'food_nutrient_conversion_factor.csv';
  const columns = { needed: ['id', 'fdc_id'], lacking: [] } as const;
  await load(loading, { name, into: 'factor_of', needed: false, columns }, (cell, at) => {
    const id = idIn(cell('id'));
    const food = isWanted(loading, name, at, cell('fdc_id'));
    if (id !== null && food !== null) owner.run(id, food);
  });
  const put = db.prepare('INSERT INTO factor VALUES (?, ?, ?)');
  const energy = {
    needed: [
      'food_nutrient_conversion_factor_id',
      'protein_value',
      'fat_value',
      'carbohydrate_value',
    ],
    lacking: [],
  } as const;
  const energyTable = {
    name: 'food_calorie_conversion_factor.csv',
    into: "factor WHERE kind = 'energy'",
    needed: false,
    columns: energy,
  };
  await load(loading, energyTable, (cell) => {
    const id = idIn(cell('food_nutrient_conversion_factor_id'));
    const cells = joined(cell('protein_value'), cell('fat_value'), cell('carbohydrate_value'));
    if (id !== null) put.run(id, 'energy', cells);
  });
  const protein = {
    needed: ['food_nutrient_conversion_factor_id', 'value'],
    lacking: [],
  } as const;
  const proteinTable = {
    name: 'food_protein_conversion_factor.csv',
    into: "factor WHERE kind = 'protein'",
    needed: false,
    columns: protein,
  };
  await load(loading, proteinTable, (cell) => {
    const id = idIn(cell('food_nutrient_conversion_factor_id'));
    if (id !== null) put.run(id, 'protein', clean(cell('value')));
  });
  db.exec(
    'CREATE INDEX IF NOT EXISTS factor_food ON factor_of (fdc_id); CREATE INDEX IF NOT EXISTS factor_id ON factor (id)',
  );
}
