import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { againTitle, dishAgain, episodeAgain, type AgainOptions } from '#lib/episode/again';
import { foodChanges, labelsToAsk } from '#lib/episode/again-labels';
import { dishesOf } from '#lib/episode/context';
import { parseEpisodeData } from '#lib/episode/file';
import type { Weighing } from '#lib/episode/recipe-schema';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import { episodeFigures, type Figures } from '#lib/figures/episode-figures';
import { figureStatus } from '#lib/figures/figure';
import type { Food } from '#lib/foods/food';
import { FILE } from '../store/fixture';

const parsed = parseEpisodeData(JSON.parse(readFileSync('seed/demo.episode.json', 'utf8')));
if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
const DEMO = parsed.value;
const FILES: readonly (readonly [string, EpisodeFile])[] = [
  ['the demo', DEMO],
  ['the file with every field', FILE],
];

function segmentOf(file: EpisodeFile, title: string): Segment {
  const found = file.episode.segments.find((segment) => segment.title === title);
  if (!found) throw new Error(`no segment ${title}`);
  return found;
}

/** The file with its episode copied, as it stands before anything is weighed again. */
function copied(file: EpisodeFile, options?: AgainOptions): EpisodeFile {
  return { ...file, episode: episodeAgain(file, options).episode, day: null, said: [] };
}

const NUTRIENTS = ['energyKcal', 'energyKj', 'protein', 'carbohydrate', 'sodium'] as const;

function valuesOf(figures: Figures | undefined) {
  return Object.values(figures ?? {}).map((figure) => ({
    nutrient: figure.nutrient,
    status: figureStatus(figure),
    value: figure.value,
  }));
}

/** Every figure that rests on ingredients alone, by dish: whole, eaten and each portion by count. */
function allValues(file: EpisodeFile) {
  const { dishes, day } = episodeFigures(file, NUTRIENTS);
  const byCount = new Set(
    dishesOf(file.episode.segments).flatMap(({ recipe }) =>
      recipe.portions.filter(({ kind }) => kind === 'count').map(({ id }) => id),
    ),
  );
  return [
    ...dishes.flatMap(({ whole, eaten, portions }) => [
      whole,
      eaten,
      ...portions.filter((each) => byCount.has(each.portionId)).map(({ figures }) => figures),
    ]),
    day,
  ].flatMap(valuesOf);
}

/**
 * Planned grams are whole milligrams, so that a share of a reading is rounded by up to half of one. What that
 * is worth at most: salt has 388 mg sodium a gram (USDA SR28 02047), fat 37 kJ (Regulation (EU) 1169/2011).
 */
const HALF_MG_IS = { sodium: 0.0005 * 400, other: 0.0005 * 40 } as const;

function expectSameValues(before: EpisodeFile, after: EpisodeFile): void {
  const [old, now] = [allValues(before), allValues(after)];
  const shared = before.episode.segments.flatMap(({ recipe }) =>
    (recipe?.weighings ?? []).flatMap(({ shares }) => (shares.length > 1 ? shares : [])),
  );
  expect(now.map(({ nutrient, status }) => [nutrient, status])).toEqual(
    old.map(({ nutrient, status }) => [nutrient, status]),
  );
  for (const [index, was] of old.entries()) {
    const halfMg = was.nutrient === 'sodium' ? HALF_MG_IS.sodium : HALF_MG_IS.other;
    const far = Math.abs((now[index]?.value ?? NaN) - was.value);
    expect(far, was.nutrient).toBeLessThanOrEqual(halfMg * shared.length + 1e-9 * was.value);
  }
}

describe('the numbers of a copy', () => {
  it.each(FILES)(
    'have the values of the original before anything is weighed again: %s',
    (_, file) => {
      expectSameValues(file, copied(file));
    },
  );

  it('have them whatever was weighed, shared and read how often', () => {
    const skillet = segmentOf(DEMO, 'Barley skillet');
    const lineIds = skillet.recipe?.lines.map(({ id }) => id) ?? [];
    const scaleId = DEMO.kitchen.scales[0]?.id ?? '';
    const reading = fc.record({
      gross: fc.integer({ min: 1000, max: 900_000 }),
      tare: fc.integer({ min: 0, max: 1000 }),
      method: fc.constantFrom('direct' as const, 'difference' as const),
      lines: fc.uniqueArray(fc.constantFrom(...lineIds), { minLength: 1, maxLength: 3 }),
    });
    fc.assert(
      fc.property(fc.array(reading, { maxLength: 6 }), (readings) => {
        const weighings = readings.map(({ gross, tare, method, lines }, index): Weighing => ({
          id: `w-${index}`,
          kind: 'raw',
          grossMg: gross,
          tareMg: tare,
          afterId: null,
          scaleId,
          method,
          at: '2026-12-12T10:00:00Z',
          shares: lines.map((lineId) => ({ lineId, share: { num: 1, den: lines.length } })),
        }));
        const recipe = skillet.recipe && { ...skillet.recipe, weighings };
        const alone = { segments: [{ ...skillet, recipe }], links: [], targets: [] };
        const file = { ...DEMO, episode: { ...DEMO.episode, ...alone } };
        expectSameValues(file, copied(file));
      }),
      { numRuns: 40 },
    );
  });

  it('have the bounds of planned grams: those of a reading on the first scale where that is exact', () => {
    const exact = DEMO.kitchen.scales.map((scale) => ({ ...scale, accuracyPpm: 0 }));
    const [first] = exact;
    if (!first) throw new Error('no scale');
    const line = segmentOf(DEMO, 'Barley skillet').recipe?.lines.find(({ foodId }) => foodId);
    if (!line) throw new Error('no line');
    const weighed = (scaleId: string, method: Weighing['method']): EpisodeFile => {
      const weighing: Weighing = {
        id: 'w',
        kind: 'raw',
        grossMg: 300_000,
        tareMg: 50_000,
        afterId: null,
        scaleId,
        method,
        at: '2026-12-12T10:00:00Z',
        shares: [{ lineId: line.id, share: { num: 1, den: 1 } }],
      };
      const recipe = { id: 'r', title: '', lines: [line], portions: [], method: '', cooking: null };
      const dish = {
        ...segmentOf(DEMO, 'Barley skillet'),
        recipe: { ...recipe, weighings: [weighing] },
      };
      return {
        ...DEMO,
        kitchen: { ...DEMO.kitchen, scales: exact },
        episode: { ...DEMO.episode, segments: [dish], links: [], targets: [] },
      };
    };
    const energy = (file: EpisodeFile) => {
      const figure = episodeFigures(file).dishes[0]?.whole.energyKcal;
      if (!figure) throw new Error('no figure');
      return figure;
    };
    const direct = weighed(first.id, 'direct');
    expect(energy(copied(direct)).low).toBeCloseTo(Number(energy(direct).low), 9);
    expect(energy(copied(direct)).high).toBeCloseTo(Number(energy(direct).high), 9);
    // Two readings have two errors; planned grams will be weighed once.
    const difference = weighed(first.id, 'difference');
    expect(Number(energy(copied(difference)).high)).toBeLessThan(Number(energy(difference).high));
  });
});

describe('a copy', () => {
  it.each(FILES)('of a copy is the same: %s', (_, file) => {
    const once = copied(file);
    expect(copied(once)).toEqual(once);
  });

  it.each(FILES)('changes nothing in the original: %s', (_, file) => {
    const before = structuredClone(file);
    episodeAgain(file);
    file.episode.segments.forEach((segment) => dishAgain(file, segment));
    expect(file).toEqual(before);
  });

  it.each(FILES)('is an episode that the file format takes: %s', (_, file) => {
    expect(parseEpisodeData(copied(file))).toMatchObject({ ok: true });
  });

  it('plans what was weighed, and keeps the amount of what was not', () => {
    const { segment } = dishAgain(FILE, segmentOf(FILE, 'Barley skillet'));
    // One reading of 200 g by difference, two thirds barley and one third cheese.
    expect(segment.recipe?.lines.map(({ planned }) => planned?.valueMg ?? null)).toEqual([
      133_333,
      66_667,
      null,
      null,
    ]);
    const [barley, , , herb] = segment.recipe?.lines ?? [];
    const [original, , , originalHerb] = segmentOf(FILE, 'Barley skillet').recipe?.lines ?? [];
    expect(barley).toEqual({
      ...original,
      planned: { lowMg: 133_333, valueMg: 133_333, highMg: 133_333 },
    });
    expect(herb).toEqual(originalHerb);
  });

  it('as planned keeps every ingredient as it was', () => {
    const dish = segmentOf(FILE, 'Barley skillet');
    const { segment } = dishAgain(FILE, dish, { amounts: 'planned' });
    expect(segment.recipe?.lines).toEqual(dish.recipe?.lines);
    expect(segment.recipe?.weighings).toEqual([]);
  });

  it('leaves readings and the place in the cut behind, and keeps the rest of the segment', () => {
    const dish = segmentOf(FILE, 'Barley skillet');
    const { segment } = dishAgain(FILE, dish);
    expect(segment).toMatchObject({ inFrame: null, outFrame: null, recipe: { weighings: [] } });
    const { steps, shots, talkingPoints, spareTakes, spareScope, washUpS, batches, eaten } = dish;
    expect(segment).toMatchObject({
      ...{ steps, shots, talkingPoints, spareTakes, spareScope, washUpS, batches, eaten },
      recipe: { portions: dish.recipe?.portions, method: dish.recipe?.method },
    });
    expect(segment.talkingPoints[0]?.text).toBe('It is [protein, each] a bowl.');
  });

  it('of a dish keeps its own ties, and names those that it drops', () => {
    const { links, segment, notes } = dishAgain(FILE, segmentOf(FILE, 'Barley skillet'));
    expect(links.map(({ id }) => id)).toEqual(['li-1']);
    expect(segment.perishables.map(({ spans }) => spans.length)).toEqual([1, 0]);
    expect(notes).toEqual([
      {
        code: 'tie',
        message: 'The tie from “st-bake” to “st-pour” (s-pots) stayed behind (shown hot).',
      },
      {
        code: 'standing',
        message: 'cheese: a time out of the fridge reaches into another segment and stayed behind.',
      },
      {
        code: 'finished',
        message: 'Barley skillet: portions by grams wait until the finished dish is weighed again.',
      },
    ]);
  });

  it('of a dish lets go of a shot and of an oven that are elsewhere', () => {
    const pots = segmentOf(FILE, 's-pots');
    const shot = { id: 'sh', title: 'steam', stepId: 'st-bake', framing: '', lengthS: 2 };
    const lent = dishAgain(FILE, { ...pots, shots: [shot] });
    expect(lent.segment.shots[0]?.stepId).toBeNull();
    expect(lent.notes.map(({ code }) => code)).toEqual(['tie', 'shot']);
    const elsewhere = dishAgain(FILE, segmentOf(FILE, 'Barley skillet'), {
      kitchen: { ovens: [], appliances: [] },
    });
    expect(elsewhere.segment.steps[1]?.oven).toEqual({ ovenId: null, milliC: 200_000 });
    expect(elsewhere.notes.map(({ code }) => code)).toContain('oven');
  });

  it('keeps an appliance of the kitchen that it is for, and lets go of one that is elsewhere', () => {
    const pots = segmentOf(FILE, 's-pots');
    const warmed = { ...pots, steps: pots.steps.map((step) => ({ ...step, applianceId: 'wave' })) };
    const kitchen = {
      ovens: FILE.kitchen.ovens,
      appliances: [{ id: 'wave', name: 'W', places: 1 }],
    };
    const kept = dishAgain(FILE, warmed, { kitchen });
    expect(kept.segment.steps.every(({ applianceId }) => applianceId === 'wave')).toBe(true);
    const gone = dishAgain(FILE, warmed, { kitchen: { ...kitchen, appliances: [] } });
    expect(gone.segment.steps.every(({ applianceId }) => applianceId === null)).toBe(true);
    expect(gone.notes.map(({ code }) => code)).toContain('appliance');
  });

  it('of an episode keeps every tie and target, and leaves date and answer behind', () => {
    const { episode, notes } = episodeAgain(FILE);
    expect(episode).toMatchObject({
      title: 'Two dishes by the harbour (again)',
      publishOn: null,
      anythingElse: null,
      links: FILE.episode.links,
      targets: FILE.episode.targets,
      webLinks: FILE.episode.webLinks,
    });
    expect(notes.map(({ code }) => code)).toEqual(['finished', 'disclosure']);
  });

  it.each([
    ['Late shift', 'Late shift (again)'],
    ['Late shift (again)', 'Late shift (again)'],
    ['x'.repeat(160), `${'x'.repeat(152)} (again)`],
    [`${'x'.repeat(151)}🍲 and more`, `${'x'.repeat(151)} (again)`],
  ])('is called by the title and again: %s', (title, again) => {
    expect(againTitle(title)).toBe(again);
    expect(againTitle(title).length).toBeLessThanOrEqual(160);
  });
});

describe('foods of a copy', () => {
  const cheese = FILE.foods.find(({ id }) => id === 'f-cheese') as Food;
  const again: Food = {
    ...cheese,
    version: { ...cheese.version, id: 'v-2', seq: 4, dateRead: '2026-05-20' },
  };
  const then = { versions: new Map([['f-cheese', cheese.version]]), date: '2026-05-02' };

  it('are named where a label was read again since, with what it says', () => {
    expect(foodChanges([cheese], then)).toEqual([]);
    expect(foodChanges([again], then)).toEqual([
      {
        foodId: 'f-cheese',
        message:
          'Quay cheese, grated: the label was read again on Wed 20 May 2026 and says the same',
      },
    ]);
    const other = { ...again, version: { ...again.version, values: {} } };
    expect(foodChanges([other], then)[0]?.message).toMatch(/and says something else$/);
  });

  it('are told by the date where the numbers were never locked', () => {
    const unlocked = { versions: new Map(), date: '2026-05-02' };
    expect(foodChanges([cheese], unlocked)).toEqual([]);
    expect(foodChanges([again], unlocked)[0]?.message).toMatch(/read again on Wed 20 May 2026$/);
    expect(foodChanges([again], { versions: new Map(), date: null })).toEqual([]);
  });

  it('from a table are named where its release is another', () => {
    const barley = FILE.foods.find(({ id }) => id === 'f-barley') as Food;
    const newer = { ...barley, version: { ...barley.version, id: 'v-9', release: 'H2' } };
    const locked = { versions: new Map([['f-barley', barley.version]]), date: null };
    expect(foodChanges([newer], locked)[0]?.message).toBe(
      'Barley, pearled, raw: its values come from Harbour table H2 now',
    );
  });

  it('are asked about once their label is older than 30 days at the copy, and no more once answered', () => {
    expect(labelsToAsk([cheese], '2026-05-30')).toEqual([]);
    expect(labelsToAsk([cheese], '2026-05-31')).toEqual([cheese]);
    expect(labelsToAsk([again], '2026-05-31')).toEqual([]);
    const undated = { ...cheese, version: { ...cheese.version, dateRead: null } };
    expect(labelsToAsk([undated], '2026-05-31')).toEqual([undated]);
    const reference = FILE.foods.filter(({ kind }) => kind !== 'label');
    expect(labelsToAsk(reference, '2030-01-01')).toEqual([]);
  });
});
