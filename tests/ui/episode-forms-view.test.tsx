import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { publishedNumbers } from '#lib/figures/published-numbers';
import { finishedReadings, lineReadings } from '#lib/figures/readings';
import { EpisodeView } from '../../app/episodes/[id]/_components/episode-view';
import { unitChoices } from '../../app/episodes/[id]/_components/line-texts';
import { measureChoices, measureWords } from '../../app/episodes/[id]/_components/measure-choices';
import { weighKey } from '../../app/episodes/[id]/_components/view';
import { aFood, aLine, aReading, aRecipe } from '../support/build';
import { demoFile, words } from './page-support';

const ACTION = vi.hoisted(
  () => () =>
    Promise.resolve({ problems: [], typed: {}, done: '', rev: null, round: 0, attempt: 1 }),
);
vi.mock('next/navigation', () => ({
  usePathname: () => '/episodes/e',
  useRouter: () => ({ push: () => undefined }),
  unstable_rethrow: () => undefined,
}));
vi.mock('../../app/episodes/[id]/weigh-actions', () => ({
  weighLine: ACTION,
  weighDish: ACTION,
  removeReading: ACTION,
}));
vi.mock('../../app/episodes/[id]/target-actions', () => ({
  addTarget: ACTION,
  saveTarget: ACTION,
  removeTarget: ACTION,
}));

const demo = demoFile();
const dishes = demo.episode.segments.flatMap(({ recipe }) => recipe ?? []);
const allLines = dishes.flatMap(({ lines }) => lines);

function page(file: EpisodeFile, editing: string | null = null): string {
  const figures = episodeFigures(file);
  const numbers = publishedNumbers(file, figures);
  const revs = Object.fromEntries(
    [...dishes.flatMap(({ weighings }) => weighings), ...file.episode.targets].map(
      ({ id }, index) => [id, index + 2] as const,
    ),
  );
  return renderToStaticMarkup(
    <EpisodeView
      view={{ file, figures, numbers, revs, editing, others: {} }}
      stage="filmingSet"
      numbers="draft"
      totalS={550}
      last={null}
    />,
  );
}

const formIn = (markup: string, id: string) =>
  new RegExp(`<form id="${id}".*?</form>`, 's').exec(markup)?.[0] ?? '';

describe('weighing on the episode page', () => {
  const markup = page(demo);
  const [recipe] = dishes.filter(({ weighings }) => weighings.some(({ kind }) => kind === 'raw'));
  const weighing = recipe?.weighings.find(({ kind }) => kind === 'raw');
  const lineId = weighing?.shares[0]?.lineId ?? '';
  if (!recipe || !weighing) throw new Error('the demo has readings');

  test('every ingredient leads to the scale, and says what was weighed and when', () => {
    for (const line of allLines) {
      expect(markup).toContain(`?edit=${weighKey(line.id)}#row-${line.id}`);
    }
    const { soFarMg } = lineReadings(recipe, lineId);
    const row = new RegExp(`<tr id="row-${lineId}".*?</tr>`, 's').exec(markup)?.[0] ?? '';
    // 2026-12-09 in the kitchen's own time zone.
    expect(words(row)).toMatch(new RegExp(`weighed ${soFarMg / 1000} g, Wed 9 Dec, \\d+:\\d\\d`));
  });

  test('the scale of an ingredient says that a reading adds, and takes one back at its revision', () => {
    const open = page(demo, weighKey(lineId));
    const { soFarMg } = lineReadings(recipe, lineId);
    expect(words(open)).toContain(`adds to what was weighed: ${soFarMg / 1000} g so far`);
    const form = formIn(open, `weigh-${lineId}`);
    for (const { name } of demo.kitchen.scales) expect(words(form)).toContain(name);
    for (const name of ['gross', 'tare', 'scaleId', 'after']) {
      expect(form).toContain(`for="weigh-${lineId}-${name}"`);
    }
    expect(words(form)).toContain('Straight, less its container');
    expect(form).not.toContain('name="at"');
    const index = dishes.flatMap(({ weighings }) => weighings).indexOf(weighing);
    expect(open).toMatch(
      new RegExp(
        `name="weighingId" value="${weighing.id}"/><input[^>]*name="rev" value="${index + 2}"`,
      ),
    );
    expect(markup).not.toContain(`<form id="weigh-${lineId}"`);
  });

  test('an ingredient not weighed yet says that the scale will count instead', () => {
    const plain = allLines.find((line) =>
      dishes.every((d) => lineReadings(d, line.id).soFarMg === 0),
    );
    if (!plain) throw new Error('the demo has an ingredient that was not weighed');
    expect(words(page(demo, weighKey(plain.id)))).toContain('Nothing weighed yet.');
  });

  test('without a scale it leads to the kitchen instead of asking', () => {
    const bare = structuredClone(demo);
    bare.kitchen.scales = [];
    const open = page(bare, weighKey(lineId));
    expect(formIn(open, `weigh-${lineId}`)).toBe('');
    expect(words(open)).toContain('There is no scale yet. Add one to the kitchen');
  });

  test('of several readings of the finished dish the older ones are said not to count', () => {
    const again = structuredClone(demo);
    const dish = again.episode.segments
      .flatMap(({ recipe: own }) => own ?? [])
      .find(({ weighings }) => weighings.some(({ kind }) => kind === 'finished'));
    const first = dish?.weighings.find(({ kind }) => kind === 'finished');
    if (!dish || !first) throw new Error('the demo has a dish that was weighed when finished');
    dish.weighings.push({ ...first, id: 'later', at: '2026-12-10T08:00:00.000Z' });
    const section = /<section aria-label="Finished weight: [^"]*">.*?<\/section>/gs;
    const counts = (file: EpisodeFile) =>
      (page(file).match(section) ?? []).map(
        (part) => words(part).match(/no longer counts/g)?.length,
      );
    expect(counts(demo).every((count) => count === undefined)).toBe(true);
    expect(counts(again).filter((count) => count === 1)).toHaveLength(1);
  });

  test('all forms open at once have labels for every field and no id twice', () => {
    const target = demo.episode.targets[0]?.id ?? null;
    for (const editing of [weighKey(lineId), lineId, target]) {
      const open = page(demo, editing);
      const ids = [...open.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]);
      expect(new Set(ids).size).toBe(ids.length);
      const labels = new Set([...open.matchAll(/ for="([^"]+)"/g)].map((m) => m[1]));
      for (const [, attributes = ''] of open.matchAll(/<(?:input|select|textarea) ([^>]*)>/g)) {
        if (/type="(hidden|radio)"/.test(attributes)) continue;
        expect(labels).toContain(/id="([^"]+)"/.exec(attributes)?.[1]);
      }
    }
  });
});

describe('readings', () => {
  const share = (lineId: string, num: number, den: number) => ({ lineId, share: { num, den } });

  test('of one ingredient add up; a shared one counts by its part and says so', () => {
    const recipe = aRecipe('r', [], {
      weighings: [
        aReading('b', 'raw', 90, {
          at: '2026-03-08T10:00:00.000Z',
          shares: [share('x', 1, 3), share('y', 2, 3)],
        }),
        aReading('a', 'raw', 252, { tareMg: 2000, shares: [share('x', 1, 1)] }),
        aReading('c', 'cooked', 500, { shares: [share('x', 1, 1)] }),
      ],
    });
    const { readings, soFarMg } = lineReadings(recipe, 'x');
    expect(readings.map(({ weighing, netMg, shared }) => [weighing.id, netMg, shared])).toEqual([
      ['a', 250_000, false],
      ['b', 30_000, true],
    ]);
    expect(soFarMg).toBe(280_000);
    expect(lineReadings(recipe, 'z')).toEqual({ readings: [], soFarMg: 0 });
  });

  test('of the finished dish end with the one that the figures take, at the same instant too', () => {
    const weighings = [aReading('one', 'finished', 400), aReading('two', 'finished', 300)];
    const file = structuredClone(demo);
    const own = file.episode.segments.find(({ recipe }) => recipe !== null)?.recipe;
    const scaleId = demo.kitchen.scales[0]?.id ?? '';
    if (!own) throw new Error('the demo has a dish');
    own.weighings = weighings.map((each) => ({ ...each, scaleId }));
    const last = finishedReadings(own).at(-1);
    expect(episodeFigures(file).dishes[0]?.finishedMg?.value).toBe(last?.netMg);
  });
});

describe('which measure a piece is', () => {
  const measure = (name: string, massMg: number, qtyNum = 1, qtyDen = 1) => ({
    id: `${name}-${massMg}`,
    name,
    qtyNum,
    qtyDen,
    massMg,
    digits: 0,
    source: 't',
  });
  const egg = aFood(
    'egg',
    {},
    {
      measures: [
        measure('small', 38_000),
        measure('large', 50_000),
        measure('large', 51_000),
        measure('cup', 121_500, 1, 2),
      ],
    },
  );
  const line = (more: Partial<RecipeLine> = {}) =>
    aLine('l', 'egg', {
      quantity: { low: { num: 2, den: 1 }, high: { num: 2, den: 1 } },
      unit: 'piece',
      ...more,
    });

  test('is chosen from the food’s own, each once, with its grams', () => {
    expect(measureChoices(line(), egg).map(({ words: said }) => said)).toEqual([
      'the first that fits the unit',
      '1 small, 38 g',
      '1 large, 50 g',
      '1/2 cup, 121.5 g',
    ]);
    expect(measureChoices(line(), aFood('plain', {}))).toEqual([]);
    expect(measureChoices(line(), null)).toEqual([]);
  });

  test('stays in the list where the food no longer has it: a form that is saved changes nothing', () => {
    expect(measureChoices(line({ measureName: 'jumbo' }), egg).at(-1)?.value).toBe('jumbo');
  });

  test('is said at the ingredient where it counts, and nowhere else', () => {
    expect(measureWords(line(), egg)).toContain('1 small, 38 g');
    expect(measureWords(line({ measureName: 'large' }), egg)).toContain('1 large, 50 g');
    expect(measureWords(line({ unit: 'g' }), egg)).toBeNull();
    expect(measureWords(line({ planned: { lowMg: 1, valueMg: 1, highMg: 1 } }), egg)).toBeNull();
    expect(measureWords(line(), null)).toBeNull();
  });

  test('servings are offered of a label that states one, and kept where they stand', () => {
    const offers = (own: RecipeLine, food: Parameters<typeof unitChoices>[1]) =>
      unitChoices(own, food).some(({ value }) => value === 'serving');
    const serving = { massMg: 30_000, volumeMl: null, decimals: 0, text: '1 slice', perPack: null };
    expect(offers(line(), egg)).toBe(false);
    expect(offers(line(), aFood('bread', {}, {}, { serving }))).toBe(true);
    expect(offers(line({ unit: 'serving' }), egg)).toBe(true);
    expect(offers(line(), null)).toBe(true);
  });
});

describe('targets on the episode page', () => {
  test('each opens with its own values, at its revision', () => {
    const [target] = demo.episode.targets;
    if (!target) throw new Error('the demo has targets');
    const open = page(demo, target.id);
    const form = formIn(open, `target-${target.id}`);
    expect(form).toContain(`name="amount" value="${target.amount}"`);
    expect(form).toMatch(new RegExp(`<option value="${target.nutrient}" selected="">`));
    expect(form).toMatch(new RegExp(`<option value="${target.relation}" selected="">`));
    const all = dishes.flatMap(({ weighings }) => weighings).length;
    expect(form).toContain(`name="rev" value="${all + 2}"`);
    expect(words(open)).toContain('Take the target out');
  });

  test('where there is none, one can be added for the day or any dish', () => {
    const bare = structuredClone(demo);
    bare.episode.targets = [];
    const form = formIn(page(bare), 'new-target');
    for (const segment of bare.episode.segments) {
      expect(form.includes(`<option value="${segment.id}">`)).toBe(segment.recipe !== null);
    }
    for (const nutrient of episodeFigures(bare).nutrients) {
      expect(form).toMatch(new RegExp(`<option value="${nutrient}"( selected="")?>`));
    }
  });

  test('one of a nutrient that is not counted here keeps it in its list', () => {
    const file = structuredClone(demo);
    const [target] = file.episode.targets;
    if (!target) throw new Error('the demo has targets');
    target.nutrient = 'iron';
    const form = formIn(page(file, target.id), `target-${target.id}`);
    expect(form).toMatch(/<option value="iron" selected="">mg iron/);
  });
});
