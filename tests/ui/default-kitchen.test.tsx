import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test, vi } from 'vitest';
import { plannedResolutionMg } from '#lib/episode/spreads';
import { episodeFigures } from '#lib/figures/episode-figures';
import { database } from '#lib/store/client';
import { readEpisodeFile } from '#lib/store/read-episode';
import { writeReference } from '#lib/store/write-reference';
import { beginShort } from '../../app/actions';
import { makeKitchen } from '../../app/kitchen/actions';
import KitchenPage from '../../app/kitchen/page';
import { withFreshDatabase, AT } from '../store/database';
import { BARLEY, SALT } from '../store/fixture';
import { Redirected, send, words } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  usePathname: () => '/kitchen',
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));

withFreshDatabase();

const kitchens = () => database().kitchen.count();
const kitchenPage = async () => words(renderToStaticMarkup(await KitchenPage()));

test('a first dish has its figures with no kitchen; the kitchen taken for granted is shown as such until it is made one’s own', async () => {
  await writeReference([BARLEY, SALT], { source: 'Harbour table', release: 'H1', at: AT });
  const { href } = await send(beginShort, {
    list: '200 g pearled barley',
    portions: '2',
    title: '',
  });
  const episodeId = /episodes\/([^/]+)\/numbers/.exec(href)?.[1] ?? '';
  const read = async () => {
    const file = await readEpisodeFile(episodeId, AT.toISOString());
    if (!file) throw new Error('no episode');
    return { file, energy: episodeFigures(file).dishes[0]?.whole.energyKcal };
  };
  const first = await read();
  expect(await kitchens()).toBe(0);
  // 200 g at 352 kcal in 100 g; ± half a gram of a scale that shows whole grams, ± half a kcal as printed.
  expect(first.energy?.value).toBeCloseTo(704, 6);
  expect(first.energy?.low).toBeCloseTo((199.5 * 351.5) / 100, 6);
  expect(first.energy?.high).toBeCloseTo((200.5 * 352.5) / 100, 6);
  expect(plannedResolutionMg(first.file.kitchen)).toBe(1000);

  expect(await kitchenPage()).toContain('A kitchen is taken for granted');
  expect(await kitchens()).toBe(0);
  await send(makeKitchen, {});
  expect(await kitchens()).toBe(1);
  expect(await kitchenPage()).not.toContain('taken for granted');
  const then = await read();
  expect(then.file.kitchen.id).toBe((await database().kitchen.findFirst())?.id);
  expect(then.energy).toEqual(first.energy);
});
