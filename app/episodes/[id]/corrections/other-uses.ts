import 'server-only';
import { readSnapshot } from '#lib/lock/locked-snapshot';
import { restsOn, type ChangedFood } from '#lib/publish/correction/changed-foods';
import { usesOfFood, type UseOfFood } from '#lib/publish/correction/food-uses';
import { readEpisodesLockedWith, readWentOut } from '#lib/store/read-corrections';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readEpisodesUsing } from '#lib/store/read-food-uses';

/** Another episode that used a food whose value has changed. */
export interface OtherUse {
  readonly episodeId: string;
  readonly title: string;
  readonly uses: readonly UseOfFood[];
  /** `old`: what went out rests on the old value. `new`: on another. `none`: nothing went out or was locked. */
  readonly lock: 'old' | 'new' | 'none';
}

/** A changed food with the other episodes that used it. */
export interface WrongFood extends ChangedFood {
  readonly episodes: readonly OtherUse[];
  /** How many more there are than are told here. */
  readonly more: number;
}

/** Episodes that are read in full for one food; the food's own page lists all of its ingredients. */
const TOLD = 10;

/** The other episodes that used a food, with what they used of it and whether what went out rests on the old value. */
export async function otherUses(food: ChangedFood, episodeId: string): Promise<WrongFood> {
  const using = await readEpisodesUsing([food.foodId]);
  const locked = await readEpisodesLockedWith(food.foodId);
  const ids = new Set([...using.map(({ id }) => id), ...locked]);
  ids.delete(episodeId);
  const told = [...ids].slice(0, TOLD);
  const episodes = [];
  for (const id of told) {
    const use = await otherUse(id, food);
    if (use) episodes.push(use);
  }
  return { ...food, episodes, more: ids.size - told.length };
}

async function otherUse(episodeId: string, food: ChangedFood): Promise<OtherUse | null> {
  const file = await readEpisodeFile(episodeId, new Date().toISOString());
  if (!file) return null;
  const out = await readWentOut(file);
  const all = out.flatMap(({ snapshot }) => readSnapshot(snapshot)?.file ?? []);
  // What is not put right yet first.
  const locked = all.find((each) => restsOn(each, food)) ?? all.at(-1);
  const uses = usesOfFood(file, food.foodId);
  return {
    episodeId,
    title: file.episode.title,
    // What went out may have used it where no ingredient does any more.
    uses: uses.length > 0 || !locked ? uses : usesOfFood(locked, food.foodId),
    lock: !locked ? 'none' : restsOn(locked, food) ? 'old' : 'new',
  };
}
