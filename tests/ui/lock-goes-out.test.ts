import { beforeAll, describe, expect, test, vi } from 'vitest';
import { dishesOf } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import { inputsHash } from '#lib/lock/numbers-lock';
import { cardWords } from '#lib/publish/cards/card-words';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { write } from '#lib/store/write';
import { readLook } from '../../app/episodes/[id]/cards/look';
import { readCards } from '../../app/episodes/[id]/cards/read-cards';
import { lockNumbers } from '../../app/episodes/[id]/publish/actions';
import { readCaptions } from '../../app/episodes/[id]/publish/captions/read-captions';
import { AT, withFreshDatabase } from '../store/database';
import { demoFile, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));

const NOW = '2026-12-10T08:00:00.000Z';

/** What the cards of saved swaps say, without the word on how the lock stands. */
async function swapCards(id: string): Promise<readonly string[]> {
  const read = await readCards(id, readLook({}));
  const cards = (read?.files ?? []).map(({ card }) => card);
  const told = cards.filter(({ kind }) => kind === 'swap').map(cardWords);
  expect(told.length).toBeGreaterThan(0);
  return told.map((each) => each.replace(/; (?:not locked|lock broken)$/, ''));
}

/** Each number of the captions that is off and what becomes of it. */
async function corrections(id: string): Promise<readonly string[]> {
  const read = await readCaptions(id);
  const all = (read?.captions ?? []).flatMap((each) => each.corrections);
  return all.map(({ said, right }) => `${said} → ${right}`);
}

/** Without what the scale said, so that the amounts as planned are those that count. */
function unweighed(file: EpisodeFile): EpisodeFile {
  const segments = file.episode.segments.map((segment) => {
    const recipe = segment.recipe && { ...segment.recipe, weighings: [] };
    return { ...segment, recipe };
  });
  return { ...file, episode: { ...file.episode, segments } };
}

/** Gives the ingredient that matches another amount in grams. */
async function amountAnew(id: string, match: RegExp, grams: number): Promise<void> {
  const file = await readEpisodeFile(id, NOW);
  const lines = dishesOf(file?.episode.segments ?? []).flatMap(({ recipe }) => recipe.lines);
  const line = lines.find(({ text }) => match.test(text));
  const revs = await readRevisions(id);
  const done = await write({
    ...{ actor: DEFAULT_CREATOR_ID, label: 'Another amount', at: new Date(NOW) },
    edits: [
      {
        ...{ op: 'update', entity: 'RecipeLine', id: line?.id ?? '' },
        rev: revs[line?.id ?? ''] ?? 0,
        patch: { lowNum: grams, highNum: grams },
      },
    ],
  });
  expect(done.ok).toBe(true);
}

// DESIGN 4, numbers lock: description, cards and captions take their numbers from the lock; before it they are drafts.
describe('what goes out after a change under a lock', () => {
  withFreshDatabase();
  let id = '';
  beforeAll(async () => {
    const done = await importEpisodeFile(unweighed(demoFile()), AT);
    if (!done.ok) throw new Error(JSON.stringify(done.problems));
    id = done.value.episodeId;
  });

  test('keeps to the numbers of the lock: cards of swaps, and captions with corrections', async () => {
    const file = await readEpisodeFile(id, NOW);
    if (!file) throw new Error('no episode');
    const draft = { cards: await swapCards(id), captions: await corrections(id) };
    await amountAnew(id, /plain skyr/, 650);
    await amountAnew(id, /pearl barley/, 180);
    expect(await swapCards(id)).not.toEqual(draft.cards);
    expect(await corrections(id)).not.toEqual(draft.captions);
    await amountAnew(id, /plain skyr/, 600);
    await amountAnew(id, /pearl barley/, 150);
    const now = await readEpisodeFile(id, NOW);
    if (!now) throw new Error('no episode');
    const sent = await send(lockNumbers, { episodeId: id, inputsSha256: inputsHash(now) });
    expect(sent.state.problems).toEqual([]);
    const locked = { cards: await swapCards(id), captions: await corrections(id) };
    await amountAnew(id, /plain skyr/, 650);
    await amountAnew(id, /pearl barley/, 180);
    expect(await swapCards(id)).toEqual(locked.cards);
    expect(await corrections(id)).toEqual(locked.captions);
  });
});
