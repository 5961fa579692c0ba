import { recipesOf, recipeTitles, usedFoodIds, dishesOf } from '#lib/episode/context';
import type { Recipe } from '#lib/episode/recipe-schema';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import { foodFields } from '#lib/lock/food-in-words';
import { lineFields, portionText, readingText } from '#lib/lock/line-in-words';
import { spokenNumbers } from '#lib/figures/spoken-numbers';
import { gramsText, ratioText } from '#lib/units/read-quantity';
import { permilleTyped, ppmTyped } from '#lib/units/read-typed';
import { scaleGramsText } from '#lib/units/scale-grams';

/** One thing that numbers rest on: an ingredient, a food, a portion, an answer. */
export interface InputGroup {
  /** The same as long as it is the same thing. */
  readonly key: string;
  /** Where it is: the dish's title; empty where it is in none. */
  readonly where: string;
  /** The dish's segment; null where it is in none of the running order. */
  readonly segmentId: string | null;
  /** What it is called: “150 g pearl barley”. */
  readonly what: string;
  /** What it comes to as a whole, where it is new or gone. */
  readonly summary: string;
  /** What it says, each in words. */
  readonly fields: readonly Field[];
}

/** A name and what stands there; empty where nothing does. */
export type Field = readonly [name: string, text: string];

/**
 * Everything that the numbers of an episode rest on, in words: what a lock hashes, thing by thing.
 * Two files that differ in what is hashed differ in words here.
 */
export function inputsInWords(file: EpisodeFile): readonly InputGroup[] {
  const { episode, kitchen, packs, recipes, said } = file;
  const titles = recipeTitles(file);
  const foods = new Map(file.foods.map(({ id, name }) => [id, name]));
  const used = usedFoodIds(recipesOf(file));
  const dishes = dishesOf(episode.segments);
  const ofRecipe = (
    recipe: Recipe,
    { where, segmentId }: Pick<InputGroup, 'where' | 'segmentId'>,
  ): InputGroup[] => [
    ...recipe.lines.map((line): InputGroup => {
      const what = `“${line.text}”`;
      const fields = lineFields(line, foods, titles);
      return { key: `line ${line.id}`, where, segmentId, what, summary: line.text, fields };
    }),
    ...recipe.portions.map((portion): InputGroup => {
      const text = portionText(portion);
      const what = `the portion “${portion.name}”`;
      return {
        key: `portion ${portion.id}`,
        where,
        segmentId,
        what,
        summary: text,
        fields: [['', text]],
      };
    }),
    ...recipe.weighings.map((reading): InputGroup => {
      const text = readingText(reading, recipe, kitchen);
      return {
        key: `reading ${reading.id}`,
        where,
        segmentId,
        what: 'a reading of the scale',
        summary: text,
        fields: [['', text]],
      };
    }),
  ];
  const fixed = said.filter((line) =>
    spokenNumbers([line]).some(({ hedge }) => (hedge ?? 'exact') === 'exact'),
  );
  return [
    group('the episode', [
      ['region', episode.region],
      ['calories are written to', `${String(episode.energyStep)} kcal`],
      ['anything else that day', answerText(episode.anythingElse)],
    ]),
    ...fixed.map(({ id, text }): InputGroup => {
      const what = 'said in front of the camera';
      return { key: `said ${id}`, ...NOWHERE, what, summary: `“${text}”`, fields: [['', text]] };
    }),
    ...dishes.flatMap((dish) => [
      {
        key: `dish ${dish.id}`,
        where: dish.title,
        segmentId: dish.id,
        what: 'the dish',
        summary: dish.title,
        fields: dishFields(dish, dish.recipe),
      },
      ...ofRecipe(dish.recipe, { where: dish.title, segmentId: dish.id }),
    ]),
    ...recipes.flatMap((recipe) => [
      {
        key: `recipe ${recipe.id}`,
        where: recipe.title,
        segmentId: null,
        what: 'the dish that others are made from',
        summary: recipe.title,
        fields: cookingFields(recipe),
      },
      ...ofRecipe(recipe, { where: recipe.title, segmentId: null }),
    ]),
    ...file.foods
      .filter(({ id }) => used.has(id))
      .map((food): InputGroup => {
        const what = `the food “${food.name}”`;
        return {
          key: `food ${food.id}`,
          ...NOWHERE,
          what,
          summary: food.name,
          fields: foodFields(food),
        };
      }),
    ...packs
      .filter(({ foodId }) => used.has(foodId))
      .map(({ id, name, netMg, netMl, drainedMg }): InputGroup => {
        const fields: Field[] = [
          ['net', netMg === null ? '' : `${scaleGramsText(netMg)} g`],
          ['net volume', netMl === null ? '' : `${String(netMl)} ml`],
          ['drained', drainedMg === null ? '' : `${scaleGramsText(drainedMg)} g`],
        ];
        return { key: `pack ${id}`, ...NOWHERE, what: `the pack “${name}”`, summary: name, fields };
      }),
    ...kitchen.scales.map(({ id, name, resolutionMg, accuracyPpm }): InputGroup => {
      const fields: Field[] = [
        ['steps', `${scaleGramsText(resolutionMg)} g`],
        ['accuracy', `${ppmTyped(accuracyPpm)} %`],
      ];
      return { key: `scale ${id}`, ...NOWHERE, what: `the scale “${name}”`, summary: name, fields };
    }),
    ...kitchen.spreads.map(({ id, kind, permille }): InputGroup => {
      const text = `± ${permilleTyped(permille)} %`;
      const what = `how far a ${kind} may miss`;
      return { key: `spread ${id}`, ...NOWHERE, what, summary: text, fields: [['', text]] };
    }),
  ];
}

const NOWHERE = { where: '', segmentId: null } as const;

function group(what: string, fields: readonly Field[]): InputGroup {
  return { key: what, ...NOWHERE, what, summary: '', fields };
}

function answerText(answer: EpisodeFile['episode']['anythingElse']): string {
  if (answer === null) return '';
  return answer.kind === 'nothing' ? 'nothing' : `not counted: ${answer.what}`;
}

function dishFields({ ate, eaten }: Segment, recipe: Recipe): readonly Field[] {
  const share = ratioText(eaten);
  const counts =
    ate.kind === 'mass'
      ? `${gramsText(ate)} g of it`
      : ate.kind === 'byEye'
        ? `${share} by eye, ± ${permilleTyped(ate.permille)} %`
        : share;
  return [['counts to the day', counts], ...cookingFields(recipe)];
}

function cookingFields({ cooking }: Recipe): readonly Field[] {
  if (!cooking) return [['change of weight in cooking', '']];
  const { moisturePermille, fatPermille, spreadPermille, source } = cooking;
  const percent = (permille: number) => `${permilleTyped(permille)} %`;
  const text = `water ${percent(moisturePermille)}, fat ${percent(fatPermille)}, ± ${percent(spreadPermille)} (${source})`;
  return [['change of weight in cooking', text]];
}
