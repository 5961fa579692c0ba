import { readFileSync } from 'node:fs';
import Fraction from 'fraction.js';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import { parseEpisodeFile } from '#lib/episode/file';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import type { LockStanding } from '#lib/lock/lock-standing';
import { publishedNumbers } from '#lib/figures/published-numbers';
import { EpisodeView } from '../../app/episodes/[id]/_components/episode-view';
import { EMPTY_LINE, lineTexts } from '../../app/episodes/[id]/_components/line-texts';
import { newLineColumns, linePatch } from '../../app/episodes/[id]/line-edits';
import { lineForm, newLineForm } from '../../app/episodes/[id]/line-schema';
import { portionForm } from '../../app/episodes/[id]/portion-schema';
import { segmentForm } from '../../app/episodes/[id]/schema';
import { lineColumns } from '#lib/store/episode-columns';

vi.mock('../../app/episodes/[id]/actions', () => {
  const action = () => Promise.resolve({ problems: [], typed: {}, done: '', round: 0, attempt: 1 });
  const names = ['saveEpisode', 'answerDay', 'addSegment', 'saveSegment', 'moveSegment'];
  names.push('removeSegment', 'addLine', 'saveLine', 'removeLine', 'addPortion', 'removePortion');
  names.push('addPoint', 'savePoint', 'removePoint', 'takeBack');
  names.push('moveLine', 'orderLines', 'orderSegments', 'throwAway');
  return Object.fromEntries(names.map((name) => [name, action]));
});

vi.mock('next/navigation', () => ({
  usePathname: () => '/episodes/e',
  useRouter: () => ({ push: () => undefined }),
  unstable_rethrow: () => undefined,
}));

const url = new URL('../../seed/demo.episode.json', import.meta.url);
const parsed = parseEpisodeFile(readFileSync(url, 'utf8'));
if (!parsed.ok) throw new Error('the demo must be readable');
const demo = parsed.value;

function page(
  file: EpisodeFile,
  editing: string | null = null,
  standing: LockStanding = 'draft',
): string {
  const figures = episodeFigures(file);
  const numbers = publishedNumbers(file, figures);
  const revs = Object.fromEntries(
    file.episode.segments.flatMap((s) => [
      [s.id, 7] as const,
      ...(s.recipe?.lines ?? []).map((l) => [l.id, 3] as const),
    ]),
  );
  return renderToStaticMarkup(
    <EpisodeView
      view={{ file, figures, numbers, revs, editing, others: {} }}
      stage="filmingSet"
      numbers={standing}
      totalS={550}
      last={null}
    />,
  );
}

const words = (markup: string) =>
  markup
    .replace(/<svg.*?<\/svg>/gs, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

describe('the episode page of the demo', () => {
  const markup = page(demo);
  const text = words(markup);
  const figures = episodeFigures(demo);
  const numbers = publishedNumbers(demo, figures);

  test('shows each dish’s calories as they are published, with whisker and range', () => {
    for (const dish of figures.dishes) {
      const energy = numbers('energyKcal', { kind: 'whole', segmentId: dish.segmentId });
      expect(text).toContain(`calories ${energy.number} kcal ${energy.range}`);
    }
  });

  test('has a row for every ingredient, with state, source and grams', () => {
    const lines = figures.dishes.flatMap((dish) => dish.lines);
    for (const line of lines) {
      expect(markup).toContain(`id="row-${line.lineId}"`);
      if (line.source) expect(text).toContain(line.source);
    }
    expect(lines.length).toBeGreaterThanOrEqual(25);
  });

  test('hatches what is open and says what it asks for', () => {
    const open = figures.dishes.flatMap((dish) => dish.lines).filter((line) => line.gap !== null);
    expect(open.length).toBeGreaterThan(0);
    for (const line of open) {
      const row = new RegExp(`<tr id="row-${line.lineId}" class="[^"]*hatch.*?</tr>`, 's').exec(
        markup,
      );
      expect(words(row?.[0] ?? '')).toMatch(/open: (say grams|choose a food)/);
      // Nothing is said to add 0 where it is not known.
      expect(words(row?.[0] ?? '')).not.toMatch(/\b0 kcal/);
    }
  });

  test('says at once in its row that an ingredient’s words name another amount than is counted', () => {
    expect(text).not.toContain('its words say');
    const changed = structuredClone(demo);
    const [line] = changed.episode.segments
      .flatMap(({ recipe }) => recipe?.lines ?? [])
      .filter(({ planned, text: of }) => planned && of.startsWith('60 g '));
    if (!line) throw new Error('the demo has typed grams');
    line.planned = { lowMg: 90_000, valueMg: 90_000, highMg: 90_000 };
    const row = new RegExp(`<tr id="row-${line.id}".*?</tr>`, 's').exec(page(changed));
    expect(words(row?.[0] ?? '')).toContain(
      'its words say 60 g, counted is 90 g: change one of them',
    );
  });

  test('fills talking points with bound numbers and leaves no binding in brackets', () => {
    const points = demo.episode.segments.flatMap((segment) => segment.talkingPoints);
    expect(points.some((point) => point.text.includes('['))).toBe(true);
    const shown = words(markup.replace(/<form.*?<\/form>/gs, ''));
    expect(shown).not.toMatch(/\[(energy|protein|fat|carbohydrate|fibre), (whole|each|day)\]/);
  });

  test('calls the sum "the dishes shown" until nothing else is said to have been eaten', () => {
    expect(text).toContain('The dishes shown');
    const answered = structuredClone(demo);
    answered.episode.anythingElse = { kind: 'nothing' };
    expect(words(page(answered))).toContain('The day calories');
  });

  test('opens one row’s form at its revision, and the slate shuts with the lock', () => {
    const line = demo.episode.segments.flatMap((s) => s.recipe?.lines ?? [])[0];
    if (!line) throw new Error('the demo has ingredients');
    const editing = page(demo, line.id);
    const form = new RegExp(`<form id="line-${line.id}".*?</form>`, 's').exec(editing)?.[0] ?? '';
    expect(form).toContain('name="rev" value="3"');
    expect(form).toContain(`value="${line.text}"`);
    expect(markup).not.toContain(`<form id="line-${line.id}"`);
    expect(markup).toContain('stick-open');
    expect(page(demo, null, 'locked')).not.toContain('stick-open');
  });

  test('has one main heading, and every form field a label', () => {
    expect(markup.match(/<h1/g)).toHaveLength(1);
    const labels = new Set([...markup.matchAll(/ for="([^"]+)"/g)].map((m) => m[1]));
    const fields = [...markup.matchAll(/<(?:input|select|textarea) ([^>]*)>/g)]
      .map((m) => m[1] ?? '')
      .filter((attributes) => !/type="(hidden|radio)"/.test(attributes));
    expect(fields.length).toBeGreaterThan(20);
    for (const attributes of fields) {
      expect(labels).toContain(/id="([^"]+)"/.exec(attributes)?.[1]);
    }
    const ids = [...markup.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

test('an episode without segments says how to begin', () => {
  const empty = structuredClone(demo);
  empty.episode.segments = [];
  empty.episode.links = [];
  empty.episode.targets = [];
  const text = words(page(empty));
  expect(text).toContain('Nothing in the running order yet');
  expect(text).not.toContain('The dishes shown');
});

describe('forms of the episode', () => {
  /** What a browser sends of an ingredient's form that nobody has typed into. */
  function sentAsShown(line: RecipeLine) {
    const shown = lineTexts(line, demo.foods.find((food) => food.id === line.foodId) ?? null);
    const { food, asBought, spoiltByTake, leftWeighed, ...texts } = shown;
    const sent = {
      ...texts,
      foodId: food?.id ?? '',
      measuresOf: food?.id ?? '',
      ...(asBought && { asBought: 'on' }),
      ...(spoiltByTake && { spoiltByTake: 'on' }),
      ...(leftWeighed && { leftWeighed: 'on' }),
      episodeId: 'e',
      lineId: line.id,
      rev: '3',
    };
    const { episodeId: _e, lineId: _l, rev: _r, ...read } = lineForm.parse(sent);
    return read;
  }

  const demoLines = demo.episode.segments.flatMap((segment) => segment.recipe?.lines ?? []);
  const [aLine] = demoLines;
  if (!aLine) throw new Error('the demo has ingredients');
  const left = { lowMg: 2000, valueMg: 3000, highMg: 4000 };
  const varied: readonly RecipeLine[] = [
    { ...aLine, cookMethod: 'patty, broiled', retention: '431' },
    { ...aLine, leftBehind: { kind: 'none' } },
    { ...aLine, leftBehind: { kind: 'mass', ...left, where: 'tray', made: 'fat' } },
    { ...aLine, leftBehind: { kind: 'weighed', where: 'marinade', made: 'alike' } },
    { ...aLine, bounded: [{ nutrient: 'fibre', maxPer100: 5 }], orFoodId: 'another' },
    { ...aLine, foodId: null, madeFrom: { recipeId: 'sauce', rev: 2 }, unit: 'batch' },
  ];

  test('an ingredient shown in its form and read again is the same ingredient', () => {
    for (const line of [...demoLines, ...varied]) {
      const patch = linePatch(line.id, sentAsShown(line));
      // What the form does not show is not in what it saves.
      const { bounded: _b, orFoodId: _o, ...shown } = lineColumns(line);
      expect(reduced(patch)).toEqual(reduced({ ...shown, match: 'confirmed' }));
    }
  });

  test('another food takes the place of both of two, and of a recipe; its measures and methods are others', () => {
    for (const line of [...demoLines, ...varied]) {
      const patch = linePatch(line.id, { ...sentAsShown(line), foodId: 'a third' });
      expect(patch).toMatchObject({ measureName: null, cookMethod: null, orFoodId: null });
      expect(patch).toMatchObject({ foodId: 'a third', madeFromId: null, madeFromRev: null });
    }
  });

  test('what is left is typed or weighed, not both', () => {
    const sent = { ...plain(), text: 'oil', episodeId: 'e', recipeId: 'r', leftBehind: '3' };
    expect(newLineForm.safeParse(sent).success).toBe(true);
    const both = newLineForm.safeParse({ ...sent, leftWeighed: 'on' });
    expect(both.error?.issues[0]?.path).toEqual(['leftBehind']);
  });

  test('a new ingredient without amount has no unit either', () => {
    const read = newLineForm.parse({ ...plain(), text: 'salt', recipeId: 'r', episodeId: 'e' });
    const { episodeId: _e, recipeId: _r, state, ...texts } = read;
    expect(state).toBeNull();
    expect(newLineColumns('l', { ...texts, state: 'raw' })).toMatchObject({
      unit: null,
      lowNum: null,
      plannedMg: null,
      leftKind: 'none',
      foodId: null,
    });
  });

  test('a portion is one of so many, so many grams, or a share by eye, and nothing else', () => {
    const portion = (size: string, kind: string) =>
      portionForm.safeParse({ episodeId: 'e', recipeId: 'r', size, kind, name: '' });
    expect(portion('2', 'count').data?.portion).toEqual({ kind: 'count', of: 2 });
    expect(portion('180', 'mass').data?.portion).toEqual({ kind: 'mass', massMg: 180_000 });
    expect(portion('1/3', 'byEye').data?.portion).toEqual({
      kind: 'byEye',
      share: { num: 1, den: 3 },
      permille: null,
    });
    for (const [size, kind] of [
      ['0', 'count'],
      ['1.5', 'count'],
      ['0', 'mass'],
      ['10-20', 'mass'],
      ['', 'count'],
      ['4/3', 'byEye'],
      ['0', 'byEye'],
      ['1/4-1/3', 'byEye'],
    ] as const) {
      expect(portion(size, kind).error?.issues[0]?.path, `${size} ${kind}`).toEqual(['size']);
    }
  });

  test('how often a dish is made is exact and no range', () => {
    const segment = (batches: string) =>
      segmentForm.safeParse({ episodeId: 'e', segmentId: 's', rev: '1', title: 'A', batches });
    expect(segment('1 1/2').data?.batches).toEqual({ num: 3, den: 2 });
    expect(segment('1-2').success).toBe(false);
    expect(segment('most').success).toBe(false);
  });
});

/** Fractions in lowest terms: 6/10 and 3/5 are the same amount. */
function reduced<
  T extends Pick<ReturnType<typeof lineColumns>, 'lowNum' | 'lowDen' | 'highNum' | 'highDen'>,
>(columns: T) {
  const { lowNum, lowDen, highNum, highDen, ...rest } = columns;
  const ratio = (num: number | null, den: number | null) =>
    num === null || den === null ? null : new Fraction(num, den).toFraction();
  return { ...rest, low: ratio(lowNum, lowDen), high: ratio(highNum, highDen) };
}

function plain(): Record<string, string> {
  const {
    text: _t,
    food: _f,
    asBought: _a,
    spoiltByTake: _s,
    leftWeighed: _l,
    ...texts
  } = EMPTY_LINE;
  return texts;
}
