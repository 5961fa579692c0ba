import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile } from '#lib/store/read-episode';
import { aDish, aFile, aFood, aLine, aRecipe } from '../support/build';

const egg = { qtyNum: 1, qtyDen: 1, digits: 0, source: 'test' };

/** A few foods of the person's own, in the store, by short names: what a search may match words with. */
export async function writeFoods(): Promise<{ groats: string; curd: string; eggs: string }> {
  const label = { kind: 'label' as const };
  const foods = [
    aFood(
      'groats',
      { energyKcal: '380', protein: '13.0', fat: '6.0', carbohydrate: '66.0' },
      {
        ...label,
        name: 'Oat groats',
      },
    ),
    aFood(
      'curd',
      { energyKcal: '100', protein: '12.0', fat: '4.0', carbohydrate: '3.0' },
      {
        ...label,
        name: 'Curd cheese',
      },
    ),
    aFood(
      'eggs',
      { energyKcal: '143', protein: '12.6', fat: '9.5', carbohydrate: '0.7' },
      {
        ...label,
        name: 'Farm eggs',
        measures: [
          { ...egg, id: 'small', name: 'small', massMg: 40_000 },
          { ...egg, id: 'large', name: 'large', massMg: 60_000 },
        ],
      },
    ),
  ];
  const lines = foods.map(({ id }) => aLine(id, id));
  const brought = await importEpisodeFile(
    aFile([aDish('d', aRecipe('r', lines))], foods),
    new Date(),
  );
  if (!brought.ok) throw new Error(JSON.stringify(brought.problems));
  const file = await readEpisodeFile(brought.value.episodeId, '2026-12-10T08:00:00.000Z');
  const idOf = (name: string) => file?.foods.find((food) => food.name === name)?.id ?? '';
  return { groats: idOf('Oat groats'), curd: idOf('Curd cheese'), eggs: idOf('Farm eggs') };
}
