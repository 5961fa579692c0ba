import { describe, expect, test, vi } from 'vitest';
import { readEpisodeFile } from '#lib/store/read-episode';
import { importEpisodeFile } from '#lib/store/import-file';
import { statesWays } from '../../app/episodes/[id]/states-ways';
import { withFreshDatabase } from '../store/database';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));

describe('the ways out where raw and cooked differ', () => {
  withFreshDatabase();

  test('are foods in the state weighed, and cooked weights of the second witness; none where none is missing', async () => {
    const own = { kind: 'label', section: 'meatAndFish' } as const;
    const patty = {
      id: 'y',
      method: 'patty',
      rawMg: 113_400,
      cookedMg: 82_000,
      source: 'USDA SR28, Weight file',
      own: null,
    };
    const foods = [
      aFood('Harbour mince, cooked', {}, { ...own, witnessId: 'Table mince' }, { state: 'cooked' }),
      aFood('Table mince', {}, { ...own, yields: [patty] }, { state: 'raw' }),
      aFood('Mince of the quay', {}, own, { state: 'raw' }),
    ];
    const lines = [
      grams('500 g mince', 'Harbour mince, cooked', 500, { state: 'raw' }),
      grams('200 g mince, cooked', 'Harbour mince, cooked', 200, { state: 'cooked' }),
      grams('300 g mince of the table', 'Table mince', 300, { state: 'cooked' }),
    ];
    const brought = await importEpisodeFile(
      aFile([aDish('s', aRecipe('r', lines))], foods),
      new Date(),
    );
    if (!brought.ok) throw new Error(JSON.stringify(brought.problems));
    const file = await readEpisodeFile(brought.value.episodeId, '2026-12-10T08:00:00.000Z');
    if (!file) throw new Error('the episode must be there');
    const ways = await statesWays(file);
    const open = file.episode.segments[0]?.recipe?.lines[0];
    expect(Object.keys(ways)).toEqual([open?.id]);
    const [way] = Object.values(ways);
    expect(way?.look).toBe('mince raw');
    expect(way?.foods.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['Table mince', 'Mince of the quay']),
    );
    expect(way?.yields.map(({ words }) => words)).toEqual([
      '72 %, patty, of Table mince (USDA SR28, Weight file)',
    ]);
  });
});
