import { knownNumber } from '#lib/foods/fdc-nutrients';
import { codesById, isWanted, joined, load, ROW, small, type Loading } from '#lib/work/fdc/loading';

/** food_nutrient.csv: rows of one food mostly follow each other, and are kept as one then. */
export async function loadNutrients(loading: Loading): Promise<void> {
  const { stage, counter } = loading;
  const named = await nutrientsById(loading);
  const derivations = await codesById(loading, 'food_nutrient_derivation.csv', 'code');
  const put = stage.db.prepare('INSERT INTO nutrient VALUES (?, ?)');
  let food = 0;
  let rows: string[] = [];
  const keep = () => {
    if (rows.length > 0) put.run(food, rows.join(ROW));
    rows = [];
  };
  stage.db.exec('DROP INDEX IF EXISTS nutrient_food');
  const name = 'food_nutrient.csv';
  const columns = {
    needed: ['fdc_id', 'nutrient_id', 'amount'],
    lacking: ['derivation_id', 'loq'],
  } as const;
  await load(
    loading,
    { name, into: 'nutrient', needed: true, columns },
    (cell, at) => {
      const id = isWanted(loading, name, at, cell('fdc_id'));
      if (id === null) return;
      const nutrient = named.get(cell('nutrient_id').trim());
      if (!nutrient) {
        counter.fault(
          name,
          at,
          `nutrient ${cell('nutrient_id').slice(0, 30)} is not in nutrient.csv`,
        );
        return;
      }
      if (!nutrient.known) {
        counter.unknownNutrient(nutrient.shown);
        return;
      }
      if (id !== food || rows.length > 400) {
        keep();
        food = id;
      }
      const derivation = derivations.get(cell('derivation_id').trim()) ?? '';
      rows.push(joined(nutrient.number, nutrient.unit, cell('amount'), derivation, cell('loq')));
    },
    keep,
  );
  stage.db.exec('CREATE INDEX nutrient_food ON nutrient (fdc_id)');
}

interface NamedNutrient {
  readonly number: string;
  readonly unit: string;
  readonly known: boolean;
  readonly shown: string;
}

async function nutrientsById(loading: Loading): Promise<Map<string, NamedNutrient>> {
  const byId = new Map<string, NamedNutrient>();
  const columns = { needed: ['id', 'unit_name', 'nutrient_nbr'], lacking: ['name'] } as const;
  const table = { name: 'nutrient.csv', into: 'meta', needed: true, columns };
  await small(loading, table, (cell) => {
    const number = cell('nutrient_nbr').trim();
    const unit = cell('unit_name').trim();
    const shown = `${cell('name').trim() || 'nutrient'} (${number || 'no number'}, ${unit})`;
    const known = knownNumber(number, unit) !== null;
    byId.set(cell('id').trim(), { number, unit, known, shown });
  });
  return byId;
}
