import type { Cell, Food, FoodVersion } from '#lib/foods/food';
import type { Nutrient } from '#lib/foods/nutrients';
import type { Recipe, RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import { FILE_FORMAT, FILE_VERSION, type EpisodeFile, type Segment } from '#lib/episode/schema';
import { parsePrinted } from '#lib/units/printed';
import { UNSAID_KITCHEN, UNSAID_LINE, UNSAID_SEGMENT } from '#lib/episode/unsaid';

/** Small builders of plain data for tests: everything defaulted, anything overridden. */

/** A cell from its printed text: '2.50', '<1', 'Tr', '' for missing. */
export function cell(text: string): Cell {
  if (text === '' || text === 'N') return { kind: 'missing' };
  if (text === 'Tr') return { kind: 'trace' };
  const lessThan = text.startsWith('<');
  const printed = parsePrinted(lessThan ? text.slice(1) : text);
  if (!printed) throw new Error(`not a printed number: ${text}`);
  return { kind: lessThan ? 'lessThan' : 'eq', ...printed };
}

export function aVersion(
  id: string,
  values: Partial<Record<Nutrient, string>>,
  more: Partial<FoodVersion> = {},
): FoodVersion {
  return {
    id: `${id}-v1`,
    seq: 1,
    basis: 'per100g',
    serving: null,
    values: Object.fromEntries(
      Object.entries(values).map(([nutrient, text]) => [nutrient, cell(text)]),
    ),
    secondColumn: null,
    carbBasis: 'total',
    state: 'asIs',
    factors: null,
    refuse: null,
    rule: 'asPrinted',
    source: 'test table',
    release: '1',
    sourceNo: id,
    dateRead: null,
    kept: [],
    ...more,
  };
}

export function aFood(
  id: string,
  values: Partial<Record<Nutrient, string>>,
  more: Partial<Food> = {},
  version: Partial<FoodVersion> = {},
): Food {
  return {
    id,
    kind: 'reference',
    name: id,
    section: 'other',
    witnessId: null,
    version: aVersion(id, values, version),
    measures: [],
    yields: [],
    allergens: [],
    ...more,
  };
}

export function aLine(
  id: string,
  foodId: string | null,
  more: Partial<RecipeLine> = {},
): RecipeLine {
  return {
    ...UNSAID_LINE,
    id,
    text: id,
    quantity: null,
    unit: null,
    measureName: null,
    foodId,
    match: 'confirmed',
    orFoodId: null,
    madeFrom: null,
    cookMethod: null,
    retention: null,
    bounded: [],
    state: 'asIs',
    asBought: false,
    planned: null,
    leftBehind: { kind: 'none' },
    spoiltByTake: false,
    note: '',
    ...more,
  };
}

/** An ingredient of so many grams, exactly as far as the kitchen's scale can tell. */
export function grams(
  id: string,
  foodId: string,
  g: number,
  more: Partial<RecipeLine> = {},
): RecipeLine {
  const mg = Math.round(g * 1000);
  return aLine(id, foodId, { planned: { lowMg: mg, valueMg: mg, highMg: mg }, ...more });
}

export function aRecipe(id: string, lines: RecipeLine[], more: Partial<Recipe> = {}): Recipe {
  return { id, title: id, lines, weighings: [], portions: [], method: '', cooking: null, ...more };
}

export function aDish(id: string, recipe: Recipe, more: Partial<Segment> = {}): Segment {
  return {
    id,
    kind: 'recipe',
    title: id,
    batches: { num: 1, den: 1 },
    eaten: { num: 1, den: 1 },
    ate: { kind: 'share' },
    inFrame: null,
    outFrame: null,
    plannedS: 60,
    recipe,
    steps: [],
    perishables: [],
    shots: [],
    talkingPoints: [],
    spareTakes: 0,
    spareScope: 'whole',
    washUpS: 0,
    ...UNSAID_SEGMENT,
    ...more,
  };
}

export function aTalk(id: string, more: Partial<Segment> = {}): Segment {
  const dish = aDish(id, aRecipe(`${id}-recipe`, []));
  return { ...dish, kind: 'talk', recipe: null, eaten: { num: 0, den: 1 }, ...more };
}

/** One reading of the kitchen's 1 g scale. */
export function aReading(
  id: string,
  kind: Weighing['kind'],
  g: number,
  more: Partial<Weighing> = {},
): Weighing {
  return {
    id,
    kind,
    grossMg: Math.round(g * 1000),
    tareMg: 0,
    afterId: null,
    scaleId: 'scale',
    method: 'direct',
    at: '2026-03-07T10:00:00.000Z',
    shares: [],
    ...more,
  };
}

export function aFile(
  segments: Segment[],
  foods: Food[],
  more: { episode?: Partial<EpisodeFile['episode']>; resolutionMg?: number } & Partial<
    Pick<EpisodeFile, 'stock' | 'packs' | 'day' | 'recipes' | 'said' | 'pantry' | 'shops'>
  > = {},
): EpisodeFile {
  return {
    format: FILE_FORMAT,
    version: FILE_VERSION,
    recipes: more.recipes ?? [],
    savedAt: '2026-03-07T18:00:00.000Z',
    creator: { id: 'creator', name: 'Ines Quay', wordsPerMinute: null },
    kitchen: {
      ...UNSAID_KITCHEN,
      id: 'kitchen',
      name: 'Test kitchen',
      zone: 'Europe/Copenhagen',
      lat: null,
      lon: null,
      burners: 2,
      ovens: [],
      scales: [
        {
          id: 'scale',
          name: 'flat scale',
          resolutionMg: more.resolutionMg ?? 1000,
          accuracyPpm: 0,
        },
      ],
      spreads: [],
    },
    foods,
    episode: {
      id: 'episode',
      title: 'Test episode',
      hook: '',
      region: 'US',
      publishOn: null,
      rate: { num: 25, den: 1 },
      dropFrame: false,
      targets: [],
      energyStep: 1,
      anythingElse: null,
      segments,
      links: [],
      webLinks: [],
      disclosure: '',
      ...more.episode,
    },
    day: more.day ?? null,
    said: more.said ?? [],
    stock: more.stock ?? [],
    packs: more.packs ?? [],
    pantry: more.pantry ?? [],
    shops: more.shops ?? [],
  };
}
