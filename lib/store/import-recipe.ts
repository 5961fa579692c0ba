import { v7 as uuid } from 'uuid';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { Edit } from '#lib/store/command';
import { lineColumns, portionColumns, recipeColumns } from '#lib/store/episode-columns';
import type { ImportIds } from '#lib/store/import-ids';
import { create } from '#lib/store/new-row';

/** New ids for a recipe, its ingredients and portions. */
export function mintRecipe(recipe: Recipe, ids: ImportIds): void {
  ids.mint('recipe', recipe.id);
  for (const line of recipe.lines) ids.mint('line', line.id);
  for (const portion of recipe.portions) ids.mint('portion', portion.id);
}

/** The recipes that ingredients are made from, as new rows; `mintRecipe` comes first. */
export function importRecipes(recipes: readonly Recipe[], ids: ImportIds): Edit[] {
  return recipes.flatMap((recipe, index) =>
    importRecipe(
      recipe,
      ids.of('recipe', recipe.id, `recipes[${index}].id`),
      `recipes[${index}]`,
      ids,
    ),
  );
}

/** A recipe as new rows, with its readings; its ingredients and portions have their new ids by now. */
export function importRecipe(
  recipe: Recipe,
  recipeId: string,
  path: string,
  ids: ImportIds,
): Edit[] {
  const weighings = recipe.weighings.map((weighing) => ({ weighing, id: ids.fresh(weighing.id) }));
  const readingId = new Map(weighings.map(({ weighing, id }) => [weighing.id, id]));
  const forkedFromId = ids.ofRows ? recipe.id : null;
  return [
    create('Recipe', { id: recipeId, ...recipeColumns(recipe), forkedFromId }),
    ...recipe.lines.map((line, position) => {
      const at = `${path}.lines[${position}]`;
      return create('RecipeLine', {
        ...lineColumns(line),
        id: ids.of('line', line.id, `${at}.id`),
        recipeId,
        position,
        foodId: line.foodId === null ? null : ids.of('food', line.foodId, `${at}.foodId`),
        orFoodId: line.orFoodId === null ? null : ids.of('food', line.orFoodId, `${at}.orFoodId`),
        ...madeFromColumns(line, `${at}.madeFrom.recipeId`, ids),
      });
    }),
    ...recipe.portions.map((portion, position) => {
      const id = ids.of('portion', portion.id, `${path}.portions[${position}].id`);
      return create('Portion', { ...portionColumns(portion), id, recipeId, position });
    }),
    ...weighings.map(({ weighing, id }, index) => {
      const { kind, grossMg, tareMg, method, at } = weighing;
      const afterId = readingId.get(weighing.afterId ?? '') ?? null;
      const scaleId = ids.of('scale', weighing.scaleId, `${path}.weighings[${index}].scaleId`);
      const of = { kind, grossMg, tareMg, afterId, method, at };
      return create('Weighing', { id, recipeId, scaleId, ...of });
    }),
    ...weighings.flatMap(({ weighing, id: weighingId }, index) =>
      weighing.shares.map(({ lineId, share }, position) => {
        const at = `${path}.weighings[${index}].shares[${position}].lineId`;
        const line = ids.of('line', lineId, at);
        return create('WeighingShare', {
          id: uuid(),
          weighingId,
          lineId: line,
          position,
          ...share,
        });
      }),
    ),
  ];
}

/** A recipe of the file is at its first revision once it is a row. */
function madeFromColumns({ madeFrom }: RecipeLine, path: string, ids: ImportIds) {
  if (!madeFrom) return { madeFromId: null, madeFromRev: null };
  const madeFromId = ids.of('recipe', madeFrom.recipeId, path);
  const stays = !ids.keep && madeFromId === madeFrom.recipeId;
  return { madeFromId, madeFromRev: stays ? madeFrom.rev : 1 };
}
