import 'server-only';
import { episodeFigures } from '#lib/figures/episode-figures';
import { promiseRows, type PromiseRow } from '#lib/overview/title-and-hook';
import { numbersToPublish } from '#lib/publish/from-lock';
import { readEditFacts } from '../edit-facts';
import type { ReadDescription } from './read-description';

/** What an episode's title and hook promise and the numbers that go out do not bear out. */
export async function readPromises({
  file,
  figures,
  publish,
  lock,
}: Pick<ReadDescription, 'file' | 'figures' | 'publish' | 'lock'>): Promise<readonly PromiseRow[]> {
  const facts = await readEditFacts(publish.file);
  return promiseRows(publish.file, facts, (nutrients) =>
    nutrients.every((each) => figures.nutrients.includes(each))
      ? publish
      : numbersToPublish(file, lock?.snapshot ?? null, episodeFigures(file, nutrients)),
  );
}
