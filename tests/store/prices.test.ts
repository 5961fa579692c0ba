import { expect, it } from 'vitest';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile } from '#lib/store/read-episode';
import { database } from '#lib/store/client';
import { write } from '#lib/store/write';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';

withFreshDatabase();

it('of each shop and number the last price counts, and an offer hides no ordinary one', async () => {
  const done = await importEpisodeFile(FILE, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  const { id: packId } = await database().pack.findFirstOrThrow({ where: { name: 'bag' } });
  const { id: shopId } = await database().shop.findFirstOrThrow({});
  const seen = (id: string, minor: number, seenOn: string, more = {}) => ({
    op: 'create' as const,
    entity: 'Price' as const,
    row: { id, packId, shopId, minor, currency: 'EUR', seenOn, offer: false, ...more },
  });
  const edits = [
    seen('p-older', 150, '2026-04-03'),
    seen('p-newer', 180, '2026-04-04'),
    seen('p-offer', 99, '2026-04-05', { offer: true, most: 2 }),
  ];
  expect(await write({ actor: 'me', label: 'Prices', at: AT, edits })).toMatchObject({ ok: true });
  const file = await readEpisodeFile(done.value.episodeId, AT.toISOString());
  const pack = file?.packs.find(({ name }) => name === 'bag');
  // In no shop named stands the price of the file; in the shop its offer of two at once, and what was seen since.
  expect(pack?.price).toMatchObject({ minor: 219 });
  expect(pack?.prices.map(({ minor, count, most }) => [minor, count, most])).toEqual([
    [350, 2, 3],
    [180, 1, null],
    [99, 1, 2],
  ]);
});
