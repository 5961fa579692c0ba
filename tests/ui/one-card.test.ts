import { beforeAll, describe, expect, test, vi } from 'vitest';
import { importEpisodeFile } from '#lib/store/import-file';
import * as swaps from '#lib/swap/swap-words';
import { readLook } from '../../app/episodes/[id]/cards/look';
import { readCard, readCards } from '../../app/episodes/[id]/cards/read-cards';
import { AT, withFreshDatabase } from '../store/database';
import { demoFile } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('#lib/swap/swap-words', { spy: true });

const look = readLook({});

// No source outside: one picture must be what all of them have under its name.
describe('the picture of one card', () => {
  withFreshDatabase();
  let id = '';
  beforeAll(async () => {
    const done = await importEpisodeFile(demoFile(), AT);
    if (!done.ok) throw new Error(JSON.stringify(done.problems));
    id = done.value.episodeId;
  });

  test('is the one of all, of a dish as of a swap', async () => {
    const all = (await readCards(id, look))?.files ?? [];
    const kinds = new Set(all.map(({ card }) => card.kind));
    expect(kinds).toContain('dish');
    expect(kinds).toContain('swap');
    for (const kind of kinds) {
      const file = all.find(({ card }) => card.kind === kind);
      expect(await readCard(id, file?.name ?? '', look)).toEqual({ file });
    }
  });

  test('of a dish is there without working out any swap', async () => {
    const [file] = (await readCards(id, look))?.files ?? [];
    vi.mocked(swaps.swapTable).mockClear();
    expect((await readCard(id, file?.name ?? '', look))?.file).toEqual(file);
    expect(swaps.swapTable).not.toHaveBeenCalled();
  });

  test('is none where no card has its name, and nothing where the episode is gone', async () => {
    expect(await readCard(id, '99-none-1920x1080', look)).toEqual({ file: null });
    expect(await readCard('none', '01-none-1920x1080', look)).toBeNull();
  });
});
