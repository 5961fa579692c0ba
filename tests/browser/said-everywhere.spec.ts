import { expect, expectAccessible, test } from './fixtures';

test.use({ alone: true });

interface Exported {
  readonly episode: {
    readonly id: string;
    readonly segments: readonly { readonly id: string; readonly recipe: object | null }[];
  };
  readonly day: { readonly id: string };
}

test('what was said on the day stands on the numbers and publish pages, and a change under it is broken there', async ({
  page,
}) => {
  await page.goto('/');
  const href = await page.locator('a[href*="/episodes/"]').first().getAttribute('href');
  const [here = ''] = /\/episodes\/[0-9a-f-]{36}/.exec(href ?? '') ?? [];
  const file = (await (await page.request.get(`${here}/export`)).json()) as Exported;
  const dish = file.episode.segments.find(({ recipe }) => recipe !== null);
  const said = {
    id: 'said-1',
    deviceId: 'phone-of-the-test',
    deviceSeq: 1,
    at: '2026-12-12T09:40:00.000Z',
    kind: 'said',
    refs: {},
    payload: {
      scope: { kind: 'whole', segmentId: dish?.id ?? '' },
      text: 'The whole dish has 700 calories.',
      numbers: [{ nutrient: 'energyKcal', amount: 700, hedge: 'exact', value: 700 }],
    },
  };
  const sent = await page.request.post(`${here}/day/events`, {
    data: { dayId: file.day.id, events: [said] },
    headers: { origin: new URL(page.url()).origin },
  });
  expect(await sent.json()).toMatchObject({ kept: ['said-1'] });

  await page.goto(`${here}/numbers`);
  const told = page.getByRole('region', { name: 'Said: Barley skillet' });
  await expect(told).toContainText('said on 12 Dec');
  await expect(told).toContainText('Broken: You said 700 calories, it is now');
  await expect(page.locator('main')).toContainText('said on 12 Dec: 700 kcal, outside its range');
  await expectAccessible(page);

  await page.goto(`${here}/publish`);
  await expect(page.getByRole('region', { name: 'Before you paste it' })).toContainText(
    'Broken: You said 700 calories',
  );
  await expect(page.locator('#description-text')).toContainText(
    '† Barley skillet: 700 kcal is what was said in the video',
  );
  await expect(page.getByRole('main')).toContainText('lock broken');
  await expectAccessible(page);
});
