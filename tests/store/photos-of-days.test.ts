import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readPhoto } from '#lib/foods/photo';
import { dayEventSchema } from '#lib/shoot/day-event-schema';
import { keepDayEvents } from '#lib/store/day-events';
import { importEpisodeFile } from '#lib/store/import-file';
import { photoHash } from '#lib/store/photos';
import { keepDisplayPhoto, readDisplayPhoto } from '#lib/store/photos-of-days';
import { readEpisodeFile } from '#lib/store/read-episode';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';

withFreshDatabase();

const folder = mkdtempSync(join(tmpdir(), 'slate-displays-'));
beforeAll(() => {
  process.env.SLATE_PHOTOS = join(folder, 'photos');
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

test('bytes are kept once an entry names them, and only those; they can be had of that day alone', async () => {
  const done = await importEpisodeFile(FILE, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  const file = await readEpisodeFile(done.value.episodeId, AT.toISOString());
  const dayId = file?.day?.id ?? '';
  const [bytes, other] = [picture('noted-turned.jpg'), picture('palette.png')];
  const sha256 = photoHash(bytes);
  const keep = async (sent: Uint8Array, of = sha256) => {
    const kept = await keepDisplayPhoto(dayId, of, sent);
    return kept.ok ? 'kept' : kept.problems[0]?.code;
  };
  expect(await keep(bytes)).toBe('not-named');
  expect(await readDisplayPhoto(dayId, sha256)).toBeNull();

  const event = dayEventSchema.parse({
    id: 'display-1',
    deviceId: 'phone',
    deviceSeq: 1,
    at: AT.toISOString(),
    kind: 'display',
    refs: {},
    payload: {
      recipeId: 'r',
      lineId: 'l',
      of: 'raw',
      way: 'direct',
      scaleId: 's',
      containerMg: 0,
      beforeId: null,
      sha256,
    },
  });
  expect(await keepDayEvents(dayId, [event], AT)).toMatchObject({ kept: ['display-1'] });
  expect(await readDisplayPhoto(dayId, sha256)).toBeNull();
  expect(await keep(other)).toBe('another');
  expect(await keep(bytes.subarray(0, bytes.length - 9))).not.toBe('kept');
  expect(await keep(other, photoHash(other))).toBe('not-named');
  expect([await keep(bytes), await keep(bytes)]).toEqual(['kept', 'kept']);
  expect(await readDisplayPhoto(dayId, sha256)).toMatchObject({
    bytes: new Uint8Array(bytes),
    mime: 'image/jpeg',
  });
  expect(await readDisplayPhoto('another-day', sha256)).toBeNull();
});
