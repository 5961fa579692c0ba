import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import type { Food } from '#lib/foods/food';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readStoredFood } from '#lib/store/read-foods';
import { SecondWitnessPart } from '../../app/pantry/_components/second-witness-part';
import { nameWitness } from '../../app/pantry/witness-actions';
import { withFreshDatabase } from '../store/database';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { Redirected, send, words } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));

const LABEL = aFood('skyr', { protein: '1.1', fat: '0.2' }, { kind: 'label' });
const TABLE = aFood('yogurt, plain', { protein: '10.9', fat: '0.2' });

function shown(food: Food, witness: Food | null, found: readonly Food[] | null = null): string {
  return words(
    renderToStaticMarkup(
      <SecondWitnessPart food={food} rev={1} witness={witness} query="yogurt" found={found} />,
    ),
  );
}

describe('the second witness on a food’s page', () => {
  test('says what disagrees, by how much, and nothing where nothing does', () => {
    expect(shown(LABEL, TABLE)).toContain(
      'protein 1.05–1.15 g where the table has 10.85–10.95 g: a tenth',
    );
    expect(shown(TABLE, TABLE)).toContain('They agree.');
    expect(shown(LABEL, { ...TABLE, version: { ...TABLE.version, state: 'cooked' } })).toContain(
      'Not compared: the label is as sold and yogurt, plain is cooked',
    );
  });

  test('offers the foods of the table that were looked for', () => {
    expect(shown(LABEL, null, [TABLE])).toContain('Hold it against this');
    expect(shown(LABEL, null, [])).toContain('Nothing of the table fits “yogurt”');
  });
});

describe('naming it', () => {
  withFreshDatabase();

  test('keeps it, lets go of it again, and takes no label for a witness', async () => {
    const recipe = aRecipe('r', [grams('a', 'skyr', 100), grams('b', 'yogurt, plain', 100)]);
    const brought = await importEpisodeFile(
      aFile([aDish('d', recipe)], [LABEL, TABLE]),
      new Date(),
    );
    if (!brought.ok) throw new Error(JSON.stringify(brought.problems));
    const file = await readEpisodeFile(brought.value.episodeId, '2026-12-10T08:00:00.000Z');
    const idOf = (name: string) => file?.foods.find((food) => food.name === name)?.id ?? '';
    const foodId = idOf('skyr');
    const now = async () => {
      const stored = await readStoredFood(foodId);
      return { witnessId: stored?.food.witnessId, rev: stored?.revs[foodId] ?? 0 };
    };
    const name = async (witnessId: string) =>
      send(nameWitness, { foodId, rev: (await now()).rev, witnessId });
    await name(idOf('yogurt, plain'));
    expect((await now()).witnessId).toBe(idOf('yogurt, plain'));
    const refused = await name(foodId);
    expect(refused.state.problems).toMatchObject([{ code: 'gone' }]);
    await name('');
    expect((await now()).witnessId).toBeNull();
  });
});
