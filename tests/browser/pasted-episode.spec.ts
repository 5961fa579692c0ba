import { expect, expectAccessible, test } from './fixtures';

test.use({ empty: true });
// Each begins with a server and a database of its own.
test.slow();

const CAPTIONS = `WEBVTT

00:00:01.000 --> 00:00:05.000
two dishes today and one oven

00:00:31.000 --> 00:00:36.000
first up the turkey tray, five hundred grams of ground turkey

00:00:40.000 --> 00:00:45.000
and a big spoon of pesto on top

00:01:10.000 --> 00:01:15.000
so the whole tray is 1,900 calories

00:02:04.000 --> 00:02:09.000
next up the oat bowl with 80 grams of rolled oats

00:02:30.000 --> 00:02:34.000
that bowl is just over 10 grams of protein
`;

const DESCRIPTION = `Two dinners that weigh what they say.

0:00 Intro
0:30 Turkey tray
2:00 Oat bowl

TURKEY TRAY (serves 4)
500 g ground turkey, raw
2 large eggs
1 tbsp olive oil

OAT BOWL
80 g rolled oats
200 g whole milk

Write to me if you cook it.`;

test('the captions and the description of an episode that is out show what was said, from an empty database', async ({
  page,
  pageErrors,
}) => {
  await page.goto('/');
  const form = page.locator('#already-out');
  await expect(page.getByRole('heading', { name: 'An episode that is already out' })).toBeVisible();
  await form.getByRole('textbox', { name: 'Its title' }).fill('Turkey and oats, weighed');
  await form.getByLabel('Or choose a file').setInputFiles({
    name: 'cut.vtt',
    mimeType: 'text/vtt',
    // UTF-16 with its mark, as some editors write it.
    buffer: Buffer.from(`\uFEFF${CAPTIONS}`, 'utf16le'),
  });
  await form.getByRole('textbox', { name: 'Description' }).fill(DESCRIPTION);
  await form.getByRole('button', { name: 'See what was said' }).click();
  await page.waitForURL(/\/episodes\/[0-9a-f-]{36}\/edit(?:\?|$)/);

  // The statements of both texts stand there, each with its time.
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Turkey and oats, weighed');
  await expect(page.getByText('1,900 calories').first()).toBeVisible();
  await expect(page.getByText(/pesto/i).first()).toBeVisible();
  await expectAccessible(page);

  // What they became is told at the head, and where its foods are confirmed.
  await expect(
    page.getByText('The episode has 2 dishes, 5 ingredients and one stretch of talk.'),
  ).toBeVisible();
  await expect(page.getByRole('link', { name: 'see which' })).toHaveAttribute(
    'href',
    /\/edit\/draft#left-out$/,
  );
  await page.getByRole('link', { name: 'Confirm the 5 foods' }).click();
  await expect(
    page.getByRole('heading', { name: /Are these the \d foods/ }).first(),
  ).toBeInViewport();
  await page.goBack();

  // What became nothing is told by line, and nothing more is offered.
  const path = new URL(page.url()).pathname;
  await page.goto(`${path}/draft`);
  await expect(page.getByText('Its texts propose nothing more.')).toBeVisible();
  await expect(page.getByText('“Write to me if you cook it.”')).toBeVisible();
  await expect(page.getByText('description, line 16')).toBeVisible();
  await expectAccessible(page);

  // It is an episode like any other: its dishes have their ingredients, none of them confirmed.
  await page.goto(path.replace(/\/edit$/, ''));
  const table = page.getByRole('table', { name: /ingredients/ }).first();
  await expect(table).toContainText('500 g ground turkey, raw');

  // The form is there for the next one.
  await page.goto('/');
  await page.getByText('An episode that is already out').click();
  await expect(page.getByRole('textbox', { name: 'Captions or transcript' })).toBeVisible();
  expect(pageErrors).toEqual([]);
});

test('what cannot be read is said in words and stays in the form; a draft is added as far as it is ticked', async ({
  page,
}) => {
  await page.goto('/');
  const form = page.locator('#already-out');
  const press = form.getByRole('button', { name: 'See what was said' });
  await press.click();
  await expect(form.getByRole('alert').first()).toContainText(
    'Paste the captions or the description',
  );

  const title = 'A title that is far too long '.repeat(20);
  await form.getByRole('textbox', { name: 'Its title' }).fill(title);
  await form.getByLabel('Or choose a file').setInputFiles({
    name: 'words.txt',
    mimeType: 'text/plain',
    buffer: Buffer.from('I used 80 grams of rolled oats'),
  });
  await press.click();
  await expect(form.getByRole('alert').first()).toContainText('characters fit here');
  await expect(form.getByRole('textbox', { name: 'Its title' })).toHaveValue(title);

  await form.getByRole('textbox', { name: 'Its title' }).fill('Oats');
  await form
    .getByRole('textbox', { name: 'Captions or transcript' })
    .fill('I used 80 grams of rolled oats');
  await press.click();
  await page.waitForURL(/\/edit(?:\?|$)/);
  const path = new URL(page.url()).pathname;

  // A description that is brought in later offers what is not there yet.
  await page.locator('summary', { hasText: 'Bring a text in' }).click();
  const bring = page.locator('#new-text');
  await bring.getByLabel('What it is').selectOption('description');
  await bring
    .getByLabel('Paste it')
    .fill('OATS\n80 g rolled oats\n200 g skyr\n15 g honey\nServes 2');
  await bring.getByRole('button', { name: 'Bring it in' }).click();
  await expect(page.getByText(/Description is in/)).toBeVisible();
  await page.getByRole('link', { name: 'Draft from these texts' }).click();
  await page.waitForURL(/\/edit\/draft$/);
  await page.getByRole('checkbox', { name: '15 g honey' }).uncheck();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Add what is ticked' }).click();
  await page.waitForURL(/\/edit$/);
  await page.goto(path.replace(/\/edit$/, ''));
  const table = page.getByRole('table', { name: /ingredients/ }).first();
  await expect(table).toContainText('200 g skyr');
  await expect(table).not.toContainText('15 g honey');
});
