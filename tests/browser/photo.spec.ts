import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';
import { expect, expectAccessible, test } from './fixtures';
import { tooWide } from './page-states';

/** A photo that the browser itself encodes: a panel in words, wider than high. */
async function drawn(page: Page, kind: 'image/jpeg' | 'image/png' | 'image/webp'): Promise<Buffer> {
  const base64 = await page.evaluate(async (type) => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [360, 240];
    const pen = canvas.getContext('2d');
    if (!pen) throw new Error('no canvas');
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, 360, 240);
    pen.fillStyle = '#000';
    pen.font = '28px sans-serif';
    ['Serving 60 g', 'Energy 230', 'Fat 8 g', 'Protein 14 g'].forEach((line, at) =>
      pen.fillText(line, 20, 50 + 50 * at),
    );
    const url = canvas.toDataURL(type, 0.9);
    return url.slice(url.indexOf(',') + 1);
  }, kind);
  return Buffer.from(base64, 'base64');
}

/** The same JPEG as a phone held upright writes it: turned, with a place and a remark (Exif 2.32, 4.6). */
function asByCamera(jpeg: Buffer): Buffer {
  const notes = Buffer.from(
    'Exif\0\0MM\0*\0\0\0\x08\0\x02\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\x88\x25\0\x04\0\0\0\x01\0\0\0\x26\0\0\0\0\0\x01\0\x01\0\x02\0\0\0\x02N\0\0\0\0\0\0\0taken at home',
    'latin1',
  );
  const head = Buffer.from([0xff, 0xe1, (notes.length + 2) >> 8, (notes.length + 2) & 0xff]);
  return Buffer.concat([jpeg.subarray(0, 2), head, notes, jpeg.subarray(2)]);
}

const fixture = (name: string) =>
  readFileSync(fileURLToPath(new URL(`../foods/photos/${name}`, import.meta.url)));

const choose = (page: Page, name: string, buffer: Buffer, mimeType = 'image/jpeg') =>
  page.getByLabel('A photo of the panel').setInputFiles({ name, mimeType, buffer });
const attach = (page: Page) => page.getByRole('button', { name: 'Attach the photo' }).click();
const photo = (page: Page) => page.getByRole('img', { name: /^Photo of the panel of/ });

/** The size at which the browser shows a picture, turned upright. */
const shownSize = (page: Page, at = 0) =>
  photo(page)
    .nth(at)
    .evaluate(async (img: HTMLImageElement) => {
      await img.decode();
      return [img.naturalWidth, img.naturalHeight];
    });

/** The size at which it shows a file that nobody touched. */
const sizeOf = (page: Page, bytes: Buffer, type: string) =>
  page.evaluate(
    async (url) => {
      const img = new Image();
      img.src = url;
      await img.decode();
      return [img.naturalWidth, img.naturalHeight];
    },
    `data:${type};base64,${bytes.toString('base64')}`,
  );

async function newFood(page: Page, name: string): Promise<string> {
  await page.goto('/pantry/foods/new?rule=us');
  const texts = {
    name,
    servingG: '60',
    'value-energyKcal': '230',
    'value-fat': '8',
    'value-carbohydrate': '27',
  };
  for (const [field, text] of Object.entries({ ...texts, 'value-protein': '14' })) {
    await page.locator(`[name="${field}"]`).fill(text);
  }
  await page.getByRole('button', { name: 'Add the food' }).click();
  await expect(page.getByRole('heading', { level: 1, name })).toBeVisible();
  return new URL(page.url()).pathname;
}

test.use({ alone: true });

test('a photo from a phone stands upright beside the values, without its place; it is taken out and put back', async ({
  page,
  pageErrors,
}) => {
  await page.setViewportSize({ width: 1440, height: 900 });
  const path = await newFood(page, 'Rowan seed bar');
  const jpeg = asByCamera(await drawn(page, 'image/jpeg'));
  await choose(page, 'IMG_7.JPG', jpeg);
  await attach(page);
  await expect(photo(page)).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Photo of the panel' })).toBeFocused();
  expect(await shownSize(page)).toEqual([240, 360]);
  await expect(page.getByRole('figure')).toContainText(
    /reading 1, read [-\d]+ · IMG_7\.jpg, \d+ kB/,
  );

  // Beside the values, at their height.
  const [values, picture] = await Promise.all([
    page.getByRole('table').first().boundingBox(),
    photo(page).boundingBox(),
  ]);
  if (!values || !picture) throw new Error('nothing to compare');
  expect(picture.x).toBeGreaterThanOrEqual(values.x + values.width);
  expect(picture.y).toBeLessThan(values.y + values.height);

  const address = (await photo(page).getAttribute('src')) ?? '';
  const served = await page.request.get(address);
  expect(served.headers()).toMatchObject({
    'content-type': 'image/jpeg',
    'x-content-type-options': 'nosniff',
    'content-security-policy': "sandbox; default-src 'none'; style-src 'unsafe-inline'",
  });
  expect(jpeg.includes('taken at home')).toBe(true);
  expect((await served.body()).includes('taken at home')).toBe(false);
  await expectAccessible(page);

  await photo(page).click();
  await expect(page).toHaveURL(new RegExp(`${address}$`));
  const whole = await page.locator('img').evaluate((img: HTMLImageElement) => img.naturalWidth);
  expect(whole).toBe(240);
  await page.goBack();

  await page.getByRole('button', { name: /^Take out the photo IMG_7\.jpg/ }).click();
  await expect(page.getByText(/IMG_7\.jpg was taken out of reading 1/)).toBeVisible();
  await expect(photo(page)).toBeHidden();
  await expectAccessible(page);
  expect((await page.request.get(address)).status()).toBe(404);
  await page.getByRole('button', { name: 'Put it back' }).click();
  await expect(photo(page)).toBeVisible();
  await expect(page).toHaveURL(new RegExp(`${path}#photos$`));

  await page.goto('/changes');
  await expect(
    page.getByText('Rowan seed bar: photo of the panel brought back: IMG_7.jpg'),
  ).toBeVisible();
  await page.getByRole('button', { name: /^Undo/ }).first().click();
  // Who leaves before it is done calls it off.
  await expect(page.getByRole('listitem').first()).not.toContainText('brought back');
  await page.goto(path);
  await expect(photo(page)).toBeHidden();
  // The photo that was out, and the test's own script in the page of the whole photo, where none may run.
  expect(pageErrors.filter((error) => !/404|sandboxed/.test(error))).toEqual([]);
});

test('every kind is shown the way up that it says; a second photo and a second reading have their own', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  const path = await newFood(page, 'Sorrel bar');
  const kinds: [string, string][] = [
    ['noted-turned.jpg', 'image/jpeg'],
    ['noted-turned.png', 'image/png'],
    ['noted-turned.webp', 'image/webp'],
  ];
  for (const [at, [name, type]] of kinds.entries()) {
    await choose(page, name, fixture(name), type);
    await attach(page);
    await expect(photo(page)).toHaveCount(at + 1);
    // As this browser shows what the camera wrote; it may not turn every kind.
    expect(await shownSize(page, at)).toEqual(await sizeOf(page, fixture(name), type));
  }
  for (const width of [390, 320]) {
    await page.setViewportSize({ width, height: 844 });
    expect(await tooWide(page)).toBe(0);
  }
  await page.emulateMedia({ colorScheme: 'dark' });
  await expectAccessible(page);
  await page.emulateMedia({ colorScheme: 'light', media: 'print' });
  await expect(photo(page).first()).toBeVisible();
  await expect(page.getByLabel('A photo of the panel')).toBeHidden();
  await page.emulateMedia({ media: null });

  await page.goto(`${path}/again`);
  await page.getByRole('button', { name: 'Same label as last time' }).click();
  await expect(page.getByText(/No photo yet of reading 2/)).toBeVisible();
  await page.getByText(/^Photos of reading 1/).click();
  await expect(photo(page)).toHaveCount(3);
  await choose(page, 'new.png', await drawn(page, 'image/png'), 'image/png');
  await attach(page);
  await expect(page.getByRole('img', { name: /reading 2/ })).toBeVisible();
  await expectAccessible(page);
});

test('what is no photo is refused and says why, and what was typed elsewhere stays', async ({
  page,
}) => {
  await newFood(page, 'Crowberry bar');
  await page.getByText('Keep account in grams').click();
  const elsewhere = page.locator('#new-lot [name="place"]');
  await elsewhere.fill('jar by the window');
  const refused = async (name: string, bytes: Buffer, words: RegExp) => {
    await choose(page, name, bytes);
    await attach(page);
    await expect(page.locator('#attach-photo [role=alert]').first()).toContainText(words);
    await expect(elsewhere).toHaveValue('jar by the window');
    await expect(photo(page)).toBeHidden();
  };
  await refused('panel.jpg', Buffer.from('<html><script>alert(1)</script>'), /a web page/);
  await refused('IMG_8.HEIC', Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic'), /HEIC.*JPEG/);
  const jpeg = await drawn(page, 'image/jpeg');
  await refused('half.jpg', jpeg.subarray(0, jpeg.length / 2), /cut short/);
  await refused('both.jpg', Buffer.concat([jpeg, Buffer.from('<script>')]), /hidden behind/);
  await expectAccessible(page);
  // What is too large is told before it is sent.
  await choose(page, 'large.jpg', Buffer.alloc(8_000_001));
  await expect(page.getByText(/This file has 8\.1 MB; a photo may have 8 MB/)).toBeVisible();
  await expect(page.getByLabel('A photo of the panel')).toHaveValue('');
});

test.describe('without script', () => {
  test.use({ javaScriptEnabled: false });

  test('a photo is attached, one too large is told, and it is taken out and put back', async ({
    page,
  }) => {
    await newFood(page, 'Barley bar');
    await choose(page, 'a.jpg', Buffer.alloc(8_000_001));
    await attach(page);
    await expect(page.locator('#attach-photo')).toContainText(/This file has 8\.1 MB/);
    await choose(page, 'a.jpg', fixture('progressive.jpg'));
    await attach(page);
    await expect(photo(page)).toBeVisible();
    await page.getByRole('button', { name: /^Take out the photo/ }).click();
    await expect(photo(page)).toBeHidden();
    await page.getByRole('button', { name: 'Put it back' }).click();
    await expect(photo(page)).toBeVisible();
  });
});
