import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { lockStanding } from '#lib/lock/lock-standing';
import { inputsHash, takeLock } from '#lib/lock/numbers-lock';
import { historyText, type EpisodeHistory } from '#lib/publish/history';
import { importBundle, type BundleToImport } from '#lib/store/import-bundle';
import { importEpisodeFile } from '#lib/store/import-file';
import { readCorrections, readWentOut } from '#lib/store/read-corrections';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readHistory, readSnapshotText } from '#lib/store/read-history';
import { countHistoryLocks, nextLockSeq, readCopied, readLastLock } from '#lib/store/read-locks';
import { readFoodPhotos } from '#lib/store/photos-of-foods';
import { keepPhoto, photoHash, readPhotoBytes } from '#lib/store/photos';
import { write } from '#lib/store/write';
import { failed, ok } from '#lib/result';
import { readPhoto } from '#lib/foods/photo';
import { AT, dropFreshDatabase, freshDatabase } from './database';
import { upToIds } from './up-to-ids';

const parsed = parseEpisodeFile(
  readFileSync(new URL('../../seed/demo.episode.json', import.meta.url), 'utf8'),
);
if (!parsed.ok) throw new Error('the demo must be readable');
const demo = parsed.value;
const WHOLE = { edit: true, publish: true } as const;

// A PNG of one pixel, as RFC 2083 has it: signature, IHDR, IDAT, IEND.
const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==',
  'base64',
);
const cleaned = readPhoto(PIXEL);
if (!cleaned.ok) throw new Error('a pixel is a photo');
const PHOTO = cleaned.value.bytes;
const SHA = photoHash(PHOTO);

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'slate-bundles-'));
});
afterAll(async () => {
  await dropFreshDatabase();
  rmSync(folder, { recursive: true, force: true });
});

async function read(episodeId: string): Promise<EpisodeFile> {
  const file = await readEpisodeFile(episodeId, demo.savedAt, WHOLE);
  if (!file) throw new Error('the episode is there');
  return file;
}

/** A database with the demo in it: locked, copied, changed and corrected, with a photo of a label. */
async function machineA(): Promise<{ bundle: BundleToImport; episodeId: string }> {
  await freshDatabase(join(folder, 'a.db'));
  const done = await importEpisodeFile(demo, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  const { episodeId } = done.value;
  const file = await readEpisodeFile(episodeId, demo.savedAt);
  if (!file) throw new Error('it is there');
  const { inputsSha256: _, ...lock } = takeLock(file);
  const { inputsSha256: __, ...other } = takeLock({
    ...file,
    episode: { ...file.episode, energyStep: 10 },
  });
  const label = file.foods.find(({ kind }) => kind === 'label');
  if (!label) throw new Error('the demo has labels');
  await keepPhoto(PHOTO);
  const [first, second] = ['11111111', '22222222'].map(
    (part) => `${part}-0000-7000-8000-000000000000`,
  );
  const of = { episodeId, at: AT };
  const written = await write({
    ...{ actor: 'test', label: 'Lock, copy, correct', at: AT },
    edits: [
      { op: 'create', entity: 'NumbersLock', row: { ...other, ...of, id: first ?? '', seq: 1 } },
      { op: 'create', entity: 'NumbersLock', row: { ...lock, ...of, id: second ?? '', seq: 2 } },
      {
        ...{ op: 'create', entity: 'Published' },
        row: { id: 'text-1', lockId: first ?? '', text: 'As it was pasted', at: AT },
      },
      {
        ...{ op: 'create', entity: 'Correction' },
        row: {
          ...{ id: 'corr-1', oldLockId: first ?? '', newLockId: second ?? '' },
          ...{ reason: 'Rounded less', on: '2026-11-30' },
        },
      },
      {
        ...{ op: 'create', entity: 'Attachment' },
        row: {
          ...{ id: 'photo-1', versionId: label.version.id, sha256: SHA, mime: 'image/png' },
          ...{ name: 'label.png', size: PHOTO.length },
        },
      },
    ],
  });
  if (!written.ok) throw new Error(JSON.stringify(written.problems));
  const whole = await read(episodeId);
  const history = await readHistory(whole);
  const snapshots = new Map<string, string>();
  for (const { id, sha256 } of history.locks) {
    snapshots.set(sha256, (await readSnapshotText(id)) ?? '');
  }
  const none = failed({ path: '', code: 'none', message: 'not there' });
  return {
    episodeId,
    bundle: {
      file: whole,
      history,
      snapshot: (sha256) => {
        const text = snapshots.get(sha256);
        return Promise.resolve(text === undefined ? none : ok(text));
      },
      photo: (sha256) => Promise.resolve(sha256 === SHA ? ok(PHOTO) : none),
    },
  };
}

async function brought(bundle: BundleToImport) {
  const done = await importBundle(bundle, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  return done.value;
}

describe('a bundle brought in on another machine', () => {
  it('is all there, under the same ids, with locks that hold and are the same bytes', async () => {
    const { bundle, episodeId } = await machineA();
    await freshDatabase(join(folder, 'b.db'));
    const done = await brought(bundle);
    expect(done).toEqual({ episodeId, kept: true });
    const file = await read(episodeId);
    expect(upToIds(file)).toEqual(upToIds(bundle.file));
    expect(inputsHash(file)).toBe(inputsHash(bundle.file));
    const history = await readHistory(file);
    expect(historyText(history)).toBe(historyText(bundle.history));
    for (const { id, sha256 } of history.locks) {
      expect(ok(await readSnapshotText(id))).toEqual(await bundle.snapshot(sha256));
    }
    const last = await readLastLock(episodeId);
    expect(last?.seq).toBe(2);
    expect(lockStanding(last?.snapshot ?? null, file)).toBe('locked');
    expect((await readCorrections({ episodeId })).rows).toMatchObject([
      { reason: 'Rounded less', before: { seq: 1 }, after: { seq: 2 } },
    ]);
    expect(await readWentOut(file)).toMatchObject([{ seq: 2, told: true }]);
    const label = file.foods.find(({ version }) => version.id === history.photos[0]?.versionId);
    expect(await readFoodPhotos(label?.id ?? '')).toMatchObject([{ sha256: SHA, there: true }]);
    expect(Buffer.from((await readPhotoBytes(SHA)) ?? []).equals(PHOTO)).toBe(true);
  });

  it('a second time is a second episode, whose locks are history that holds nothing', async () => {
    const { bundle, episodeId } = await machineA();
    const done = await brought(bundle);
    expect(done.kept).toBe(false);
    expect(done.episodeId).not.toBe(episodeId);
    const file = await read(done.episodeId);
    expect(upToIds(file)).toEqual(upToIds(bundle.file));
    expect(await readLastLock(done.episodeId)).toBeNull();
    expect(await readWentOut(file)).toEqual([]);
    expect(await countHistoryLocks(done.episodeId)).toEqual({ otherRows: 2, unlike: 0 });
    expect(await readCopied(done.episodeId)).toMatchObject([
      { seq: 1, text: 'As it was pasted', historyOnly: true },
    ]);
    expect(await readCopied(episodeId)).toMatchObject([{ seq: 1, historyOnly: false }]);
    // The first one is as it was.
    expect(await countHistoryLocks(episodeId)).toEqual({ otherRows: 0, unlike: 0 });
  });

  it('with a lock whose figures are not those of its inputs keeps it as history, and the others as its own', async () => {
    const { bundle, episodeId } = await machineA();
    const [, last] = bundle.history.locks;
    const genuine = await bundle.snapshot(last?.sha256 ?? '');
    if (!last || !genuine.ok) throw new Error('there are two locks');
    // Another number of calories under the same inputs, and the hash that these bytes have.
    const forged = genuine.value.replace(/("energyKcal":\{[^{}]*?"value":)[\d.]+/, '$1123');
    expect(forged).not.toBe(genuine.value);
    const sha256 = createHash('sha256').update(forged).digest('hex');
    const locks = bundle.history.locks.map((lock) => (lock === last ? { ...lock, sha256 } : lock));
    await freshDatabase(join(folder, 'forged.db'));
    const done = await brought({
      ...bundle,
      history: { ...bundle.history, locks },
      snapshot: (sha) => (sha === sha256 ? Promise.resolve(ok(forged)) : bundle.snapshot(sha)),
    });
    expect(done).toEqual({ episodeId, kept: false });
    expect(await nextLockSeq(episodeId)).toBe(3);
    expect((await readLastLock(episodeId))?.seq).toBe(1);
    expect(await countHistoryLocks(episodeId)).toEqual({ otherRows: 0, unlike: 1 });
    // Sent on, it is none of the next machine's either.
    expect((await readHistory(await read(episodeId))).locks[1]).toMatchObject({ schemaVersion: 0 });
  });

  it('whose scale is here already with other steps is a second one too', async () => {
    const { bundle } = await machineA();
    await freshDatabase(join(folder, 'c.db'));
    const other = structuredClone(bundle.file);
    for (const scale of other.kitchen.scales) scale.accuracyPpm += 1;
    await brought({ ...bundle, file: { ...other, episode: { ...other.episode, title: 'Other' } } });
    const id = '33333333-0000-7000-8000-000000000000';
    const next = { ...bundle.file, episode: { ...bundle.file.episode, id } };
    expect((await brought({ ...bundle, file: next })).kept).toBe(false);
  });

  it('with a lock that is none, or a photo that is no picture, is refused, and nothing is there', async () => {
    const { bundle } = await machineA();
    await freshDatabase(join(folder, 'd.db'));
    const noLock = await importBundle({ ...bundle, snapshot: () => Promise.resolve(ok('{}')) }, AT);
    expect(noLock).toMatchObject({ ok: false, problems: [{ code: 'no-lock' }] });
    const noPhoto = { ...bundle, photo: () => Promise.resolve(ok(new Uint8Array(9))) };
    expect(await importBundle(noPhoto, AT)).toMatchObject({
      ok: false,
      problems: [{ code: 'no-photo' }],
    });
    const history: EpisodeHistory = {
      ...bundle.history,
      photos: bundle.history.photos.map((each) => ({ ...each, versionId: 'nobody' })),
    };
    expect((await importBundle({ ...bundle, history }, AT)).ok).toBe(false);
    expect(await readEpisodeFile(bundle.file.episode.id, demo.savedAt)).toBeNull();
  });
});
