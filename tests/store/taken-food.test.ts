import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readPhoto } from '#lib/foods/photo';
import { episodeScope, type ListEvent } from '#lib/shopping/list-events';
import { database } from '#lib/store/client';
import { importEpisodeFile } from '#lib/store/import-file';
import { keepListEvents } from '#lib/store/list-events';
import { photoHash } from '#lib/store/photos';
import { readFoodPhotos } from '#lib/store/photos-of-foods';
import { keepLabelPhoto, readLabelPhoto } from '#lib/store/photos-of-lists';
import { readFood } from '#lib/store/read-foods';
import { makeTakenFood } from '#lib/store/taken-food';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';

withFreshDatabase();

const folder = mkdtempSync(join(tmpdir(), 'slate-labels-'));
let episodeId = '';
let foodId = '';
beforeAll(async () => {
  process.env.SLATE_PHOTOS = join(folder, 'photos');
  const done = await importEpisodeFile(FILE, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  episodeId = done.value.episodeId;
  const food = await database().food.findFirst({ where: { deletedAt: null, packs: { some: {} } } });
  foodId = food?.id ?? '';
});
afterAll(() => {
  delete process.env.SLATE_PHOTOS;
  rmSync(folder, { recursive: true, force: true });
});

const picture = (name: string): Uint8Array => {
  const bytes = readFileSync(new URL(`../foods/photos/${name}`, import.meta.url));
  const read = readPhoto(new Uint8Array(bytes));
  if (!read.ok) throw new Error('no photo');
  return read.value.bytes;
};

type Instead = Extract<ListEvent, { kind: 'instead' }>;
let made = 0;
async function instead(payload: Partial<Instead['payload']>): Promise<string> {
  made += 1;
  const scope = episodeScope(episodeId);
  const event: Instead = {
    ...{ id: `instead-${made}`, scope, deviceId: 'phone', deviceSeq: made, foodId },
    at: AT.toISOString(),
    kind: 'instead',
    payload: {
      ...{ name: 'Oderwick kvarg', takenFoodId: null, label: null, photoSha256: null },
      packs: [{ packId: null, count: 1, mg: 300_000 }],
      ...payload,
    },
  };
  const kept = await keepListEvents(scope, [event], AT);
  expect(kept.refused).toEqual([]);
  return event.id;
}
const READING = { region: 'US', dateRead: '2026-12-11', at: AT } as const;
const make = (eventId: string) => makeTakenFood(episodeScope(episodeId), eventId, READING);

describe('what was taken instead becomes a food', () => {
  test('once, with the values that were typed and no others, and with its photo', async () => {
    const bytes = picture('noted-turned.jpg');
    const sha256 = photoHash(bytes);
    const scope = episodeScope(episodeId);
    expect((await keepLabelPhoto(scope, sha256, bytes)).ok).toBe(false);
    const label = { basis: 'serving', servingMg: 30_000, values: { protein: '4.5' } } as const;
    const id = await instead({ label, photoSha256: sha256 });
    expect((await keepLabelPhoto(scope, sha256, picture('palette.png'))).ok).toBe(false);
    expect((await keepLabelPhoto(scope, sha256, bytes)).ok).toBe(true);
    expect((await readLabelPhoto(scope, sha256))?.mime).toBe('image/jpeg');
    expect(await readLabelPhoto(episodeScope('another'), sha256)).toBeNull();

    const [first, again] = [await make(id), await make(id)];
    expect(first.ok && again.ok && first.value === again.value).toBe(true);
    const food = first.ok ? await readFood(first.value) : null;
    expect(food).toMatchObject({ name: 'Oderwick kvarg', kind: 'label' });
    expect(food?.version).toMatchObject({
      basis: 'serving',
      dateRead: '2026-12-11',
      rule: 'asPrinted',
    });
    expect(food?.version.values).toEqual({ protein: { kind: 'eq', mantissa: 45, scale: 1 } });
    const photos = await readFoodPhotos(first.ok ? first.value : '');
    expect(photos.map((photo) => photo.sha256)).toEqual([sha256]);
  });

  test('without a value it is a food that nobody has read; its name may stand twice', async () => {
    const done = await make(await instead({}));
    const food = done.ok ? await readFood(done.value) : null;
    expect(food?.version.values).toEqual({});
  });

  test('a food that is known already stays itself; no entry, and one of another list, is refused', async () => {
    expect(await make(await instead({ takenFoodId: foodId }))).toEqual({ ok: true, value: foodId });
    expect((await make('nowhere')).ok).toBe(false);
    const id = await instead({});
    expect((await makeTakenFood(episodeScope('another'), id, READING)).ok).toBe(false);
  });

  test('values that cannot be are told, and nothing is written', async () => {
    const label = { basis: 'per100g', servingMg: null, values: { protein: '140' } } as const;
    const done = await make(await instead({ label }));
    expect(done.ok ? [] : done.problems.length).toBeGreaterThan(0);
  });
});
