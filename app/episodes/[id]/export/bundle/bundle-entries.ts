import 'server-only';
import { episodeFileText } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { stableJson } from '#lib/episode/stable-json';
import { historyText, type EpisodeHistory } from '#lib/publish/history';
import type { KeptNumbers } from '#lib/sheet/outputs';
import { readPhotoBytes } from '#lib/store/photos';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readHistory, readSnapshotText } from '#lib/store/read-history';
import { readLastLock } from '#lib/store/read-locks';
import { lockEntryName, photoEntryName } from '#lib/work/bundle/read-bundle';
import type { BundleEntry } from '#lib/work/bundle/write-bundle';
import { drawn } from '#lib/work/drawings';
import { madeOutputs } from '#lib/work/made-outputs';
import { readLook } from '../../cards/look';
import { readCards } from '../../cards/read-cards';
import { correctionTexts } from '../../corrections/told-correction';
import { readEvidence } from '../../evidence/read-evidence';

/** The seed of the planner, as `npm run sheet` has it. */
const SEED = 1;

const READ_ME = `One episode with all that belongs to it.

episode.json   the episode, its foods, kitchen, day, edit and what goes out beside the video
history.json   locks, copied texts, corrections, photos of labels
locks/         each numbers lock as it was taken; the name is the SHA-256 of its bytes
photos/        photos of labels; the name is the SHA-256 of their bytes
evidence.json  the last lock, and the numbers with their working, sources and statements
cards/         cards with the numbers that go out, as they are offered first
outputs/       description and pieces with the numbers that go out: those of the last lock, with the corrections;
               day sheet, shopping list and the like as the episode is now

"Bring in an episode file" on the first page takes this zip as it is. It reads episode.json, history.json, locks and
photos, and nothing else.
`;

/**
 * The files of an episode's bundle; null where there is no such episode.
 * @param signal ends what is not drawn yet
 */
export async function bundleEntries(
  episodeId: string,
  at: Date,
  signal: AbortSignal,
): Promise<{ readonly title: string; readonly entries: readonly BundleEntry[] } | null> {
  const file = await readEpisodeFile(episodeId, at.toISOString(), { edit: true, publish: true });
  if (!file) return null;
  // A photo whose file is gone cannot travel, and must not keep the rest from it.
  const history = await withPhotosThere(await readHistory(file));
  const shas = new Set<string>();
  const once = (sha256: string) => !shas.has(sha256) && shas.add(sha256);
  return {
    title: file.episode.title,
    entries: [
      text('read-me.txt', READ_ME),
      text('episode.json', episodeFileText(file)),
      text('history.json', historyText(history)),
      ...history.locks
        .filter(({ sha256 }) => once(sha256))
        .map(({ id, sha256 }) => ({
          name: lockEntryName(sha256),
          bytes: async () => there(await readSnapshotText(id), `lock ${id}`),
        })),
      ...history.photos
        .filter(({ sha256 }) => once(sha256))
        .map(({ sha256 }) => ({
          name: photoEntryName(sha256),
          compress: false,
          bytes: async () => there(await readPhotoBytes(sha256), `photo ${sha256}`),
        })),
      {
        name: 'evidence.json',
        bytes: async () => stableJson((await readEvidence(episodeId))?.evidence ?? null),
      },
      ...(await outputEntries(file)),
      ...(await cardEntries(episodeId, signal)),
    ],
  };
}

const text = (name: string, words: string): BundleEntry => ({
  name,
  bytes: () => Promise.resolve(words),
});

function there<T>(found: T | null, what: string): T {
  if (found === null) throw new Error(`${what} went away while the bundle was made`);
  return found;
}

async function withPhotosThere(history: EpisodeHistory): Promise<EpisodeHistory> {
  const photos: EpisodeHistory['photos'] = [];
  for (const photo of history.photos) {
    if ((await readPhotoBytes(photo.sha256)) !== null) photos.push(photo);
  }
  return { ...history, photos };
}

/** Outputs to read; where they cannot be made the bundle still holds everything that they are made of. */
async function outputEntries(file: EpisodeFile): Promise<readonly BundleEntry[]> {
  try {
    const kept = await keptNumbers(file.episode.id);
    const made = await madeOutputs({ file, kept, clock: { now: file.savedAt, seed: SEED } });
    return [...made].map(([name, words]) => text(`outputs/${name}`, words));
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return [text('outputs/not-made.txt', `The outputs could not be made: ${why}\n`)];
  }
}

/** What says which numbers go out, as on Publish. */
async function keptNumbers(episodeId: string): Promise<KeptNumbers> {
  const last = await readLastLock(episodeId);
  const corrections = await correctionTexts(episodeId);
  if (!last) return { lock: null, corrections };
  const { seq, at, snapshot, sha256, schemaVersion, engineVersion } = last;
  const lock = { seq, at: at.toISOString(), snapshot, sha256, schemaVersion, engineVersion };
  return { lock, corrections };
}

async function cardEntries(
  episodeId: string,
  signal: AbortSignal,
): Promise<readonly BundleEntry[]> {
  const cards = await readCards(episodeId, readLook({}));
  return (cards?.files ?? []).map(({ name, svg }) => ({
    name: `cards/${name}.png`,
    compress: false,
    bytes: () => drawn({ svg, as: 'png' }, signal),
  }));
}
