import 'server-only';
import { dishesOf } from '#lib/episode/context';
import type { SwapStep } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { numbersToPublish } from '#lib/publish/from-lock';
import { toldLock, UNLOCKED, type LockTold } from '#lib/publish/lock-words';
import { readStoredFood } from '#lib/store/read-foods';
import { readLastLock } from '#lib/store/read-locks';
import { readRevisedEpisode } from '#lib/store/read-revised-episode';

/** What the pages of swaps draw from. */
export interface SwapsFile {
  /** As it is now, with saved swaps and replies. */
  readonly live: EpisodeFile;
  /** How the numbers that swaps are told of stand to the lock. */
  readonly lock: LockTold;
  /** What swaps are told of: the numbers that go out, with the foods that the steps bring in. */
  readonly file: EpisodeFile;
  readonly revs: Readonly<Record<string, number>>;
}

/**
 * An episode for its swaps; null if there is none.
 * @param segmentId the dish that is swapped: where it is new since the lock, all is told as it is now
 */
export async function readSwaps(
  episodeId: string,
  steps: readonly SwapStep[] = [],
  segmentId: string | null = null,
): Promise<SwapsFile | null> {
  const read = await readRevisedEpisode(episodeId, new Date().toISOString(), { publish: true });
  if (!read) return null;
  const { file: live, revs } = read;
  const snapshot = (await readLastLock(episodeId))?.snapshot ?? null;
  const published = numbersToPublish(live, snapshot, episodeFigures(live));
  const isIn = ({ episode }: EpisodeFile) =>
    segmentId === null || dishesOf(episode.segments).some(({ id }) => id === segmentId);
  const isNew = !isIn(published.file);
  const file = await withFoods(isNew ? live : published.file, steps);
  return { live, file, revs, lock: isNew ? UNLOCKED : toldLock(published) };
}

/** A file with the foods that steps name and that it does not carry yet, and their packs. */
async function withFoods(file: EpisodeFile, steps: readonly SwapStep[]): Promise<EpisodeFile> {
  const has = new Set(file.foods.map(({ id }) => id));
  const lacking = [...new Set(steps.flatMap((step) => ('foodId' in step ? step.foodId : [])))];
  const stored = await Promise.all(
    lacking.filter((id) => !has.has(id)).map((id) => readStoredFood(id)),
  );
  const found = stored.flatMap((each) => each ?? []);
  if (found.length === 0) return file;
  const packs = new Set(file.packs.map(({ id }) => id));
  return {
    ...file,
    foods: [...file.foods, ...found.map(({ food }) => food)],
    packs: [
      ...file.packs,
      ...found.flatMap((each) => each.packs.filter(({ id }) => !packs.has(id))),
    ],
  };
}
