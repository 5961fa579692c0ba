import 'server-only';
import { v7 as uuid } from 'uuid';
import { lineFromReading } from '#lib/episode/line-from-reading';
import { matchQuery } from '#lib/episode/match-line';
import { readIngredientList } from '#lib/episode/read-ingredient';
import { failed, ok, type Problem, type Result } from '#lib/result';
import type { Create } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { lineColumns } from '#lib/store/episode-columns';
import { matchFoods } from '#lib/store/match-foods';

/** How many ingredients a dish holds. */
const MOST_LINES = 400;

export interface PasteInto {
  readonly recipeId: string;
  /** The place of the first. */
  readonly position: number;
  /** How many the dish has already. */
  readonly present: number;
  readonly creatorId?: string;
}

/**
 * The edits that add a pasted list of ingredients to a dish, each with its best match. A match is provisional
 * unless the person has confirmed that food for these words before. A list of which not every line fits is
 * refused whole, so that none of it is lost from view.
 * @returns the edits in the list's order, or what does not fit, by line
 */
export async function pastedLineEdits(
  text: string,
  { recipeId, position, present, creatorId = DEFAULT_CREATOR_ID }: PasteInto,
): Promise<Result<readonly Create<'RecipeLine'>[]>> {
  const list = readIngredientList(text);
  const parts = list.lines.flatMap((line) => line.parts);
  const named = parts.some(({ food }) => food !== '');
  const refusals = refusalsOf(list, named ? parts.length : 0, present);
  if (refusals.length > 0) return failed(...refusals);
  const matches = await matchFoods(parts.map(matchQuery), creatorId);
  return ok(
    parts.map((part, index) => {
      const match = matches[index] ?? null;
      const line = {
        ...lineFromReading(part, match?.food ?? null),
        ...(match?.remembered ? { match: 'confirmed' as const } : {}),
        id: uuid(),
      };
      const place = { id: line.id, recipeId, position: position + index };
      const row = { ...lineColumns(line), ...place, madeFromId: null, madeFromRev: null };
      return { op: 'create', entity: 'RecipeLine', row };
    }),
  );
}

type List = ReturnType<typeof readIngredientList>;

function refusalsOf(list: List, count: number, present: number): readonly Problem[] {
  if (list.rest !== '') return list.remarks.map((remark) => ({ ...remark, path: 'list' }));
  if (count === 0) {
    const message = 'There is no ingredient in this text: write one on each line, as 200 g oats.';
    return [{ path: 'list', code: 'none', message }];
  }
  if (present + count <= MOST_LINES) return [];
  const more = present + count - MOST_LINES;
  const message = `A dish holds ${MOST_LINES} ingredients: these are ${more} too many.`;
  return [{ path: 'list', code: 'too-many', message }];
}
