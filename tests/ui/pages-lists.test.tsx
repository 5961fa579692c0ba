import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { lockDifference } from '#lib/lock/lock-difference';
import { inputsHash, takeLock } from '#lib/lock/numbers-lock';
import { episodeFigures } from '#lib/figures/episode-figures';
import { confirmedOnly, publishedNumbers } from '#lib/figures/published-numbers';
import { whyBroken } from '#lib/lock/lock-standing';
import { allergenAnswers, allergenQuestions } from '#lib/publish/allergen-questions';
import { description } from '#lib/publish/description';
import { DEFAULT_LAYOUT } from '#lib/publish/description/layout';
import { structuredData } from '#lib/publish/structured/structured-data';
import { amountWords, timesWords } from '#lib/shopping/list-words';
import { episodeScope } from '#lib/shopping/list-events';
import { shelves } from '#lib/shopping/shelf-rows';
import { shoppingList } from '#lib/shopping/shopping-list';
import { buyText, SECTION_WORDS } from '#lib/shopping/shopping-text';
import { ShoppingView } from '../../app/episodes/[id]/shopping/_components/shopping-view';
import { PublishView } from '../../app/episodes/[id]/publish/_components/publish-view';
import type { PublishPage } from '../../app/episodes/[id]/publish/_components/view';
import { demoFile, words } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  usePathname: () => '/',
  useRouter: () => ({ refresh: vi.fn() }),
  redirect: vi.fn(),
}));

const demo = demoFile();

/** The shopping page of an episode, before anything was entered. */
function shoppingPage(file: EpisodeFile) {
  const list = shoppingList(file);
  const page = {
    episodeId: 'e1',
    asked: { scope: episodeScope('e1'), span: null, fault: null },
    list,
    shelves: shelves(list, file.shops),
    first: { cursor: 1, whole: true, events: [], gone: [] },
    today: '2026-12-10',
    labels: [],
  };
  return <ShoppingView {...page} />;
}

describe('the shopping page of the demo', () => {
  const list = shoppingList(demo);
  const markup = renderToStaticMarkup(shoppingPage(demo));
  const text = words(markup);

  test('every food stands once, under its part of the shop, with what to buy', () => {
    expect(markup.match(/scope="row"/g)).toHaveLength(list.items.length);
    for (const item of list.items.filter(({ buyMg }) => buyMg !== 0)) {
      expect(text).toContain(SECTION_WORDS[item.section]);
      expect(text).toContain(item.name);
      expect(text).toContain(buyText(item));
    }
  });

  test('each need shows the ingredients it comes from', () => {
    for (const row of list.items.flatMap(({ working }) => working)) {
      expect(text).toContain(`${row.segment}: ${row.line}`);
    }
  });

  test('an open amount is said, and the cost says what it lacks', () => {
    for (const line of list.items.flatMap(({ open }) => open)) {
      expect(text).toContain(`amount open: ${line}`);
    }
    expect(list.cost?.atLeast).toBe(true);
    expect(text).toContain('since something here has no price yet');
  });

  test('a food with an open amount stands where it is bought, not in the kitchen, as in the text', () => {
    const [bought = '', rest = ''] = text.split('Already in the kitchen');
    const [inKitchen = ''] = rest.split('At home');
    const salt = list.items.find(({ open }) => open.length > 0);
    if (!salt) throw new Error('the demo has an open amount');
    expect(bought).toContain(salt.name);
    expect(inKitchen).not.toContain(salt.name);
  });

  test('an ingredient without a food is written as it stands', () => {
    const [dish, ...rest] = demo.episode.segments.filter((segment) => segment.recipe);
    if (!dish?.recipe) throw new Error('the demo has dishes');
    const lines = dish.recipe.lines.map((line, at) =>
      at === 0 ? { ...line, foodId: null } : line,
    );
    const open: EpisodeFile = {
      ...demo,
      episode: {
        ...demo.episode,
        segments: [{ ...dish, recipe: { ...dish.recipe, lines } }, ...rest],
      },
    };
    const shown = words(renderToStaticMarkup(shoppingPage(open)));
    expect(shown).toContain('No food chosen yet');
    expect(shown).toContain(`${lines[0]?.text} (${dish.title})`);
  });

  test('an empty list says what to do next', () => {
    const empty = { ...demo, episode: { ...demo.episode, segments: [] } };
    expect(words(renderToStaticMarkup(shoppingPage(empty)))).toContain(
      'Add a dish and its ingredients',
    );
  });

  test('words of amounts and of how often', () => {
    expect(amountWords(794_000, null)).toBe('794 g');
    expect(amountWords(null, 250.4)).toBe('250 ml');
    expect(amountWords(1_200_000, 30)).toBe('1,200 g + 30 ml');
    expect(amountWords(null, null)).toBeNull();
    expect(timesWords({ batches: 1, spareTakes: 0 })).toBe('once');
    expect(timesWords({ batches: 1.5, spareTakes: 1 })).toBe('1.5 times and one spare take');
  });
});

function publishPage(file: EpisodeFile, lock: PublishPage['lock'] = null): string {
  const figures = episodeFigures(file);
  const numbers = confirmedOnly(publishedNumbers(file, figures));
  const page = {
    file,
    description: description(file),
    figures,
    numbers,
    lock,
    inputsSha256: inputsHash(file),
    last: null,
    copied: [],
    pieces: [],
    said: [],
    promises: [],
    structured: structuredData({ file, figures, numbers }),
    ...{ ofLock: lock !== null, putRight: null, changed: [], layout: DEFAULT_LAYOUT },
  };
  return renderToStaticMarkup(<PublishView page={{ ...page, revs: {} }} />);
}

describe('the publish page of the demo', () => {
  const made = description(demo);

  test('shows exactly what is pasted, and both counts of its length', () => {
    const markup = publishPage(demo);
    const pre = /<pre[^>]*>(.*?)<\/pre>/s.exec(markup)?.[1] ?? '';
    const shown = pre
      .replaceAll('&#x27;', "'")
      .replaceAll('&quot;', '"')
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&amp;', '&');
    expect(shown).toBe(made.text);
    expect(words(markup)).toMatch(/Copy, [\d,]+ of 5,000/);
    expect(words(markup)).toMatch(/[\d,]+ of 5,000 characters\./);
    const emoji = { ...demo, episode: { ...demo.episode, hook: 'Hot 🍳' } };
    expect(words(publishPage(emoji))).toContain('as some counters count');
  });

  test('why macros and calories are apart is for the author, and not in the text', () => {
    const told = made.apart.map(({ remark }) => remark.words);
    expect(told.length).toBeGreaterThan(0);
    for (const remark of told) {
      expect(words(publishPage(demo))).toContain(remark);
      expect(made.text).not.toContain(remark);
    }
  });

  test('each open number leads to its cause', () => {
    const markup = publishPage(demo);
    for (const { title, segmentId } of made.open) {
      expect(words(markup)).toContain(title);
      if (segmentId !== null) expect(markup).toContain(`#row-${segmentId}`);
    }
    expect(made.open.some(({ segmentId }) => segmentId === null)).toBe(true);
    expect(markup).toContain('href="#day-answer-part"');
    expect(markup).toContain('id="day-answer-part"');
  });

  test('each proposed allergen asks for a word, and one that was given is not asked again', () => {
    const questions = allergenQuestions(demo);
    expect(questions.length).toBeGreaterThan(0);
    const markup = publishPage(demo);
    const [first] = questions;
    if (!first) throw new Error('the demo proposes an allergen');
    expect(words(markup)).toContain(`${first.words} in ${first.food}`);
    expect(markup).toContain(`Confirm ${first.words} in ${first.food}`);
    const { allergen, foodId } = first;
    const fact = { id: 'said', allergen, standing: 'denied' as const, reason: '' };
    const said: EpisodeFile = {
      ...demo,
      foods: demo.foods.map((food) =>
        food.id === foodId ? { ...food, allergens: [...food.allergens, fact] } : food,
      ),
    };
    expect(allergenQuestions(said)).toHaveLength(questions.length - 1);
    expect(allergenAnswers(said).map(({ factId }) => factId)).toContain('said');
  });

  test('a lock holds until an input changes, and the page says which', () => {
    const { snapshot } = takeLock(demo);
    const now = episodeFigures(demo);
    expect(whyBroken(snapshot, demo, now)).toBeNull();
    const heavier = structuredClone(demo);
    const dish = heavier.episode.segments.find(({ recipe }) => recipe !== null);
    const [line] = dish?.recipe?.lines ?? [];
    if (!dish?.recipe || !line) throw new Error('the demo has a dish with ingredients');
    Object.assign(line, { planned: { lowMg: 500_000, valueMg: 500_000, highMg: 500_000 } });
    Object.assign(dish.recipe, { weighings: [] });
    const why = whyBroken(snapshot, heavier, episodeFigures(heavier));
    expect(why).toMatch(new RegExp(`^${dish.title} \\d+ → \\d+ kcal`));
    const older = JSON.stringify({ ...JSON.parse(snapshot), engineVersion: 'figures-0' });
    expect(whyBroken(older, demo, now)).toContain('newer version of the program');
    const at = 'Sat 12 Dec, 18:02';
    const lock = {
      ...{ at, seq: 1, sha256: takeLock(demo).sha256, broken: null },
      difference: lockDifference(snapshot, demo, now),
    };
    const held = words(publishPage(demo, lock));
    expect(held).toContain('Numbers locked Sat 12 Dec, 18:02, nothing under them has changed.');
    expect(held).not.toContain('Lock again');
    const difference = lockDifference(snapshot, heavier, episodeFigures(heavier));
    const broken = words(publishPage(heavier, { ...lock, difference, broken: 'an egg' }));
    expect(broken).toContain('broken: an egg');
    expect(broken).toContain('Lock again');
    expect(broken).toContain(`${dish.title}: “${line.text}”, grams`);
  });

  test('chapter faults are told in words', () => {
    const segments = demo.episode.segments.map((segment) => ({ ...segment, inFrame: null }));
    const file = { ...demo, episode: { ...demo.episode, segments } };
    expect(words(publishPage(file))).toContain('no segment has a time in the cut yet');
  });
});
