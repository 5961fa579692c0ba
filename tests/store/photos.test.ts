import { createHash } from 'node:crypto';
import {
  chmodSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { v7 as uuid } from 'uuid';
import { PROJECT_ROOT } from '#db/provider';
import { readPhoto as recognise, type Photo } from '#lib/foods/photo';
import { actWords } from '#lib/overview/change-words';
import type { Result } from '#lib/result';
import type { Edit, Written } from '#lib/store/command';
import { foodRows, versionRow } from '#lib/store/food-rows';
import { isPhotoThere, keepPhoto, photosFolder, readPhotoBytes } from '#lib/store/photos';
import {
  photoEdit,
  readFoodPhotos,
  readPhoto,
  readPhotoTakenOut,
} from '#lib/store/photos-of-foods';
import { readAllChanges } from '#lib/store/read-all-changes';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { aFood } from '../support/build';
import { AT, withFreshDatabase } from './database';

withFreshDatabase();

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'slate-photos-'));
  process.env.SLATE_PHOTOS = join(folder, 'photos');
});
afterAll(() => {
  delete process.env.SLATE_PHOTOS;
  rmSync(folder, { recursive: true, force: true });
});

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
const codes = (result: Result<unknown>) =>
  result.ok ? [] : result.problems.map(({ code }) => code);

const made = (name: string): Photo =>
  value(
    recognise(new Uint8Array(readFileSync(new URL(`../foods/photos/${name}`, import.meta.url)))),
  );
const JPEG = made('noted-turned.jpg');
const PNG = made('palette.png');

const act = async (label: string, edits: readonly Edit[], creatorId?: string): Promise<Written> =>
  value(await write({ actor: 'me', label, at: AT, edits, ...(creatorId ? { creatorId } : {}) }));

/** An own food with one reading of its label. */
async function labelFood(name: string) {
  const food = aFood(name, { protein: '11' }, { kind: 'label' });
  const [id, versionId] = [uuid(), uuid()];
  const rows = foodRows({ ...food, id, version: { ...food.version, id: versionId } }, AT);
  await act(`Add ${name}`, [
    { op: 'create', entity: 'Food', row: rows.Food },
    { op: 'create', entity: 'FoodVersion', row: rows.FoodVersion },
  ]);
  return { id, versionId, version: food.version };
}

async function attach(versionId: string, photo: Photo, name = 'panel.heic') {
  const edit = value(await photoEdit(versionId, photo, name));
  if (edit?.op !== 'create') throw new Error('no create');
  return { edit, ...(await act(`Attach ${name}`, [edit])) };
}

describe('where photos stand', () => {
  it.each([
    [{}, join(PROJECT_ROOT, '.data', 'photos')],
    [{ SLATE_DATABASE: '/srv/kitchen.db' }, '/srv/photos'],
    [{ SLATE_DATABASE: 'postgresql://ann@db/slate' }, join(PROJECT_ROOT, '.data', 'photos')],
    [{ SLATE_DATABASE: '/srv/kitchen.db', SLATE_PHOTOS: '/mnt/p' }, '/mnt/p'],
    [{ SLATE_PHOTOS: 'p' }, join(PROJECT_ROOT, 'p')],
  ])('%o: %s', (env, path) => {
    expect(photosFolder(env)).toBe(path);
  });
});

describe('the bytes of a photo', () => {
  it('stand under their hash, for their owner alone, and leave nothing else behind', async () => {
    const sha256 = value(await keepPhoto(JPEG.bytes));
    expect(sha256).toBe(createHash('sha256').update(JPEG.bytes).digest('hex'));
    expect(await keepPhoto(JPEG.bytes)).toEqual({ ok: true, value: sha256 });
    const beside = join(folder, 'photos', sha256.slice(0, 2));
    expect(readdirSync(beside)).toEqual([sha256]);
    if (process.platform !== 'win32') {
      expect(statSync(join(beside, sha256)).mode & 0o777).toBe(0o600);
      expect(statSync(beside).mode & 0o777).toBe(0o700);
    }
    expect(await readPhotoBytes(sha256)).toEqual(JPEG.bytes);
  });

  it('kept by several at once are whole, once', async () => {
    const kept = await Promise.all(Array.from({ length: 8 }, () => keepPhoto(PNG.bytes)));
    const [sha256 = ''] = kept.map(value);
    expect(new Set(kept.map(value)).size).toBe(1);
    expect(readdirSync(join(folder, 'photos', sha256.slice(0, 2)))).toEqual([sha256]);
    expect(await readPhotoBytes(sha256)).toEqual(PNG.bytes);
  });

  it('that were damaged are not given out, and kept again they are whole again', async () => {
    const sha256 = value(await keepPhoto(JPEG.bytes));
    const file = join(folder, 'photos', sha256.slice(0, 2), sha256);
    const wrong = JPEG.bytes.slice();
    wrong[200] = (wrong[200] ?? 0) ^ 1;
    writeFileSync(file, wrong);
    expect(await readPhotoBytes(sha256)).toBeNull();
    value(await keepPhoto(JPEG.bytes));
    expect(await readPhotoBytes(sha256)).toEqual(JPEG.bytes);
    rmSync(file);
    expect(await readPhotoBytes(sha256)).toBeNull();
    expect(await isPhotoThere(sha256, JPEG.bytes.length)).toBe(false);
  });

  it('that cannot be written are told with the folder, and nothing is changed', async () => {
    const food = await labelFood('Harbour oats');
    const stands = join(folder, 'a-file');
    writeFileSync(stands, '');
    process.env.SLATE_PHOTOS = stands;
    try {
      const refused = await photoEdit(food.versionId, JPEG, 'a.jpg');
      expect(codes(refused)).toEqual(['not-written']);
      expect(refused.ok ? '' : refused.problems[0]?.message).toContain(stands);
    } finally {
      process.env.SLATE_PHOTOS = join(folder, 'photos');
    }
    expect(await readFoodPhotos(food.id)).toEqual([]);
  });

  it.skipIf(process.platform === 'win32' || process.getuid?.() === 0)(
    'in a folder that may not be written are told as well',
    async () => {
      const closed = mkdtempSync(join(folder, 'closed-'));
      chmodSync(closed, 0o500);
      process.env.SLATE_PHOTOS = closed;
      try {
        expect(codes(await keepPhoto(PNG.bytes))).toEqual(['not-written']);
      } finally {
        process.env.SLATE_PHOTOS = join(folder, 'photos');
      }
    },
  );

  it.each(['', '..', '../slate.db', 'a'.repeat(63), 'A'.repeat(64), `${'a'.repeat(62)}/.`])(
    'are never looked for under %j',
    async (name) => {
      await expect(readPhotoBytes(name)).rejects.toThrow('is no hash of a photo');
      expect(await isPhotoThere(name, 1)).toBe(false);
    },
  );
});

describe('a photo of a reading', () => {
  it('is attached, taken out, put back and undone, and each is told in words', async () => {
    const food = await labelFood('Quayside skyr');
    const { groupId, edit } = await attach(food.versionId, JPEG, 'IMG_7.heic');
    const { id } = edit.row;
    const [photo] = await readFoodPhotos(food.id);
    expect(photo).toMatchObject({ id, rev: 1, versionId: food.versionId, name: 'IMG_7.jpg' });
    expect(photo).toMatchObject({ size: JPEG.bytes.length, there: true });

    await act('Take out', [{ op: 'remove', entity: 'Attachment', id, rev: 1 }]);
    expect(await readFoodPhotos(food.id)).toEqual([]);
    expect(await readPhoto(food.id, photo?.sha256 ?? '')).toBeNull();
    expect(await readPhotoTakenOut(food.id, id)).toMatchObject({ id, there: true });
    await act('Put back', [{ op: 'bringBack', entity: 'Attachment', id }]);
    expect(await readFoodPhotos(food.id)).toHaveLength(1);
    expect(await readPhotoTakenOut(food.id, id)).toBeNull();

    const { acts, names } = await readAllChanges({ take: 3 });
    const told = acts.map(({ lines }) => actWords(lines, { names, region: 'EU', zone: 'UTC' }));
    expect(told).toEqual([
      ['Quayside skyr: photo of the panel brought back: IMG_7.jpg'],
      ['Quayside skyr: photo of the panel taken out: IMG_7.jpg'],
      ['Quayside skyr: photo of the panel added: IMG_7.jpg'],
    ]);
    value(await undo(groupId, { actor: 'me', at: AT }));
    expect(await readFoodPhotos(food.id)).toEqual([]);
    // The file stays: undoing the undoing needs it.
    expect(await isPhotoThere(photo?.sha256 ?? '', photo?.size ?? 0)).toBe(true);
  });

  it('is never changed, stands once, and there are only so many', async () => {
    const food = await labelFood('Harbour flakes');
    const { edit } = await attach(food.versionId, PNG);
    const patch = { name: 'another.png' };
    const update = { op: 'update', entity: 'Attachment', id: edit.row.id, rev: 1, patch } as const;
    const changed = await write({ actor: 'me', label: 'Rename', at: AT, edits: [update] });
    expect(codes(changed)).toEqual(['append-only']);
    expect(codes(await photoEdit(food.versionId, PNG, 'b.png'))).toEqual(['there-already']);
    for (let count = 1; count < 12; count++) {
      const bytes = Uint8Array.from([...PNG.bytes, count]);
      await attach(food.versionId, { ...PNG, bytes });
    }
    expect(codes(await photoEdit(food.versionId, JPEG, 'c.jpg'))).toEqual(['too-many']);
  });

  it('is read only of its own food and by its own creator', async () => {
    const [one, other] = [await labelFood('Rye crisps'), await labelFood('Oat crisps')];
    await attach(one.versionId, JPEG);
    const sha256 = (await readFoodPhotos(one.id))[0]?.sha256 ?? '';
    expect(await readPhoto(one.id, sha256)).toMatchObject({
      mime: 'image/jpeg',
      name: 'panel.jpg',
    });
    expect(await readPhoto(other.id, sha256)).toBeNull();
    expect(await readPhoto(one.id, sha256, 'somebody')).toBeNull();
    expect(await readFoodPhotos(one.id, 'somebody')).toEqual([]);
    // What stands in the folder and in no row is nobody's.
    const loose = value(await keepPhoto(Uint8Array.of(1, 2, 3)));
    expect(await readPhoto(one.id, loose)).toBeNull();
    for (const name of ['', '..', '../slate.db', "' OR 1=1 --"]) {
      expect(await readPhoto(one.id, name)).toBeNull();
    }
  });

  it('goes with its reading or food, and a missing file is seen', async () => {
    const food = await labelFood('Lingon jam');
    const versionId = uuid();
    const again = { ...food.version, id: versionId, seq: 2 };
    const { groupId } = await act('Read again', [
      { op: 'create', entity: 'FoodVersion', row: versionRow(food.id, again) },
    ]);
    const { edit } = await attach(versionId, JPEG);
    const refused = await undo(groupId, { actor: 'me', at: AT });
    expect(refused.ok ? '' : refused.problems[0]?.message).toContain('Undo first: “Attach');

    const [photo] = await readFoodPhotos(food.id);
    rmSync(join(folder, 'photos', photo?.sha256.slice(0, 2) ?? '', photo?.sha256 ?? ''));
    expect(await readFoodPhotos(food.id)).toMatchObject([{ there: false }]);
    expect(await readPhoto(food.id, photo?.sha256 ?? '')).toMatchObject({ bytes: null });
    // The same photo once more brings its file back, and no second row.
    expect(value(await photoEdit(versionId, JPEG, 'again.jpg'))).toBeNull();
    expect(await readFoodPhotos(food.id)).toMatchObject([{ id: photo?.id, there: true }]);

    await act('Take out', [{ op: 'remove', entity: 'Attachment', id: edit.row.id, rev: 1 }]);
    value(await undo(groupId, { actor: 'me', at: AT }));
    const back = { op: 'bringBack', entity: 'Attachment', id: edit.row.id } as const;
    const hanging = await write({ actor: 'me', label: 'Put back', at: AT, edits: [back] });
    expect(hanging.ok ? '' : hanging.problems[0]?.message).toContain('the reading of the label');
    expect(await readPhotoTakenOut(food.id, edit.row.id)).toBeNull();
  });

  it('holds only what the columns say', async () => {
    const food = await labelFood('Sorrel soup');
    const row = { id: uuid(), sha256: 'a'.repeat(64), mime: 'image/png', name: 'a.png', size: 9 };
    const wrong: [string, object][] = [
      ['sha256', { sha256: '../../../etc/passwd' }],
      ['mime', { mime: 'text/html' }],
      ['size', { size: 8_000_001 }],
      ['name', { name: '' }],
    ];
    for (const [column, over] of wrong) {
      const edit = {
        op: 'create',
        entity: 'Attachment',
        row: { ...row, versionId: food.versionId, ...over },
      };
      const refused = await write({ actor: 'me', label: 'x', at: AT, edits: [edit as Edit] });
      const paths = refused.ok ? [] : refused.problems.map(({ path }) => path);
      expect(paths).toEqual([`edits[0].row.${column}`]);
    }
    expect(existsSync(join(folder, 'photos', 'aa'))).toBe(false);
  });
});
