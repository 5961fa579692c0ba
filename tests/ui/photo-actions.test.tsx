import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { renderToStaticMarkup } from 'react-dom/server';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type { FoodVersion } from '#lib/foods/food';
import { readFoodPhotos, readPhotoTakenOut, type FoodPhoto } from '#lib/store/photos-of-foods';
import { readFoodVersions, readStoredFood } from '#lib/store/read-foods';
import { readFoodsInUse } from '#lib/store/read-foods-in-use';
import { UNTOUCHED, type FormState } from '../../app/_ui/form/form-state';
import type { FormAction } from '../../app/_forms/parse-then-act';
import { addFood, keepSameLabel, readLabelAgain, takeBackReading } from '../../app/pantry/actions';
import { GET } from '../../app/pantry/foods/[foodId]/photo/[sha256]/route';
import { PhotoPart } from '../../app/pantry/foods/[foodId]/photo/_components/photo-part';
import {
  attachPhoto,
  putBackPhoto,
  takeOutPhoto,
} from '../../app/pantry/foods/[foodId]/photo/actions';
import { withFreshDatabase } from '../store/database';
import { Redirected, send, words } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  usePathname: () => '/',
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));

withFreshDatabase();

const bytesOf = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../foods/photos/${name}`, import.meta.url)));
const JPEG = bytesOf('noted-turned.jpg');
const file = (bytes: Uint8Array, name: string, type = 'image/jpeg') =>
  new File([new Uint8Array(bytes)], name, { type });

const LABEL = {
  ...{ section: 'other', rule: 'us', basis: 'serving', servingG: '60' },
  ...{ carbBasis: 'total', state: 'asIs', 'value-fat': '8' },
};

let folder = '';
let foodId = '';
let versionId = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'slate-photos-'));
  process.env.SLATE_PHOTOS = folder;
  const added = await send(addFood, { ...LABEL, name: 'Rowan seed bar' });
  foodId = added.href.replace('/pantry/foods/', '');
  versionId = (await readStoredFood(foodId))?.food.version.id ?? '';
  expect(versionId).not.toBe('');
});
afterAll(() => {
  delete process.env.SLATE_PHOTOS;
  rmSync(folder, { recursive: true, force: true });
});

/** Sends the form with files, as a browser does: a field without one sends an empty file. */
async function attach(
  files: { readonly photo?: File; readonly taken?: File },
  over: Readonly<Record<string, string>> = {},
): Promise<{ readonly state: FormState; readonly href: string }> {
  return sendFiles(attachPhoto, files, { foodId, versionId, ...over });
}

const sendWith = (action: FormAction, photo: File, texts: Readonly<Record<string, string>>) =>
  sendFiles(action, { photo }, texts);

async function sendFiles(
  action: FormAction,
  files: { readonly photo?: File; readonly taken?: File },
  texts: Readonly<Record<string, string>>,
): Promise<{ readonly state: FormState; readonly href: string }> {
  const form = new FormData();
  for (const [name, text] of Object.entries(texts)) form.set(name, text);
  for (const name of ['photo', 'taken'] as const) {
    form.set(name, files[name] ?? new File([], '', { type: 'application/octet-stream' }));
  }
  try {
    return { state: await action(UNTOUCHED, form), href: '' };
  } catch (error) {
    if (error instanceof Redirected) return { state: UNTOUCHED, href: error.href };
    throw error;
  }
}

const get = (food: string, sha256: string) =>
  GET(new Request('http://127.0.0.1/'), { params: Promise.resolve({ foodId: food, sha256 }) });

describe('attaching', () => {
  test('leads back to the photos; the photo is served as what it is and may do nothing', async () => {
    // Neither its name nor its declared type is believed.
    const { href } = await attach({ photo: file(JPEG, '../Müsli.html', 'text/html') });
    expect(href).toBe(`/pantry/foods/${foodId}#photos`);
    const [photo] = await readFoodPhotos(foodId);
    expect(photo).toMatchObject({ versionId, name: 'Müsli.jpg', there: true });
    const served = await get(foodId, photo?.sha256 ?? '');
    expect(served.status).toBe(200);
    expect(Object.fromEntries(served.headers)).toEqual({
      'content-type': 'image/jpeg',
      'content-disposition': `inline; filename="M_sli.jpg"; filename*=UTF-8''M%C3%BCsli.jpg`,
      'cache-control': 'private, max-age=31536000, immutable',
      'x-content-type-options': 'nosniff',
      'content-security-policy': "sandbox; default-src 'none'; style-src 'unsafe-inline'",
      'cross-origin-resource-policy': 'same-origin',
    });
    const bytes = Buffer.from(await served.arrayBuffer());
    expect(bytes).toHaveLength(photo?.size ?? 0);
    expect(bytes.subarray(0, 3)).toEqual(Buffer.from([0xff, 0xd8, 0xff]));
    expect(bytes.includes('taken at home')).toBe(false);
    expect((await attach({ taken: file(JPEG, 'a.jpg') })).state.problems).toMatchObject([
      { path: 'taken', code: 'there-already' },
    ]);
  });

  test.each([
    ['nothing', {}, 'photo', 'Choose a photo.'],
    ['two at once', { photo: file(JPEG, 'a'), taken: file(JPEG, 'b') }, 'photo', 'one of the two'],
    ['a page', { photo: file(Buffer.from('<html>'), 'a.jpg') }, 'photo', 'a web page'],
    ['half a photo', { taken: file(JPEG.subarray(0, 900), 'a.jpg') }, 'taken', 'cut short'],
    ['too much', { photo: file(new Uint8Array(8_000_001), 'a.jpg') }, 'photo', '8.1 MB'],
  ])('of %s is refused beside its field, and says why', async (_what, files, path, said) => {
    const before = await readFoodPhotos(foodId);
    const { state } = await attach(files);
    expect(state.problems.map((problem) => problem.path)).toEqual([path]);
    expect(state.problems[0]?.message).toContain(said);
    // What else stood in the form stands there still.
    expect(state.typed).toEqual({ foodId, versionId });
    expect(await readFoodPhotos(foodId)).toEqual(before);
  });

  test.each([
    ['another food', { foodId: 'no-such-food' }],
    ['a reading of none', { versionId: 'no-such-reading' }],
  ])('to %s is refused', async (_what, over) => {
    const { state } = await attach({ photo: file(bytesOf('palette.png'), 'a.png') }, over);
    expect(state.problems).toMatchObject([{ code: 'gone' }]);
  });

  test.each([
    ['no such photo', '0'.repeat(64)],
    ['a way out of the folder', '../../slate.db'],
    ['the same, encoded', '..%2f..%2fslate.db'],
  ])('%s is not found', async (_what, sha256) => {
    const answer = await get(foodId, sha256);
    expect(answer.status).toBe(404);
    expect(answer.headers.get('content-type')).toBe('text/plain; charset=utf-8');
    expect(await answer.text()).toBe('This food has no such photo.\n');
  });
});

describe('with the label itself', () => {
  test('a photo comes with the reading that it was typed from, in one act', async () => {
    const photo = file(bytesOf('lossy.webp'), 'panel.webp');
    const added = await sendWith(addFood, photo, { ...LABEL, name: 'Sorrel bar' });
    const id = added.href.replace('/pantry/foods/', '');
    const [first] = await readFoodVersions(id);
    expect(await readFoodPhotos(id)).toMatchObject([{ versionId: first?.id, name: 'panel.webp' }]);

    const again = await sendWith(readLabelAgain, photo, { ...LABEL, foodId: id, 'value-fat': '9' });
    expect(again.href).toBe(`/pantry/foods/${id}`);
    const versions = await readFoodVersions(id);
    expect(versions).toHaveLength(2);
    // The reading goes back with its photo.
    const [second] = versions;
    await send(takeBackReading, { foodId: id, versionId: second?.id ?? '' });
    expect(await readFoodVersions(id)).toHaveLength(1);
    expect(await readFoodPhotos(id)).toMatchObject([{ versionId: first?.id }]);
  });

  test('a photo that is none is refused at its field, nothing is added, and all typed stays', async () => {
    const sent = { ...LABEL, name: 'Crowberry bar' };
    const { state } = await sendWith(addFood, file(Buffer.from('<html>'), 'a.jpg'), sent);
    expect(state.problems).toMatchObject([{ path: 'photo', code: 'kind' }]);
    expect(state.typed).toEqual(sent);
    expect((await readFoodsInUse({ words: 'Crowberry' })).rows).toEqual([]);
  });
});

/** The part of the page as it stands. */
async function part(over: { readonly out?: FoodPhoto | null } = {}): Promise<string> {
  const versions: readonly FoodVersion[] = await readFoodVersions(foodId);
  const photos = await readFoodPhotos(foodId);
  return renderToStaticMarkup(
    <PhotoPart
      foodId={foodId}
      foodName="Rowan seed bar"
      versions={versions}
      photos={photos}
      out={over.out ?? null}
    />,
  );
}

describe('on the page', () => {
  test('a photo is shown with its reading and date, leads to the whole, and says what it is', async () => {
    const [photo] = await readFoodPhotos(foodId);
    const [version] = await readFoodVersions(foodId);
    const markup = await part();
    const address = `/pantry/foods/${foodId}/photo/${photo?.sha256}`;
    expect(markup).toContain(`href="${address}"`);
    expect(markup).toContain(`src="${address}"`);
    const reading = `reading 1, read ${version?.dateRead}`;
    expect(markup).toContain(`alt="Photo of the panel of Rowan seed bar, ${reading}"`);
    expect(words(markup)).toContain(`${reading} · Müsli.jpg, 2 kB`);
    expect(markup).toContain('capture="environment"');
    expect(markup).toContain('accept="image/jpeg,image/png,image/webp"');
  });

  test('a later reading has none yet, and the earlier one keeps its own', async () => {
    await send(keepSameLabel, { foodId });
    const text = words(await part());
    expect(text).toMatch(/No photo yet of reading 2, read [-\d]+ ?\./);
    expect(text).toMatch(/Photos of reading 1, read/);
    const [, first] = await readFoodVersions(foodId);
    // The older reading can be chosen still.
    expect(await part()).toContain(`<option value="${first?.id}">reading 1`);
    const { href } = await attach(
      { photo: file(bytesOf('palette.png'), 'side.png') },
      { versionId: first?.id ?? '' },
    );
    expect(href).toContain('#photos');
    expect((await readFoodPhotos(foodId)).map((each) => each.versionId)).toEqual([
      first?.id,
      first?.id,
    ]);
  });

  test('what is taken out is offered back, and comes back', async () => {
    const [photo] = await readFoodPhotos(foodId);
    const { id = '', rev = 0, sha256 = '' } = photo ?? {};
    const out = await send(takeOutPhoto, { foodId, photoId: id, rev });
    expect(out.href).toBe(`/pantry/foods/${foodId}?out=${id}#photos`);
    expect((await get(foodId, sha256)).status).toBe(404);
    const text = words(await part({ out: await readPhotoTakenOut(foodId, id) }));
    expect(text).toMatch(/Müsli\.jpg was taken out of reading 1, read [-\d]+ ?\. Put it back/);
    // Twice, or at a revision that has passed, is refused in words.
    const twice = await send(takeOutPhoto, { foodId, photoId: id, rev });
    expect(twice.state.problems).toMatchObject([{ code: 'gone' }]);
    expect((await send(putBackPhoto, { foodId, photoId: id })).href).toContain('#photos');
    expect((await get(foodId, sha256)).status).toBe(200);
  });

  test('a file that is missing is said in its place, and its address says so', async () => {
    const [photo] = await readFoodPhotos(foodId);
    const { sha256 = '' } = photo ?? {};
    rmSync(join(folder, sha256.slice(0, 2), sha256));
    const markup = await part();
    expect(words(markup)).toContain('The file of this photo is missing from the folder of photos');
    expect(markup).not.toContain(`src="/pantry/foods/${foodId}/photo/${sha256}"`);
    const answer = await get(foodId, sha256);
    expect(answer.status).toBe(404);
    expect(await answer.text()).toContain('missing or damaged');
    // Attaching it again brings the file back.
    const again = await attach({ photo: file(JPEG, 'again.jpg') });
    expect(again.href).toContain('#photos');
    expect((await get(foodId, sha256)).status).toBe(200);
  });
});
