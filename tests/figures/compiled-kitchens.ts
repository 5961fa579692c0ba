import { UNSAID_PACK } from '#lib/episode/unsaid';
import type { Portion, Recipe, RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import type { Food } from '#lib/foods/food';
import { NUTRIENT_NAMES, type Nutrient } from '#lib/foods/nutrients';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';
import { oneOf, whole } from '../support/uniform';

/**
 * Invented episodes in which everything meets that figures have rules for: foods of tables and labels with blanks,
 * traces and "less than", on either basis of carbohydrate; what is weighed alone, shared, in a running total or by
 * difference on scales with an accuracy; spoons, servings, packs; peel, yields, what stays behind; foods that nobody
 * knows or has confirmed, or that could be either of two; recipes in recipes; parts by count, weight and eye.
 */
export function anyEpisode(
  random: () => number,
  size: { readonly dishes: number; readonly lines: number; readonly plain: boolean },
): EpisodeFile {
  const foods = Array.from({ length: 5 }, (_, index) => anyFood(random, `f${index}`));
  const dishes = Array.from({ length: size.dishes }, (_, index) =>
    anyDish(random, `d${index}`, foods, size),
  );
  const region = oneOf(random, ['US', 'EU'] as const);
  const file = aFile(dishes, foods, { episode: { region }, packs: [aPack('f1'), aPack('f2')] });
  const scale = file.kitchen.scales[0] ?? { id: 'scale', name: '', resolutionMg: 1000 };
  const scales = [
    { ...scale, accuracyPpm: oneOf(random, [0, 3000]) },
    { ...scale, id: 'fine', resolutionMg: 100, accuracyPpm: oneOf(random, [0, 1000]) },
  ];
  return { ...file, kitchen: { ...file.kitchen, scales } };
}

function aPack(foodId: string): EpisodeFile['packs'][number] {
  const none = { netMl: null, drainedMg: null, gtin: null, price: null };
  return { ...UNSAID_PACK, id: `pack-${foodId}`, foodId, name: 'pack', netMg: 400_000, ...none };
}

const chance = (random: () => number, share: number) => random() < share;

function anyFood(random: () => number, id: string): Food {
  const values: Partial<Record<Nutrient, string>> = {};
  const label = chance(random, 0.35);
  for (const nutrient of NUTRIENT_NAMES) {
    if (chance(random, label ? 0.5 : 0.15)) continue;
    const amount = whole(random, 0, nutrient === 'fibre' ? 300 : 3000) / 100;
    values[nutrient] = label
      ? oneOf(random, [String(Math.round(amount)), '0', '<1'])
      : oneOf(random, [amount.toFixed(2), amount.toFixed(1), '0.0', 'Tr']);
  }
  const yields = [
    { id: `${id}-y1`, method: 'boiled', rawMg: 100_000, cookedMg: 71_000, source: '', own: null },
    { id: `${id}-y2`, method: 'fried', rawMg: 80_000, cookedMg: 52_000, source: '', own: null },
  ];
  const tbsp = { qtyNum: 1, qtyDen: 1, massMg: 13_000, digits: 1, source: '' };
  const serving = { massMg: 30_000, volumeMl: 28, decimals: 0, text: '', perPack: null };
  const basis = label ? oneOf(random, ['serving', 'per100ml', 'per100g'] as const) : 'per100g';
  return aFood(
    id,
    values,
    {
      kind: label ? 'label' : 'reference',
      measures: chance(random, 0.8) ? [{ id: `${id}-m`, name: 'tbsp', ...tbsp }] : [],
      yields: yields.slice(0, whole(random, 0, 2)),
    },
    {
      basis,
      rule: label ? oneOf(random, ['us', 'eu'] as const) : 'asPrinted',
      serving: label ? serving : null,
      carbBasis: oneOf(random, ['total', 'available'] as const),
      state: oneOf(random, ['asIs', 'raw', 'cooked'] as const),
      refuse: chance(random, 0.3) ? { percent: 12, text: 'peel', inValues: false } : null,
    },
  );
}

interface Size {
  readonly lines: number;
  /** Only what can be worked out without asking the rules nutrient by nutrient. */
  readonly plain: boolean;
}

function anyDish(random: () => number, id: string, foods: readonly Food[], size: Size): Segment {
  const lines = Array.from({ length: chance(random, 0.05) ? 0 : size.lines }, (_, index) =>
    anyLine(random, `${id}-l${index}`, foods, size.plain),
  );
  const nested = size.plain || id === 'd0' || !chance(random, 0.4) ? [] : [madeFrom(random, id)];
  const portions: Portion[] = [
    { id: `${id}-third`, kind: 'count', name: '', of: 3 },
    { id: `${id}-bowl`, kind: 'mass', name: '', massMg: 150_000 },
    { id: `${id}-eye`, kind: 'byEye', name: '', share: { num: 1, den: 4 }, permille: 100 },
  ];
  const recipe: Recipe = aRecipe(`${id}-r`, [...lines, ...nested], {
    weighings: readings(random, id, lines),
    portions,
    cooking:
      size.plain || chance(random, 0.7)
        ? null
        : {
            moisturePermille: -150,
            fatPermille: oneOf(random, [0, -20]),
            spreadPermille: 20,
            source: 'a test',
          },
  });
  return aDish(id, recipe, {
    eaten: oneOf(random, [
      { num: 1, den: 1 },
      { num: 1, den: 3 },
      { num: 0, den: 1 },
    ]),
    ate: oneOf(random, [
      { kind: 'share' as const },
      { kind: 'byEye' as const, permille: 120 },
      { kind: 'mass' as const, lowMg: 180_000, valueMg: 200_000, highMg: 210_000 },
    ]),
  });
}

function madeFrom(random: () => number, id: string): RecipeLine {
  const amount = oneOf(random, ['batch', 'grams'] as const);
  const made = { madeFrom: { recipeId: 'd0-r', rev: 1 } };
  if (amount === 'grams') return grams(`${id}-nested`, '', 80, { ...made, foodId: null });
  const half = { low: { num: 1, den: 2 }, high: { num: 1, den: 2 } };
  return aLine(`${id}-nested`, null, { ...made, quantity: half, unit: 'batch' });
}

function anyLine(
  random: () => number,
  id: string,
  foods: readonly Food[],
  plain: boolean,
): RecipeLine {
  const foodId = oneOf(random, foods).id;
  const mg = whole(random, 1, 900) * 1000;
  const amount = oneOf(random, ['grams', 'grams', 'range', 'tbsp', 'serving', 'pack', 'none']);
  const of = (num: number, den: number) => ({ low: { num, den }, high: { num: num + 1, den } });
  const ways: Record<string, Partial<RecipeLine>> = {
    grams: { planned: { lowMg: mg, valueMg: mg, highMg: mg } },
    range: { planned: { lowMg: mg, valueMg: mg + 2000, highMg: mg + 5000 } },
    tbsp: { quantity: of(whole(random, 1, 4), 2), unit: 'tbsp' },
    serving: { quantity: { low: { num: 2, den: 1 }, high: { num: 2, den: 1 } }, unit: 'serving' },
    pack: { quantity: { low: { num: 1, den: 2 }, high: { num: 1, den: 2 } }, unit: 'pack' },
    none: {},
  };
  const line = aLine(id, chance(random, 0.05) ? null : foodId, {
    ...ways[amount],
    state: oneOf(random, ['asIs', 'asIs', 'raw', 'cooked'] as const),
    asBought: chance(random, 0.4),
    match: chance(random, 0.15) ? 'provisional' : 'confirmed',
    leftBehind: chance(random, 0.2)
      ? { kind: 'mass', lowMg: 0, valueMg: mg / 10, highMg: mg / 5, where: 'pan', made: 'alike' }
      : { kind: 'none' },
  });
  if (plain || chance(random, 0.6)) return line;
  const left = { lowMg: 1000, valueMg: 2000, highMg: 4000, where: 'pan', made: 'fat' } as const;
  const more: Partial<RecipeLine>[] = [
    { orFoodId: oneOf(random, foods).id },
    { retention: '431' },
    {
      bounded: [
        { nutrient: 'vitaminC', maxPer100: 3 },
        { nutrient: 'fat', maxPer100: 1 },
      ],
    },
    { leftBehind: { kind: 'mass', ...left } },
    { leftBehind: { kind: 'weighed', where: 'tray', made: 'alike' } },
    { cookMethod: 'fried' },
  ];
  return { ...line, ...oneOf(random, more) };
}

function readings(random: () => number, id: string, lines: readonly RecipeLine[]): Weighing[] {
  const all: Weighing[] = [];
  const on = () => ({ scaleId: oneOf(random, ['scale', 'fine']) });
  const ids = lines.map((line) => line.id);
  const shares = (...of: readonly (string | undefined)[]) =>
    of.flatMap((lineId, index) =>
      lineId === undefined ? [] : [{ lineId, share: { num: index + 1, den: of.length + 1 } }],
    );
  if (chance(random, 0.5)) {
    const method = oneOf(random, ['direct', 'difference'] as const);
    const both = { shares: shares(ids[0], ids[1]), method, ...on() };
    all.push(aReading(`${id}-both`, 'raw', whole(random, 20, 400), both));
  }
  if (chance(random, 0.4)) {
    // A bowl on the scale, one ingredient after the other.
    const { scaleId } = on();
    const [first, second, third] = [`${id}-t1`, `${id}-t2`, `${id}-t3`];
    const after = (afterId: string, tare: number, lineId: string | undefined) => ({
      ...{ afterId, scaleId, tareMg: tare * 1000, shares: shares(lineId) },
    });
    all.push(aReading(first, 'raw', 300, { scaleId, tareMg: 90_000, shares: shares(ids[2]) }));
    all.push(aReading(second, 'raw', 300 + whole(random, 3, 200), after(first, 300, ids[3])));
    all.push(aReading(third, 'raw', 700, after(second, 300, ids[4 % Math.max(1, ids.length)])));
  }
  if (chance(random, 0.3)) {
    const cooked = { shares: shares(ids[1]), ...on() };
    all.push(aReading(`${id}-cooked`, 'cooked', whole(random, 20, 200), cooked));
  }
  if (chance(random, 0.3)) {
    all.push(
      aReading(`${id}-left`, 'left', whole(random, 1, 20), { shares: shares(ids[0]), ...on() }),
    );
  }
  if (chance(random, 0.6)) {
    all.push(aReading(`${id}-done`, 'finished', whole(random, 200, 3000), on()));
  }
  return all;
}
