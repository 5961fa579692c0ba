import { expect, type Page } from '@playwright/test';
import { setClock } from './day-clock';

/** One page in one state. */
export interface PageState {
  readonly name: string;
  /** From the episode's own address where it begins with a dot, as './day'. */
  readonly path: string;
  /** Looked at by day alone: at night it shows nothing that another state does not. */
  readonly byDay?: true;
  /** Brings the page into its state; it was just opened. */
  readonly enter?: (page: Page) => Promise<void>;
}

const FOOD = '/pantry/foods/014f8634-0400-7000-8000-000000005665';

/** Opens all that is folded away. */
export async function unfold(page: Page): Promise<void> {
  await page.evaluate(() =>
    document.querySelectorAll('details').forEach((part) => (part.open = true)),
  );
}

/** Sends a form as it stands, whatever its button is called, and waits for its faults. */
const refused = (form: string) => async (page: Page) => {
  await page.waitForLoadState('networkidle');
  await unfold(page);
  await page.evaluate((id) => {
    const element = document.getElementById(id);
    if (!(element instanceof HTMLFormElement)) throw new Error(`there is no form ${id}`);
    element.requestSubmit();
  }, form);
  await expect(page.locator(`#${form} [role=alert]`)).not.toBeEmpty();
};

/** Fills a field with what cannot be, sends its form, and waits for its fault. */
const refusedFor = (form: string, field: string, typed: string) => async (page: Page) => {
  await unfold(page);
  await page.locator(`#${form} [name="${field}"]`).fill(typed);
  await refused(form)(page);
  await expect(page.locator(`#${form} [name="${field}"]`)).toHaveAttribute('aria-invalid', 'true');
};

/** Follows the link in `main` that leads to the form of a row, the one at a place in their order. */
const editing = (at: number) => async (page: Page) => {
  const hrefs = await page
    .locator('main a[href*="edit="]')
    .evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''));
  const href = hrefs.at(at);
  if (href === undefined) throw new Error('the page has no such row to edit');
  await page.goto(href);
  await expect(page.locator('main form[id]:visible').first()).toBeVisible();
};

/** Opens the scale of the first ingredient, at one of its weights. */
const weighing = (of: string) => async (page: Page) => {
  const href = await page.locator('main a[href*="edit=weigh-"]').first().getAttribute('href');
  await page.goto((href ?? '').replace('edit=weigh-', `edit=weigh-${of}`));
  await unfold(page);
  await expect(page.locator('main form[id^="weigh-"]:visible').first()).toBeVisible();
};

/** Opens the form by which the first ingredient is made from a dish. */
const fromDish = async (page: Page) => {
  const href = await page.locator('main a[href*="edit=weigh-"]').first().getAttribute('href');
  await page.goto((href ?? '').replace('edit=weigh-', 'edit=dish-'));
  await unfold(page);
  await expect(page.locator('main form[id^="from-dish-"]')).toBeVisible();
};

/** A part by eye, a plate weighed before and after, and a change of weight that nobody cites: refused. */
const partsOfADish = async (page: Page) => {
  await page.waitForLoadState('networkidle');
  await unfold(page);
  const first = (prefix: string) => page.locator(`main form[id^="${prefix}"]`).first();
  await first('portion-').getByLabel('Portions', { exact: true }).selectOption('byEye');
  await first('eaten-').getByLabel('I ate').selectOption('plate');
  const cooking = first('cooking-');
  await cooking.getByRole('button', { name: 'Save the change of weight' }).click();
  await expect(cooking.getByRole('alert')).not.toBeEmpty();
};

/** Follows the link to the first own label of the pantry, and to a part of it. */
const ownLabel =
  (part = '') =>
  async (page: Page) => {
    const href = await page
      .getByRole('link', { name: 'Brinkleaf grainy mustard' })
      .first()
      .getAttribute('href');
    await page.goto(`${href ?? ''}${part}`);
    await expect(page.getByRole('heading', { level: 1 })).toContainText('Brinkleaf');
    await unfold(page);
  };

/** The food that the label stands beside, chosen as the one that it is: what merging the two would change. */
const mergeForeseen = async (page: Page) => {
  await ownLabel('/merge?q=mustard+prepared+yellow')(page);
  await page
    .getByRole('link', { name: /^Mustard, prepared, yellow/ })
    .first()
    .click();
  await expect(page.getByRole('heading', { name: 'What happens' })).toBeVisible();
};

/** A pack of nothing with a number that is none: refused. */
const packRefused = async (page: Page) => {
  await ownLabel()(page);
  await page.locator('#pack [name="gtin"]').fill('6291041500214');
  await refusedFor('pack', 'packG', '0')(page);
};

/** Peel and trim of more than all: refused. */
const trimRefused = async (page: Page) => {
  await ownLabel()(page);
  await refusedFor('refuse', 'refusePercent', '101')(page);
};

/** A photo that is no photo: refused. */
const photoRefused = async (page: Page) => {
  await ownLabel()(page);
  const panel = page.getByLabel('A photo of the panel');
  await panel.setInputFiles({
    name: 'panel.jpg',
    mimeType: 'image/jpeg',
    buffer: Buffer.from('no photo'),
  });
  await page.getByRole('button', { name: 'Attach the photo' }).click();
  await expect(page.locator('main [role=alert]:not(:empty)').first()).toBeVisible();
};

/** Something is not there: its form, refused. */
const notThere = async (page: Page) => {
  await page
    .getByRole('button', { name: /^Not there/ })
    .first()
    .click();
  await page.getByRole('button', { name: 'Take it instead' }).click();
  await expect(page.getByText('Say what was taken')).toBeVisible();
};

/** In the dish that is remarked on: all of the form of the ingredient whose food lacks values, one of them refused. */
const gapRefused = async (page: Page) => {
  const row = page.locator('tr[data-member]').filter({ hasText: '0.6 g paprika' });
  const href = await row.getByRole('link', { name: /^Edit/ }).getAttribute('href');
  await page.goto(href ?? '');
  await unfold(page);
  await page.locator('form[id^="line-"]').getByLabel('Left behind, grams').fill('0.1-0.2');
  const most = page.getByLabel('At most in 100 g, g').first();
  await most.fill('101');
  await most.press('Enter');
  await expect(most).toHaveAttribute('aria-invalid', 'true');
};

/** On the filming day at half past nine, with nothing begun: what another order would move. Nothing is entered. */
const slipped = async (page: Page) => {
  await setClock(page, '09:32');
  await page.reload();
  await page.getByRole('button', { name: 'See what moves' }).click();
  await expect(page.getByRole('heading', { name: /^What moves/ })).toBeVisible();
};

/** A plate is about to be eaten whose shots nobody has. Nothing is entered. */
const shotsOwed = async (page: Page) => {
  await page.getByRole('button', { name: 'Done Eat half of it, for real' }).click();
  await expect(page.getByRole('heading', { name: 'Not yet taken:' })).toBeVisible();
  await page.getByText('Takes longer, or skip it').click();
};

/** At the scale, where nothing is shown by it yet: refused. Nothing is entered. */
const atTheScale = async (page: Page) => {
  await page.getByRole('button', { name: 'Weigh', exact: true }).click();
  await unfold(page);
  await page.getByRole('button', { name: 'Keep this weight' }).click();
  await expect(page.getByLabel('The scale shows, g')).toHaveAttribute('aria-invalid', 'true');
};

/** The form of the first dish's method on its filming day, with the steps that were read of it. */
const methodRead = async (page: Page) => {
  const link = page.locator('main a[href*="edit=new-method-"]').first();
  await page.goto((await link.getAttribute('href')) ?? '');
  await page.waitForLoadState('networkidle');
  await page
    .getByLabel('Method', { exact: true })
    .fill('Heat the oven to 200 °C. Soak the beans overnight. Bake for 40–50 minutes. Serve.');
  await page.getByRole('button', { name: 'Read the method' }).click();
  await expect(page.getByRole('heading', { name: 'Steps that were read' })).toBeVisible();
};

/** The same, refused: a bake without degrees and minutes that are none. */
const methodRefused = async (page: Page) => {
  await methodRead(page);
  await page.getByLabel(/^Oven, °/).fill('');
  await page.getByLabel('Usual', { exact: true }).last().fill('soon');
  await page.getByRole('button', { name: 'Add these steps' }).click();
  await expect(page.getByLabel('Usual', { exact: true }).last()).toHaveAttribute(
    'aria-invalid',
    'true',
  );
};

/** The first statement that is off, opened, with all that can be done about it. */
const statementOpen = async (page: Page) => {
  await expect(page.locator('button[aria-expanded]').first()).toBeVisible();
  await page.keyboard.press('o');
  await expect(page.locator('button[aria-current]')).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.locator('button[aria-expanded=true]')).toBeVisible();
  await unfold(page);
};

/** Follows a dish's link from the episode's page to a page of its own. */
const ofDish = (name: RegExp) => async (page: Page) => {
  const link = page.getByRole('link', { name }).first();
  await page.goto((await link.getAttribute('href')) ?? '');
};

/** A dish without its first ingredient, tried out and not saved, with the ways of the second one open. */
const swapTried = async (page: Page) => {
  await ofDish(/^Swaps of /)(page);
  await page
    .getByRole('link', { name: /^Swap / })
    .first()
    .click();
  await page.getByRole('button', { name: /^Leave out/ }).click();
  await expect(page.getByRole('heading', { name: 'What it does' })).toBeVisible();
  await page
    .getByRole('link', { name: /^Swap / })
    .first()
    .click();
  await expect(page.getByLabel(/^Another amount/)).toBeVisible();
  await unfold(page);
};

/** Amounts that a dish's targets ask for, looked for and found. */
const fitFound = async (page: Page) => {
  await ofDish(/^Fit it to a target/)(page);
  await page.getByRole('button', { name: 'Find the amounts' }).click();
  await expect(page.getByRole('table', { name: 'What was asked, before and after' })).toBeVisible();
};

/** The same, refused: an ingredient whose most is no number. */
const fitRefused = async (page: Page) => {
  await ofDish(/^Fit it to a target/)(page);
  const most = page.locator('#fit [name^="high-"]').first();
  await most.fill('plenty');
  await page.getByRole('button', { name: 'Find the amounts' }).click();
  await expect(most).toHaveAttribute('aria-invalid', 'true');
};

const keysOpen = async (page: Page) => {
  await page.getByRole('button', { name: 'Keys', exact: true }).click();
  await expect(page.getByRole('dialog')).toBeVisible();
};

const recipePasted = (text: string, shown: string) => async (page: Page) => {
  await page.getByLabel('Recipe data, or the HTML of its page').fill(text);
  await page.getByRole('button', { name: 'Read the recipe' }).click();
  await expect(page.getByText(shown).first()).toBeVisible();
};
const RECIPE_DATA = JSON.stringify({
  '@type': 'Recipe',
  name: 'Plum pots',
  recipeIngredient: ['200 g skyr', '3 plums', true],
  recipeInstructions: 'Stir.\nChill for 30 minutes.',
  nutrition: { calories: '180 calories' },
});

/** A recipe as data whose parts wait for their ticks, and data that breaks off. */
const recipeRead = recipePasted(RECIPE_DATA, 'Plum pots');
const recipeRefused = recipePasted('{"@type": "Recipe"', 'The data cannot be read from line 1');

/** Every page with the demo in it, in every state that a person meets. */
export const WITH_DEMO: readonly PageState[] = [
  { name: 'season', path: '/' },
  { name: 'season, all forms open', path: '/', enter: unfold, byDay: true },
  { name: 'season, refused', path: '/', enter: refused('new-episode') },
  { name: 'season, list of keys', path: '/', enter: keysOpen },
  { name: 'episode', path: '.' },
  { name: 'episode, all open', path: '.', enter: unfold, byDay: true },
  { name: 'episode, its own form', path: '.', enter: editing(0), byDay: true },
  { name: 'episode, a sentence’s form', path: '.', enter: editing(2), byDay: true },
  { name: 'episode, an ingredient’s form', path: '.', enter: editing(5) },
  { name: 'episode, an ingredient on the scale', path: '.', enter: weighing('') },
  { name: 'episode, cooked, on the scale', path: '.', enter: weighing('cooked-'), byDay: true },
  { name: 'episode, what is left, on the scale', path: '.', enter: weighing('left-') },
  { name: 'episode, an ingredient from a dish', path: '.', enter: fromDish },
  { name: 'episode, parts of a dish', path: '.', enter: partsOfADish },
  { name: 'episode, a target’s form', path: '.', enter: editing(-1), byDay: true },
  { name: 'episode, refused', path: '.', enter: refused('new-dish') },
  { name: 'numbers', path: './numbers' },
  { name: 'numbers, all open', path: './numbers', enter: unfold, byDay: true },
  { name: 'breakdown of the day', path: './breakdown/day/energyKcal' },
  { name: 'breakdown, open', path: './breakdown/day/sodium', byDay: true },
  { name: 'no such breakdown', path: './breakdown/day/luck', byDay: true },
  { name: 'day', path: './day' },
  { name: 'day, all open', path: './day', enter: unfold },
  { name: 'day, a row’s form', path: './day', enter: editing(2), byDay: true },
  { name: 'day, another row’s form', path: './day', enter: editing(3), byDay: true },
  { name: 'day, a method read', path: './day', enter: methodRead, byDay: true },
  { name: 'day, a method refused', path: './day', enter: methodRefused },
  { name: 'the evening before', path: './day/evening' },
  { name: 'on the day', path: './day/live' },
  { name: 'on the day, what moves', path: './day/live', enter: slipped },
  { name: 'on the day, shots owed', path: './day/live', enter: shotsOwed },
  { name: 'on the day, at the scale', path: './day/live', enter: atTheScale },
  { name: 'after the day', path: './day/after' },
  { name: 'after the day, refused', path: './day/after', enter: refused('camera-clock') },
  { name: 'shopping, all open', path: './shopping', enter: unfold, byDay: true },
  { name: 'shopping, not there', path: './shopping', enter: notThere },
  {
    name: 'shopping, several episodes',
    path: './shopping?from=2026-12-01&to=2026-12-31',
    byDay: true,
  },
  { name: 'shopping, dates that are none', path: './shopping?from=2026-12-31&to=2026-12-01' },
  { name: 'running order in the cut', path: './edit/timeline', enter: unfold },
  {
    name: 'running order in the cut, refused',
    path: './edit/timeline',
    enter: refused('edit-list'),
  },
  { name: 'the edit', path: './edit' },
  { name: 'the edit, a statement open', path: './edit', enter: statementOpen },
  { name: 'the edit, a text refused', path: './edit', enter: refused('new-text'), byDay: true },
  { name: 'draft from the texts', path: './edit/draft' },
  { name: 'publish, all open', path: './publish', enter: unfold },
  { name: 'publish, refused', path: './publish', enter: refused('web-link') },
  { name: 'cards', path: './cards' },
  {
    name: 'cards, upright, outlined',
    path: './cards?size=1080x1920&ground=outline&over=light',
    byDay: true,
  },
  { name: 'captions with corrections', path: './publish/captions' },
  { name: 'recipe from a page', path: './edit/recipe', byDay: true },
  { name: 'recipe from a page, read', path: './edit/recipe', enter: recipeRead },
  { name: 'recipe from a page, refused', path: './edit/recipe', enter: recipeRefused, byDay: true },
  { name: 'read to camera', path: './reading' },
  { name: 'read to camera, remote', path: './reading?remote' },
  { name: 'evidence', path: './evidence' },
  { name: 'corrections, nothing out', path: './corrections', byDay: true },
  { name: 'corrections of all episodes', path: '/corrections', byDay: true },
  { name: 'saved swaps', path: './publish/swaps', byDay: true },
  { name: 'a swap tried', path: '.', enter: swapTried },
  { name: 'replies', path: './publish/replies', byDay: true },
  { name: 'replies, refused', path: './publish/replies', enter: refused('viewer-comment') },
  { name: 'a fit found', path: '.', enter: fitFound },
  { name: 'a fit refused', path: '.', enter: fitRefused },
  { name: 'pantry, all open', path: '/pantry', enter: unfold },
  { name: 'pantry, foods found', path: '/pantry?q=barley', byDay: true },
  { name: 'pantry, nothing found', path: '/pantry?q=zzzz' },
  { name: 'new food', path: '/pantry/foods/new', enter: unfold },
  { name: 'food', path: FOOD, enter: unfold },
  { name: 'food, refused', path: FOOD, enter: refused('new-lot'), byDay: true },
  { name: 'food, a cooked weight refused', path: FOOD, enter: refused('yield'), byDay: true },
  { name: 'own food, all open', path: '/pantry', enter: ownLabel(), byDay: true },
  { name: 'own food, its label again', path: '/pantry', enter: ownLabel('/again'), byDay: true },
  { name: 'own food, a photo refused', path: '/pantry', enter: photoRefused, byDay: true },
  { name: 'own food, a pack refused', path: '/pantry', enter: packRefused, byDay: true },
  { name: 'own food, where it is used', path: '/pantry', enter: ownLabel('/uses') },
  { name: 'own food, its readings', path: '/pantry', enter: ownLabel('/readings'), byDay: true },
  { name: 'own food, which it is', path: '/pantry', enter: ownLabel('/merge'), byDay: true },
  { name: 'own food, merged', path: '/pantry', enter: mergeForeseen },
  { name: 'own food, peel and trim refused', path: '/pantry', enter: trimRefused, byDay: true },
  { name: 'kitchen, all open', path: '/kitchen', enter: unfold },
  {
    name: 'kitchen, a spread refused',
    path: '/kitchen',
    enter: refusedFor('spreads', 'spoon', '-5'),
    byDay: true,
  },
  { name: 'phones', path: '/phones', enter: unfold },
  { name: 'what changed', path: '/changes' },
  { name: 'look', path: '/look' },
  { name: 'no such page', path: '/no-such-page' },
];

/** An episode whose numbers are remarked on (`tests/support/remarked-episode.ts`). */
export const REMARKED: readonly PageState[] = [
  { name: 'remarks, offers and two states', path: '.', enter: unfold },
  { name: 'a range refused', path: '.', enter: gapRefused },
  { name: 'numbers with remarks', path: './numbers', enter: unfold },
  { name: 'breakdown of what is incomplete', path: './breakdown/day/fibre' },
];

/** Before anything was entered, and an episode that has only its title. */
export const EMPTY: readonly PageState[] = [
  { name: 'season', path: '/', enter: unfold },
  { name: 'pantry', path: '/pantry' },
  { name: 'kitchen', path: '/kitchen', enter: unfold },
  { name: 'phones', path: '/phones' },
  { name: 'what changed', path: '/changes' },
  { name: 'episode', path: '.', enter: unfold },
  { name: 'numbers', path: './numbers' },
  { name: 'breakdown', path: './breakdown/day/protein' },
  { name: 'day', path: './day' },
  { name: 'the evening before', path: './day/evening' },
  { name: 'on the day', path: './day/live' },
  { name: 'after the day', path: './day/after' },
  { name: 'shopping', path: './shopping' },
  { name: 'running order in the cut', path: './edit/timeline' },
  { name: 'draft from the texts', path: './edit/draft' },
  { name: 'publish', path: './publish', enter: unfold },
  { name: 'cards', path: './cards' },
  { name: 'captions with corrections', path: './publish/captions' },
  { name: 'read to camera', path: './reading' },
  { name: 'corrections', path: './corrections' },
  { name: 'corrections of all episodes', path: '/corrections' },
  { name: 'saved swaps', path: './publish/swaps' },
  { name: 'replies', path: './publish/replies' },
];

/** What is made to be printed. */
export const PRINTED: readonly PageState[] = [
  { name: 'episode', path: '.' },
  { name: 'breakdown', path: './breakdown/day/energyKcal' },
  { name: 'day', path: './day' },
  { name: 'the evening before', path: './day/evening' },
  { name: 'on the day', path: './day/live' },
  { name: 'after the day', path: './day/after' },
  { name: 'shopping', path: './shopping' },
  { name: 'pantry', path: '/pantry' },
  { name: 'food', path: FOOD },
  { name: 'running order in the cut', path: './edit/timeline' },
  { name: 'the edit', path: './edit' },
  { name: 'publish', path: './publish' },
  { name: 'cards', path: './cards' },
  { name: 'evidence', path: './evidence' },
  { name: 'a swap tried', path: '.', enter: swapTried },
  { name: 'a fit found', path: '.', enter: fitFound },
];

/** Opens a page and brings it into its state. */
export async function enterState(page: Page, state: PageState, episode: string): Promise<void> {
  await page.goto(state.path.startsWith('.') ? episode + state.path.slice(1) : state.path);
  await expect(page.getByRole('heading', { level: 1 }).first()).toBeAttached();
  await state.enter?.(page);
}

/** How much wider the page is than its screen, in CSS pixels. */
export async function tooWide(page: Page): Promise<number> {
  return page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
}
