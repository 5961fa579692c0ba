import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { fromBufferPromise } from 'yauzl';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { countHistoryLocks, readLastLock } from '#lib/store/read-locks';
import { write } from '#lib/store/write';
import { inputsHash } from '#lib/lock/numbers-lock';
import { UNTOUCHED, type FormState } from '../../app/_ui/form/form-state';
import { bringIn } from '../../app/actions';
import { GET } from '../../app/episodes/[id]/export/bundle/route';
import { lockNumbers } from '../../app/episodes/[id]/publish/actions';
import { dropFreshDatabase, freshDatabase } from '../store/database';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { Redirected, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));

const AT = '2026-11-30T12:00:00Z';
const ACT = { actor: 'test', label: 'test', at: new Date(AT) };

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'slate-bring-in-'));
});
afterAll(async () => {
  await dropFreshDatabase();
  rmSync(folder, { recursive: true, force: true });
});

/** Chooses a file in the form of the first page; where it leads, or what it says. */
async function brings(bytes: BlobPart): Promise<{ href: string; state: FormState }> {
  const form = new FormData();
  form.set('file', new File([bytes], 'episode.zip'));
  try {
    return { href: '', state: await bringIn(UNTOUCHED, form) };
  } catch (error) {
    if (error instanceof Redirected) return { href: error.href, state: UNTOUCHED };
    throw error;
  }
}

async function download(id: string): Promise<Response> {
  return GET(new Request('http://localhost/'), { params: Promise.resolve({ id }) });
}

test('what one machine sends, another takes: the same episode with its lock; a second time, as history', async () => {
  await freshDatabase(join(folder, 'a.db'));
  const bean = aFood('bean', { energyKcal: '101', protein: '10.0' }, { kind: 'label' });
  const stew = aDish('s', aRecipe('stew', [grams('beans', 'bean', 400)]), { title: 'Stew' });
  const done = await importEpisodeFile(aFile([stew], [bean]), new Date(AT));
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  const { episodeId } = done.value;
  const file = await readEpisodeFile(episodeId, AT);
  if (!file) throw new Error('it is there');
  await send(lockNumbers, { episodeId, inputsSha256: inputsHash(file) });
  const lock = await readLastLock(episodeId);
  const sent = await download(episodeId);
  expect(sent.headers.get('content-disposition')).toMatch(/filename="[a-z-]+\.bundle\.zip"/);
  const zip = await sent.arrayBuffer();
  expect((await download('nobody')).status).toBe(404);

  await freshDatabase(join(folder, 'b.db'));
  expect((await brings(zip)).href).toBe(`/episodes/${episodeId}`);
  const there = await readLastLock(episodeId);
  expect(there?.snapshot).toBe(lock?.snapshot);
  const again = await brings(zip);
  expect(again.href).toMatch(/^\/episodes\/[0-9a-f-]{36}\/corrections$/);
  const second = again.href.split('/')[2] ?? '';
  expect(await readLastLock(second)).toBeNull();
  expect(await countHistoryLocks(second)).toEqual({ otherRows: 1, unlike: 0 });

  // Cut short on the way: nothing is brought in, and it says so at the form's field.
  const cut = await brings(zip.slice(0, zip.byteLength - 4000));
  expect(cut.state.problems).toMatchObject(
    [{ path: 'file', message: /no whole zip file/ }].map(({ path, message }) => ({
      path,
      message: expect.stringMatching(message) as string,
    })),
  );
});

/** The files of a zip for people, as text. */
async function texts(zip: ArrayBuffer): Promise<ReadonlyMap<string, string>> {
  const opened = await fromBufferPromise(Buffer.from(zip), { lazyEntries: true });
  const found = new Map<string, string>();
  for await (const entry of opened.eachEntry()) {
    if (!/\.(?:txt|md|html|json)$/.test(entry.fileName)) continue;
    const stream = await opened.openReadStreamPromise(entry);
    found.set(entry.fileName, await text(stream));
  }
  return found;
}

test('what is packed for people has the numbers that go out, with their correction, and the evidence once', async () => {
  await freshDatabase(join(folder, 'out.db'));
  const bean = aFood('bean', { energyKcal: '101', protein: '10.0' }, { kind: 'label' });
  const stew = aDish('s', aRecipe('r', [grams('beans', 'bean', 400)]), { title: 'Stew' });
  const done = await importEpisodeFile(aFile([stew], [bean]), new Date(AT));
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  const { episodeId } = done.value;
  const file = await readEpisodeFile(episodeId, AT);
  const line = file?.episode.segments[0]?.recipe?.lines[0];
  if (!file || !line) throw new Error('it is there');
  await send(lockNumbers, { episodeId, inputsSha256: inputsHash(file) });
  const lock = await readLastLock(episodeId);
  if (!lock) throw new Error('it is locked');
  // Locked again with another amount, and corrected; then changed once more, with nothing said of it.
  const weighs = async (mg: number) => {
    const rev = (await readRevisions(episodeId))[line.id] ?? 0;
    const patch = { plannedLowMg: mg, plannedMg: mg, plannedHighMg: mg };
    const edit = { op: 'update', entity: 'RecipeLine', id: line.id, rev, patch } as const;
    expect((await write({ ...ACT, edits: [edit] })).ok).toBe(true);
  };
  await weighs(500_000);
  const heavier = await readEpisodeFile(episodeId, AT);
  if (!heavier) throw new Error('it is there');
  await send(lockNumbers, { episodeId, inputsSha256: inputsHash(heavier) });
  const newer = await readLastLock(episodeId);
  const row = { id: 'c', oldLockId: lock.id, newLockId: newer?.id ?? '', reason: 'Weighed again' };
  const correction = {
    ...({ op: 'create', entity: 'Correction' } as const),
    row: { ...row, on: '2026-11-30' },
  };
  expect((await write({ ...ACT, edits: [correction] })).ok).toBe(true);
  await weighs(900_000);

  const files = await texts(await (await download(episodeId)).arrayBuffer());
  const description = files.get('outputs/description.txt') ?? '';
  expect(description).toContain('505 kcal (not 404)');
  expect(description).toMatch(/Stew[^]*505 kcal/);
  expect(description).not.toContain('909 kcal');
  const evidence = [...files.keys()].filter((name) => name.includes('evidence'));
  expect(evidence).toEqual(['evidence.json']);
  expect(JSON.parse(files.get('evidence.json') ?? '')).toMatchObject({
    lock: { seq: 2, sha256: newer?.sha256, holds: false },
  });
});
