import 'server-only';
import type { DescriptionForm } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures, type EpisodeFigures } from '#lib/figures/episode-figures';
import { descriptionOf, descriptionText, type Description } from '#lib/publish/description';
import type { Droppable } from '#lib/publish/description/what-to-drop';
import { numbersToPublish, type NumbersToPublish } from '#lib/publish/from-lock';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readLastLock, type StoredLock } from '#lib/store/read-locks';
import { correctionTexts } from '../corrections/told-correction';

/** Which text of an episode is meant. */
export interface WhichText {
  readonly form: DescriptionForm;
  /** Left out of this one text. */
  readonly without: readonly Droppable[];
}

/** An episode as it is, and its description as it goes out. */
export interface ReadDescription {
  readonly file: EpisodeFile;
  readonly figures: EpisodeFigures;
  readonly publish: NumbersToPublish;
  readonly lock: StoredLock | null;
  /** The text of the same episode in any form. */
  readonly describe: (which: WhichText) => Description;
  /** Its words alone. */
  readonly textOf: (which: WhichText) => string;
}

/** Reads all that a description is made of; null where there is no such episode. */
export async function readDescription(
  episodeId: string,
  at: Date,
): Promise<ReadDescription | null> {
  const file = await readEpisodeFile(episodeId, at.toISOString(), { publish: true });
  if (!file) return null;
  const lock = await readLastLock(episodeId);
  const figures = episodeFigures(file);
  const publish = numbersToPublish(file, lock?.snapshot ?? null, figures);
  const corrections = await correctionTexts(episodeId);
  return {
    ...{ file, figures, publish, lock },
    describe: (which) => descriptionOf(publish, { ...which, corrections }),
    textOf: (which) => descriptionText(publish, { ...which, corrections }),
  };
}
