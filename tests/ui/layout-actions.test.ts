import { beforeAll, describe, expect, test, vi } from 'vitest';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile } from '#lib/store/read-episode';
import { changeLayoutPart, changeLimit } from '../../app/episodes/[id]/publish/layout-actions';
import { readDescription } from '../../app/episodes/[id]/publish/read-description';
import { AT, withFreshDatabase } from '../store/database';
import { demoFile, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));

const NOW = new Date('2026-12-10T08:00:00.000Z');

describe('the house layout', () => {
  withFreshDatabase();
  let id = '';
  beforeAll(async () => {
    const done = await importEpisodeFile(demoFile(), AT);
    if (!done.ok) throw new Error(JSON.stringify(done.problems));
    id = done.value.episodeId;
  });

  const layout = async () => (await readEpisodeFile(id, NOW.toISOString()))?.creator.layout;
  const text = async () => {
    const read = await readDescription(id, NOW);
    return read?.describe({ form: 'plain', without: [] }).text ?? '';
  };

  test('is kept for all episodes: a part that is left out is in no text, swaps that are put in are', async () => {
    expect(await text()).toContain('Sources of the figures');
    expect(await text()).not.toContain('SWAPS');
    await send(changeLayoutPart, { episodeId: id, part: 'sources', what: 'hide' });
    await send(changeLayoutPart, { episodeId: id, part: 'swaps', what: 'show' });
    expect(await text()).not.toContain('Sources of the figures');
    // Nobody is told of sources that are not named.
    expect(await text()).not.toContain('the sources named');
    expect(await text()).toContain('SWAPS');
  });

  test('moves a part, and leaves in what must never be missing', async () => {
    const before = (await text()).indexOf('THE DISHES SHOWN');
    for (let press = 0; press < 2; press += 1) {
      await send(changeLayoutPart, { episodeId: id, part: 'day', what: 'up' });
    }
    expect((await text()).indexOf('THE DISHES SHOWN')).toBeLessThan(before);
    await send(changeLayoutPart, { episodeId: id, part: 'allergens', what: 'hide' });
    expect(await text()).toContain('Allergens: contains');
  });

  test('has a limit; what is no number is refused, and nothing is lost', async () => {
    await send(changeLimit, { episodeId: id, limit: '2000' });
    expect((await layout())?.limit).toBe(2000);
    const refused = await send(changeLimit, { episodeId: id, limit: 'many' });
    expect(refused.state.problems).toMatchObject([{ path: 'limit' }]);
    expect(refused.state.typed).toMatchObject({ limit: 'many' });
    expect((await layout())?.limit).toBe(2000);
    const made = (await readDescription(id, NOW))?.describe({ form: 'plain', without: [] });
    expect(made?.fits).toBe(false);
    const needed = made?.drops.filter((drop) => drop.needed) ?? [];
    const without = needed.map(({ part }) => part);
    const short = (await readDescription(id, NOW))?.describe({ form: 'plain', without });
    expect(short?.fits).toBe(true);
    expect(short?.text.length).toBe(needed.at(-1)?.left);
    expect(short?.text).toContain('Allergens: contains');
  });

  test('refuses what is no part', async () => {
    const refused = await send(changeLayoutPart, { episodeId: id, part: 'price', what: 'up' });
    expect(refused.state.problems).not.toEqual([]);
  });
});
