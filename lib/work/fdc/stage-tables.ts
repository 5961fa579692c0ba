import type { Counter } from '#lib/work/fdc/faults';
import { IdSet } from '#lib/work/fdc/id-set';
import { loadBranded, loadFoods, loadGroups } from '#lib/work/fdc/load-foods';
import type { Loading } from '#lib/work/fdc/loading';
import { loadNutrients } from '#lib/work/fdc/load-nutrients';
import { loadFactors, loadPortions } from '#lib/work/fdc/load-portions';
import type { Download } from '#lib/work/fdc/open-download';
import type { Tell } from '#lib/work/fdc/progress';
import { keepMeta, readMeta, type Stage } from '#lib/work/fdc/stage';

const TABLES: readonly (readonly [string, (loading: Loading) => Promise<void>])[] = [
  ['food.csv', loadFoods],
  ['food_category.csv', loadGroups],
  ['branded_food.csv', loadBranded],
  ['food_nutrient.csv', loadNutrients],
  ['food_portion.csv', loadPortions],
  ['factors', loadFactors],
];

/**
 * Puts the tables of a download side by side. A table that is complete already is passed over, one that was begun
 * is begun again; counts are kept with each.
 */
export async function stageTables(
  download: Download,
  stage: Stage,
  counter: Counter,
  tell: Tell,
): Promise<void> {
  const loading: Loading = {
    download,
    stage,
    counter,
    tell,
    wanted: new IdSet(),
    others: new IdSet(),
  };
  for (const [name, load] of TABLES) {
    if (readMeta(stage).tables.includes(name)) {
      if (name === 'food.csv') rememberFoods(loading);
      continue;
    }
    await load(loading);
    const { tables } = readMeta(stage);
    keepMeta(stage, { tables: [...tables, name], tally: counter.tally });
  }
}

/** Foods that are known from a run before. Other kinds of food are not told apart from foreign ids then. */
function rememberFoods({ stage, wanted, others }: Loading): void {
  const rows = stage.db.prepare<[], { fdc_id: number }>('SELECT fdc_id FROM food').iterate();
  for (const { fdc_id: id } of rows) wanted.add(id);
  const kept = stage.db
    .prepare<[], { value: string }>("SELECT value FROM meta WHERE key = 'others'")
    .get();
  for (const id of JSON.parse(kept?.value ?? '[]') as number[]) others.add(id);
}
