import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test, vi } from 'vitest';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile } from '#lib/store/read-episode';
import FitPage from '../../app/episodes/[id]/fit/[dish]/page';
import { withFreshDatabase } from '../store/database';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { words } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  notFound: () => {
    throw new Error('not found');
  },
  redirect: vi.fn(),
  usePathname: () => '/episodes/e/fit/d',
  useRouter: () => ({ push: () => undefined, refresh: () => undefined }),
}));
withFreshDatabase();

async function page(region: 'US' | 'EU', asked?: string): Promise<string> {
  const bowl = aRecipe('r', [grams('curd', 'lean', 200, { text: '200 g curd' })]);
  const lean = aFood('lean', { energyKcal: '61', protein: '9.8' }, { name: 'Curd' });
  const of = aFile([aDish('bowl', bowl, { title: 'Curd bowl' })], [lean]);
  const done = await importEpisodeFile(
    { ...of, episode: { ...of.episode, region } },
    new Date('2026-11-30T12:00:00Z'),
  );
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  const { episodeId: id } = done.value;
  const dish = (await readEpisodeFile(id, '2026-11-30T12:00:00Z'))?.episode.segments[0]?.id ?? '';
  const params = Promise.resolve({ id, dish });
  const searchParams = Promise.resolve(asked === undefined ? {} : { asked });
  return words(renderToStaticMarkup(await FitPage({ params, searchParams })));
}

test('an address that was cut says so instead of looking for nothing', async () => {
  expect(await page('US', '{"targets":[')).toContain('What this address asks cannot be read');
  const plain = await page('US');
  expect(plain).toContain('Nothing has been looked for yet');
  expect(plain).not.toContain('cannot be read');
});

test('energy is asked for by its name in the region of the episode', async () => {
  expect(await page('US')).toContain('calories, at least');
  const inEu = await page('EU');
  expect(inEu).toContain('energy, kcal, at least');
  expect(inEu).not.toContain('calories');
});
