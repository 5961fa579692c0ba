import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { importEpisodeFile } from '#lib/store/import-file';
import { versionRow } from '#lib/store/food-rows';
import { readCorrections } from '#lib/store/read-corrections';
import { readEpisodeChanges } from '#lib/store/read-episode-changes';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { readLastLock } from '#lib/store/read-locks';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { breakdownHref } from '../../app/episodes/[id]/breakdown/href';
import { CorrectionsView } from '../../app/episodes/[id]/corrections/_components/corrections-view';
import { makeCorrection } from '../../app/episodes/[id]/corrections/actions';
import { readCorrectionsPage } from '../../app/episodes/[id]/corrections/read-corrections-page';
import { correctionTexts } from '../../app/episodes/[id]/corrections/told-correction';
import { lockNumbers } from '../../app/episodes/[id]/publish/actions';
import PublishPage from '../../app/episodes/[id]/publish/page';
import { readReplies } from '../../app/episodes/[id]/publish/replies/read-replies';
import { withFreshDatabase } from '../store/database';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { send, words } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: vi.fn(),
  usePathname: () => '/episodes/e1/corrections',
  useRouter: () => ({ push: () => undefined, refresh: () => undefined }),
}));
withFreshDatabase();

const NOW = new Date('2026-11-30T12:00:00Z');

/** Macros that come to the calories of 100 g by 4-4-9; 404 kcal and 40 g of protein in 400 g. */
const BEAN = aFood(
  'bean',
  { energyKcal: '101', protein: '10.0', fat: '1.0', carbohydrate: '13.0' },
  { kind: 'label', name: 'Harbour beans' },
);

async function begin(title: string, publishOn: string | null = null): Promise<string> {
  const stew = aRecipe('stew', [grams('beans', 'bean', 400)]);
  const of = aFile([aDish('s', stew, { title: 'Stew' })], [BEAN]);
  const file = { ...of, episode: { ...of.episode, title, publishOn } };
  const done = await importEpisodeFile(file, NOW);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  return done.value.episodeId;
}

async function fileOf(episodeId: string): Promise<EpisodeFile> {
  const file = await readEpisodeFile(episodeId, NOW.toISOString());
  if (!file) throw new Error('no episode');
  return file;
}

async function page(episodeId: string, after?: string) {
  const read = await readCorrectionsPage(episodeId, NOW, after);
  if (!read) throw new Error('no page');
  const first = after === undefined;
  const markup = renderToStaticMarkup(<CorrectionsView page={read} first={first} />);
  return { read, markup, text: words(markup) };
}

async function publishPage(episodeId: string): Promise<string> {
  const asked = { params: Promise.resolve({ id: episodeId }), searchParams: Promise.resolve({}) };
  vi.useFakeTimers({ now: NOW, toFake: ['Date'] });
  try {
    return words(renderToStaticMarkup(await PublishPage(asked)));
  } finally {
    vi.useRealTimers();
  }
}

/** Locks the numbers, and keeps a text as if it had been copied. */
async function goesOut(episodeId: string, textId = `out-${episodeId}`): Promise<void> {
  const { read } = await page(episodeId);
  const { inputsSha256 } = read;
  await send(lockNumbers, { episodeId, inputsSha256 });
  const lock = await readLastLock(episodeId);
  const row = { id: textId, lockId: lock?.id ?? '', text: 'As pasted', at: NOW };
  await acts([{ op: 'create', entity: 'Published', row }]);
}

async function acts(edits: Parameters<typeof write>[0]['edits']): Promise<void> {
  const done = await write({ actor: 'test', label: 'test', at: NOW, edits });
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
}

async function weighs(episodeId: string, mg: number): Promise<void> {
  const [segment] = (await fileOf(episodeId)).episode.segments;
  const id = segment?.recipe?.lines[0]?.id ?? '';
  const rev = (await readRevisions(episodeId))[id] ?? 0;
  const patch = { plannedLowMg: mg, plannedMg: mg, plannedHighMg: mg };
  await acts([{ op: 'update', entity: 'RecipeLine', id, rev, patch }]);
}

async function correct(episodeId: string, reason = 'Weighed again') {
  const { read } = await page(episodeId);
  const lockId = read.went?.lockId ?? '';
  const { inputsSha256 } = read;
  return send(makeCorrection, { episodeId, lockId, inputsSha256, reason, on: '2026-11-30' });
}

test('the check before pasting holds title and hook against the numbers that go out', async () => {
  const id = await begin('A stew of 60 grams of protein');
  const denied = 'In the title, “60 grams of protein”';
  const told = await publishPage(id);
  // 400 g × 0.10 g, by hand.
  expect(told).toContain(denied);
  expect(told).toContain('Write “40 grams of protein” instead.');
  expect(told).not.toContain('Nothing is open');
  await weighs(id, 600_000);
  expect(await publishPage(id)).not.toContain(denied);
  // Once it is locked, 60 g are what goes out, whatever is weighed later.
  await goesOut(id);
  await weighs(id, 400_000);
  expect(await publishPage(id)).not.toContain(denied);
});

describe('what went out', () => {
  test('of an episode that was out before is the description that was pasted', async () => {
    const id = await begin('Came from outside');
    const texts = 'Stew\nThe whole dish: 470 kcal, 40 g protein';
    const row = { id: 'pasted', episodeId: id, kind: 'description' as const, position: 0 };
    await acts([
      { op: 'create', entity: 'EditText', row: { ...row, name: 'Description', text: texts } },
    ]);
    const { text } = await page(id);
    expect(text).not.toContain('Nothing has gone out yet');
    expect(text).toContain('The description that you pasted');
    expect(text).toContain('- Stew, the whole dish: 404 kcal (not 470)');
    // A copied text may never have been pasted, and it says so.
    await goesOut(id);
    await weighs(id, 500_000);
    const after = await page(id);
    expect(after.text).toContain('nobody knows whether that text was pasted');
    expect(after.text).toContain('Stew, the whole dish: 505 kcal (not 470)');
  });

  test('and was changed: old and new, made in one act with its lock, told, and undone with it', async () => {
    const id = await begin('First');
    expect((await page(id)).text).toContain('Nothing has gone out yet');
    await goesOut(id);
    expect((await page(id)).text).toContain('Nothing to correct');

    await weighs(id, 500_000);
    const before = await page(id);
    // 500 g × 1.01 kcal and × 0.10 g, by hand.
    expect(before.text).toContain('404 kcal');
    expect(before.text).toContain('505 kcal');
    expect(before.text).toMatch(/protein 40 g [^.]*50 g/);
    expect(before.read.went?.reason).toContain('500 g instead of 400 g');
    // A number of now leads to its working.
    const [energy] = before.read.went?.needed.numbers ?? [];
    if (!energy) throw new Error('its calories are others');
    const working = breakdownHref(id, energy.scope, 'energyKcal');
    expect(before.markup).toContain(`href="${working}"`);

    const { state } = await correct(id);
    expect(state.done).toContain('The correction is made');
    const after = await page(id);
    const line = '- Stew, the whole dish: 505 kcal (not 404), 50 g protein (not 40),';
    expect(after.text).toContain(`Correction, 30 Nov 2026: Weighed again. ${line}`);
    expect(after.text).toContain('copy it again');
    // What was done is told at the lower edge, with the way back.
    const said = 'The correction is made, and the numbers are locked as they are now: lock 2';
    expect(after.markup).toMatch(new RegExp(`role="status"[^>]*>.*${said}`));
    expect(after.text).toContain(`Undo : ${said}`);
    expect((await correctionTexts(id))[0]).toContain(line);
    const lines = (await publishPage(id)).includes(`CORRECTIONS Correction, 30 Nov 2026`);
    expect(lines).toBe(true);
    expect((await readLastLock(id))?.seq).toBe(2);

    const { acts: done } = await readEpisodeChanges(id, { take: 1 });
    await undo(done[0]?.groupId ?? '', { actor: 'test', at: NOW });
    expect((await readLastLock(id))?.seq).toBe(1);
    expect((await page(id)).read.recorded).toEqual([]);
  });

  test('and is in a saved reply is named with it, and each of what went out leads to its place', async () => {
    const id = await begin('Answered');
    await goesOut(id);
    const [segment] = (await fileOf(id)).episode.segments;
    const reply = (replyId: string, text: string) => ({
      ...({ op: 'create', entity: 'Reply' } as const),
      row: {
        ...{ id: replyId, episodeId: id, at: NOW, comment: `I get 390 calories, ${replyId}` },
        ...{ nutrient: 'energyKcal' as const, number: 390, slip: null, text },
        segmentId: segment?.id ?? null,
      },
    });
    const piece = {
      kind: 'clip' as const,
      title: 'A short one',
      ofDay: true,
      limit: 500,
      position: 0,
    };
    await acts([
      reply('old', 'Thanks! The whole dish comes to 404 calories.'),
      reply('both', 'It was 404 calories, and it is 505 calories of the whole dish.'),
      reply('none', 'Did you leave out the 390 calories of oil?'),
      { op: 'create', entity: 'Piece', row: { ...piece, id: 'p1', episodeId: id } },
    ]);
    await weighs(id, 500_000);
    await correct(id);
    const { read, markup, text } = await page(id);
    expect(read.swept.map(({ place }) => place)).toEqual([
      { kind: 'description', form: 'plain' },
      { kind: 'reply', id: 'old' },
      { kind: 'cards' },
      { kind: 'piece', id: 'p1' },
    ]);
    expect(text).toContain('The reply to “I get 390 calories, old”');
    expect(text).toMatch(/The description copied .* Cards in the video .* The clip “A short one”/);
    expect(text).toContain('says 404 kcal, which is 505 kcal now: answer again');
    const here = `/episodes/${id}`;
    for (const href of [
      `${here}/publish?form=plain#description`,
      `${here}/publish/replies?reply=old#comment`,
      `${here}/cards`,
      `${here}/publish#piece-p1`,
    ]) {
      expect(markup).toContain(`href="${href}"`);
    }
    const asked = { reply: null, number: null, nutrient: null, of: null, slip: null, page: null };
    const replies = await readReplies(id, asked);
    expect(Object.fromEntries((replies?.rows ?? []).map((row) => [row.id, row.old]))).toEqual({
      old: '404 kcal, which is 505 kcal now',
      both: '',
      none: '',
    });
  });

  test('of before is on an older part of the list, which leads back to the latest', async () => {
    const id = await begin('Long');
    await goesOut(id);
    await weighs(id, 500_000);
    await correct(id);
    const [made] = (await page(id)).read.recorded;
    const older = await page(id, '~');
    expect(older.read.recorded.map((each) => each.id)).toEqual([made?.id]);
    expect(older.read.went).toBeNull();
    expect(older.text).toContain('Earlier corrections');
    expect(older.markup).toMatch(
      new RegExp(`href="/episodes/${id}/corrections"[^>]*>To the latest`),
    );
    expect((await page(id)).text).not.toContain('To the latest');
  });

  test('is put right twice in a row, and by a lock that was taken by hand, without another one', async () => {
    const id = await begin('Second');
    await goesOut(id);
    await weighs(id, 500_000);
    await correct(id);
    await weighs(id, 600_000);
    const { inputsSha256 } = (await page(id)).read;
    await send(lockNumbers, { episodeId: id, inputsSha256 });
    await correct(id, 'And once more');
    expect((await readLastLock(id))?.seq).toBe(3);
    const { rows } = await readCorrections({ episodeId: id });
    expect(rows.map(({ before, after }) => [before.seq, after.seq])).toEqual([
      [2, 3],
      [1, 2],
    ]);
    const [last] = await correctionTexts(id);
    expect(last).toContain('606 kcal (not 505)');
  });

  test('is not corrected to numbers that nobody saw, nor where nothing is written otherwise', async () => {
    const id = await begin('Third');
    await goesOut(id);
    await weighs(id, 500_000);
    const { read } = await page(id);
    const { inputsSha256 } = read;
    const lockId = read.went?.lockId ?? '';
    await weighs(id, 700_000);
    const sent = { episodeId: id, lockId, inputsSha256, reason: 'Why', on: '2026-11-30' };
    const { state } = await send(makeCorrection, sent);
    expect(state.problems).toMatchObject([{ code: 'changed' }]);
    expect(state.typed.reason).toBe('Why');
    await weighs(id, 400_000);
    const same = await correct(id);
    expect(same.state.problems).toMatchObject([{ code: 'none' }]);
    expect((await readCorrections({ episodeId: id })).rows).toEqual([]);
    const empty = await correct(id, ' ');
    expect(empty.state.problems).toMatchObject([{ path: 'reason' }]);
  });

  test('stays to be put right where it was locked and copied again without a word, until a correction joins them', async () => {
    const id = await begin('Out', '2026-11-30');
    await goesOut(id);
    await weighs(id, 500_000);
    await goesOut(id, 'again');
    const { read, text } = await page(id);
    expect(read.went).toMatchObject({ seq: 1, copiedSince: 2, lockedSince: 2 });
    expect(text).toContain('These went out with lock 1, first copied Mon 30 Nov');
    expect(text).toContain('copied again since, with lock 2');
    expect(await publishPage(id)).toContain('Put it right in public');
    const { state } = await correct(id);
    expect(state.done).toContain('The correction is made');
    // The lock that holds is the correction's: no other one was taken.
    expect((await readLastLock(id))?.seq).toBe(2);
    expect((await correctionTexts(id))[0]).toContain('505 kcal (not 404)');
    expect((await page(id)).text).toContain('Nothing to correct');
    expect(await publishPage(id)).not.toContain('Put it right in public');
  });

  test('is replaced by a newer copy as long as it is not out', async () => {
    const id = await begin('Not yet', '2026-12-24');
    await goesOut(id);
    await weighs(id, 500_000);
    // Nobody can know whether a copied text is out already, so the way is named, after locking again.
    const before = await publishPage(id);
    expect(before.indexOf('Lock again')).toBeLessThan(before.indexOf('Put it right in public'));
    await goesOut(id, 'replaced');
    expect((await page(id)).text).toContain('Nothing to correct');
    expect(await publishPage(id)).not.toContain('Put it right in public');
  });

  test('and is out is put right in public before it is locked again', async () => {
    const id = await begin('Out and broken', '2026-11-01');
    await goesOut(id);
    await weighs(id, 500_000);
    const found = await publishPage(id);
    expect(found.indexOf('Put it right in public')).toBeGreaterThan(0);
    expect(found.indexOf('Put it right in public')).toBeLessThan(found.indexOf('Lock again'));
  });

  test('with a label that was misread leads to the other episodes that used it', async () => {
    const [id, other] = [await begin('Fourth'), await begin('Fifth')];
    await goesOut(id);
    await goesOut(other);
    const file = await fileOf(id);
    const [food] = file.foods;
    if (!food) throw new Error('its food is there');
    const values = {
      ...food.version.values,
      energyKcal: { kind: 'eq', mantissa: 121, scale: 0 } as const,
    };
    const version = { ...food.version, id: 'read-again', seq: food.version.seq + 1, values };
    await acts([{ op: 'create', entity: 'FoodVersion', row: versionRow(food.id, version) }]);
    const { read, text } = await page(id);
    const [wrong] = read.went?.wrongFoods ?? [];
    const found = wrong?.episodes.find(({ episodeId }) => episodeId === other);
    expect(found).toMatchObject({ title: 'Fifth', lock: 'old', uses: [{ dish: 'Stew' }] });
    expect(text).toContain('Where else the old value was used');
    expect(text).toContain('what is locked rests on the old value');
    expect(text).toContain('121 kcal, was 101 kcal');
  });
});
